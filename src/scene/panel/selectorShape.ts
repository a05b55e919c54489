import type { Selector } from '../../bench/action.ts';
import type { Rect } from '../layout.ts';
import type { Point } from '../project.ts';

const RAD = Math.PI / 180;
/** The three engraved places, degrees from upright; half the width of each word is in heights of its letters. */
export const POSITIONS: readonly { to: Selector; deg: number; word: string; half: number }[] = [
  { to: 'off', deg: -52, word: 'OFF', half: 1.05 },
  { to: 'low', deg: 0, word: 'LOW', half: 1.23 },
  { to: 'high', deg: 52, word: 'HIGH', half: 1.32 },
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

/** Height of the letters, px. */
export function selectorLetters({ r }: SelectorShape): number {
  return Math.max(11, Math.min(17, r * 0.34));
}

/** Half the height of a word in capitals, in heights of its letters. */
const HALF_HIGH = 0.4;
/** How far from the lever's middle the words begin at the least, in radii of the boss: it and its ticks turn below. */
const CLEAR = 1.07;
/** Room between a word and the edge of the plate, px. */
const EDGE = 1;

/** Where the word of a position stands: the place to press. Where the box is slim, the words rise above the boss. */
export function selectorMark(box: Rect, to: Selector): Point {
  const s = selectorShape(box);
  const { deg, half } = POSITIONS.find((each) => each.to === to)!;
  const letters = selectorLetters(s);
  if (to === 'low') {
    const over = Math.min(selectorMark(box, 'off').y, selectorMark(box, 'high').y) - letters * 1.25;
    return { x: s.x, y: Math.min(s.y - s.r * 1.44, over) };
  }
  const aside = Math.min(s.r * 1.44 * Math.abs(Math.sin(deg * RAD)), box.w / 2 - EDGE - letters * half);
  const inner = Math.max(0, aside - letters * half);
  const above = Math.sqrt(Math.max(0, (s.r * CLEAR) ** 2 - inner ** 2)) + letters * HALF_HIGH;
  const up = Math.max(s.r * 1.44 * Math.cos(deg * RAD), above);
  return { x: s.x + Math.sign(deg) * aside, y: s.y - up };
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
