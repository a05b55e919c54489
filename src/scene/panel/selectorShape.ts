import type { Selector } from '../../bench/action.ts';
import type { Rect } from '../layout.ts';
import type { Point } from '../project.ts';

const RAD = Math.PI / 180;
/** Degrees between upright and the outer places. */
const SIDE = 52;
/** The three engraved places, degrees from upright; half the width of each word is in heights of its letters. */
export const POSITIONS: readonly { to: Selector; deg: number; word: string; half: number }[] = [
  { to: 'off', deg: -SIDE, word: 'OFF', half: 0.94 },
  { to: 'low', deg: 0, word: 'LOW', half: 1.07 },
  { to: 'high', deg: SIDE, word: 'HIGH', half: 1.27 },
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
const HALF_HIGH = 0.36;
/** How far the words stand from the lever's middle where there is room, in radii of its boss. */
const REACH = 1.44;
/** Room between a word and the lever's boss, px. */
const ROOM = 1;
/** Room between a word and the edge of the plate, px: a slim one has none to spare. */
const edgeOf = ({ w }: Rect) => (w < 64 ? 1 : 3);

/** How far to the side a word stands, and how far up it must be to keep clear of the lever there. */
function besideLever(box: Rect, s: SelectorShape, half: number) {
  const letters = selectorLetters(s);
  const aside = Math.min(s.r * REACH * Math.sin(SIDE * RAD), box.w / 2 - edgeOf(box) - letters * half);
  const inner = Math.max(0, aside - letters * half);
  const clear = Math.sqrt(Math.max(0, (s.r + ROOM) ** 2 - inner ** 2)) + letters * HALF_HIGH;
  return { aside, up: Math.max(s.r * REACH * Math.cos(SIDE * RAD), clear) };
}

/** Where the word of a position stands: the place to press. Where the box is slim, the words rise above the boss. */
export function selectorMark(box: Rect, to: Selector): Point {
  const s = selectorShape(box);
  const besides = POSITIONS.filter(({ deg }) => deg !== 0).map(({ half }) => besideLever(box, s, half));
  const up = Math.max(...besides.map((one) => one.up));
  const { deg, half } = POSITIONS.find((each) => each.to === to)!;
  if (deg === 0) return { x: s.x, y: s.y - Math.max(s.r * REACH, up + selectorLetters(s) * 1.25) };
  return { x: s.x + Math.sign(deg) * besideLever(box, s, half).aside, y: s.y - up };
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
