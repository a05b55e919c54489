import type { Rect } from './layout.ts';

/** A box with its edges on the nearest whole px. */
export function whole({ x, y, w, h }: Rect): Rect {
  const left = Math.round(x);
  const top = Math.round(y);
  return { x: left, y: top, w: Math.round(x + w) - left, h: Math.round(y + h) - top };
}

/** The least box of whole px that holds all of another. */
export function wholeAround({ x, y, w, h }: Rect): Rect {
  const left = Math.floor(x);
  const top = Math.floor(y);
  return { x: left, y: top, w: Math.ceil(x + w) - left, h: Math.ceil(y + h) - top };
}
