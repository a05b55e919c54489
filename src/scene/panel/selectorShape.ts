import type { Selector } from '../../bench/action.ts';
import type { Rect } from '../layout.ts';
import type { Point } from '../project.ts';

const RAD = Math.PI / 180;
/** The three engraved places, degrees from upright. */
export const POSITIONS: readonly { to: Selector; deg: number; word: string }[] = [
  { to: 'off', deg: -52, word: 'OFF' },
  { to: 'low', deg: 0, word: 'LOW' },
  { to: 'high', deg: 52, word: 'HIGH' },
];

export interface SelectorShape {
  readonly x: number;
  readonly y: number;
  readonly r: number;
}

/** Middle and radius of the lever's boss within its box. */
export function selectorShape(box: Rect): SelectorShape {
  const r = Math.min(box.w * 0.27, box.h * 0.29);
  return { x: box.x + box.w / 2, y: box.y + box.h * 0.62, r };
}

/** Where the word of a position stands: the place to press. */
export function selectorMark(box: Rect, to: Selector): Point {
  const s = selectorShape(box);
  const { deg } = POSITIONS.find((each) => each.to === to)!;
  const reach = s.r * 1.44;
  return { x: s.x + reach * Math.sin(deg * RAD), y: s.y - reach * Math.cos(deg * RAD) };
}

/** The position the lever would fall into when pulled towards a point. */
export function selectorToward(box: Rect, p: Point): Selector {
  const s = selectorShape(box);
  const deg = Math.atan2(p.x - s.x, s.y - p.y) / RAD;
  return deg < -26 ? 'off' : deg > 26 ? 'high' : 'low';
}

export function leverAngle(at: Selector): number {
  return POSITIONS.find((each) => each.to === at)!.deg * RAD;
}
