import type { Rect } from '../layout.ts';
import type { PictureArgs, PictureName } from './pictures.ts';

/** A still picture that is wanted, as data: it can be sent to where pictures are painted. */
export interface Order<N extends PictureName = PictureName> {
  readonly name: N;
  readonly args: PictureArgs<N>;
  /** What the picture covers, in the px its painter works in. */
  readonly box: Rect;
  /** Device px per CSS px. */
  readonly resolution: number;
}

/** What the renderer is handed in the end; both can be drawn from. */
export type Painted = ImageBitmap | HTMLCanvasElement;

/** Paints a set of pictures; they come together, in the order they were asked for. */
export type Paint = (orders: readonly Order[]) => Promise<readonly Painted[]>;

/** A square round the painter's own middle. @param size of its side, px */
export function around(size: number): Rect {
  return { x: -size / 2, y: -size / 2, w: size, h: size };
}

/** Device px a picture covers; at least one each way. */
export function pixelsOf({ box, resolution }: Order): { readonly width: number; readonly height: number } {
  const px = (length: number) => Math.max(1, Math.ceil(length * resolution));
  return { width: px(box.w), height: px(box.h) };
}
