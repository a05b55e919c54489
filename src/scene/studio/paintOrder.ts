import type { Pen } from '../pen.ts';
import type { Order } from './order.ts';
import { paintPicture } from './pictures.ts';

/** Paints what was ordered. @param pen of an empty canvas of `pixelsOf(order)` */
export function paintOrder(pen: Pen, { name, args, box, resolution }: Order): void {
  pen.scale(resolution, resolution);
  pen.translate(-box.x, -box.y);
  paintPicture(pen, name, args);
}
