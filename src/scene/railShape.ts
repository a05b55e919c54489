import type { Observation } from '../bench/observation.ts';
import type { Rect } from './layout.ts';
import type { Point } from './project.ts';

/** The bar of the rail, from which tools hang. */
export function railBar(rail: Rect): Rect {
  return { x: rail.x, y: Math.round(rail.y + rail.h * 0.05), w: rail.w, h: 7 };
}

/** Room for a tool between the bar it hangs from and its name, px of the host from above. */
export function hangingRoom(box: Rect): { top: number; foot: number } {
  return { top: railBar(box).y + 9, foot: box.y + box.h - 16 };
}

/** Lower than this a tile of a phone's column has room for little above its name, px. */
export const LOW_TILE = 30;

/** The same in a tile. */
export function tileRoom(box: Rect): { top: number; foot: number } {
  const low = box.h < LOW_TILE;
  return { top: box.y + (low ? 2 : 3), foot: box.y + box.h - (low ? 12 : 15) };
}

export function middleOf({ top, foot }: { readonly top: number; readonly foot: number }): number {
  return (top + foot) / 2;
}

/** Height at which the strip lies in its hooks, px of the host. */
export function stripHeight(box: Rect): number {
  const { top, foot } = hangingRoom(box);
  return top + (foot - top) * 0.62;
}

/** A tool of the rail that is an instrument with leads of its own. */
export type Instrument = 'tester' | 'drop';
export const INSTRUMENTS: readonly Instrument[] = ['tester', 'drop'];

/** An instrument is taken down when one of its leads is, and hung up when all are put back and nothing is on. */
export function isInUse({ leads, tester, drop }: Observation, which: Instrument): boolean {
  const out = ([`${which}.1`, `${which}.2`] as const).some((lead) => {
    const { at } = leads[lead];
    return at === 'hand' || at === 'clip';
  });
  return out || (which === 'tester' ? tester.pressed : drop.feed !== null);
}

/** What stands where on the face of an instrument. */
export interface Face {
  /** Point the needle turns about, and its length; a small face has none, and its figures say all. */
  readonly pivot: Point;
  readonly length: number;
  /** Window of the figures, and their size, px. */
  readonly figures: Rect & { readonly px: number };
  /** Right-hand end of the small words; null where they have no room. */
  readonly small: Point | null;
  readonly button: Point & { readonly r: number };
  /** Where its leads come out: two of the set and, last, the feed. */
  readonly posts: readonly [Point, Point, Point];
}

/** Lower or slimmer than this a face has no room for a scale with figures, px. */
const LOW = 60;
const SLIM = 110;

export function faceOf(box: Rect): Face {
  return box.h < LOW || box.w < SLIM ? smallFace(box) : wholeFace(box);
}

function wholeFace({ x, y, w, h }: Rect): Face {
  const r = Math.max(12, h * 0.15);
  const post = (share: number): Point => ({ x: x + w * share, y: y + 5 });
  const figures = { x: x + 7, y: y + h * 0.66, w: w - r * 2 - 21, h: h * 0.28 };
  const button = { x: x + w - r - 7, y: y + h * 0.95 - r, r };
  return {
    pivot: { x: figures.x + figures.w / 2, y: y + h * 0.63 },
    // Its figures stand outside the scale.
    length: Math.min(figures.w * 0.345, h * 0.41),
    figures: { ...figures, px: Math.min(16, figures.h * 0.62, figures.w * 0.17) },
    small: { x: x + w - 7, y: button.y - r - 7 },
    button,
    posts: [post(0.78), post(0.9), post(0.66)],
  };
}

/** Lower than this a small face has its button beside its figures, not under them, px. */
const LOWEST = 40;

/** In a phone's column, where the part lies to the left and its leads go that way. */
function smallFace(box: Rect): Face {
  const { x, y, w, h } = box;
  const post = (share: number): Point => ({ x: x + 5, y: y + h * share });
  const r = 12;
  const beside = h < LOWEST;
  const button = { x: x + w - r - 5, y: beside ? y + h / 2 : y + h - r - 4, r };
  const figures = beside
    ? { x: x + 10, y: y + 4, w: w - r * 2 - 19, h: h - 8, px: 11 }
    : { x: x + 6, y: y + 4, w: w - 12, h: h - r * 2 - 9, px: 12 };
  return {
    pivot: { x, y },
    length: 0,
    figures,
    small: beside ? null : { x: button.x - r - 5, y: button.y + 4 },
    button,
    posts: beside ? [post(0.3), post(0.7), post(0.5)] : [post(0.64), post(0.84), post(0.52)],
  };
}

/** Half the sweep of an instrument's needle either side of upright, rad. */
export const SWEEP = (60 * Math.PI) / 180;

/** Decades an instrument's scale runs over. */
export const DECADES: Readonly<Record<Instrument, readonly [number, number]>> = {
  tester: [-2, 3],
  drop: [-2, 2.3],
};

/** Share of the scale at which a reading stands; null, the needle at rest on its stop. */
export function scaleShare(which: Instrument, reading: number | null): number {
  if (reading === null) return -0.04;
  const [least, most] = DECADES[which];
  const at = (Math.log10(Math.max(Math.abs(reading), 10 ** least)) - least) / (most - least);
  return Math.min(1.04, at);
}

/** Angle from upright at which a reading stands, rad. */
export function scaleAngle(which: Instrument, reading: number | null): number {
  return SWEEP * (2 * scaleShare(which, reading) - 1);
}

/** Size of the figures on a scale of that radius, px. */
export function figureSize(length: number): number {
  return Math.max(10, Math.min(13, length * 0.2));
}

/** Mean breadth of a figure, of its height. */
const BREADTH = 0.6;

/** The decades that have their figure: all, or every other one where they would run into each other. */
export function printedFigures(which: Instrument, length: number): number[] {
  const [least, most] = DECADES[which];
  const decades = Array.from({ length: Math.floor(most - least) + 1 }, (_, i) => 10 ** (least + i));
  const size = figureSize(length);
  const apart = ((2 * SWEEP) / (most - least)) * (length + size * 0.72);
  const breadth = (reading: number) => String(reading).length * size * BREADTH;
  const crowded = decades.some(
    (each, i) => i > 0 && (breadth(each) + breadth(decades[i - 1]!)) / 2 + 2 > apart,
  );
  return crowded ? decades.filter((_, i) => i % 2 === 0) : decades;
}
