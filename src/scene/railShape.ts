import type { Observation } from '../bench/observation.ts';
import type { Rect } from './layout.ts';
import type { Point } from './project.ts';

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
  /** Right-hand end of the small words. */
  readonly small: Point;
  readonly button: Point & { readonly r: number };
  /** Where its leads come out: two of the set and, last, the feed. */
  readonly posts: readonly [Point, Point, Point];
}

/** Lower than this a face has no room for a scale, px. */
const LOW = 60;

export function faceOf(box: Rect): Face {
  return box.h < LOW ? smallFace(box) : wholeFace(box);
}

function wholeFace({ x, y, w, h }: Rect): Face {
  const r = Math.max(12, h * 0.15);
  const post = (share: number): Point => ({ x: x + w * share, y: y + 5 });
  const figures = { x: x + 6, y: y + h * 0.66, w: w - r * 2 - 18, h: h * 0.29 };
  const button = { x: x + w - r - 7, y: y + h * 0.95 - r, r };
  return {
    pivot: { x: x + w * 0.36, y: y + h * 0.64 },
    length: Math.min(w * 0.28, h * 0.44),
    figures: { ...figures, px: Math.min(16, figures.h * 0.62, figures.w * 0.17) },
    small: { x: x + w - 7, y: button.y - r - 7 },
    button,
    posts: [post(0.78), post(0.9), post(0.66)],
  };
}

/** In a phone's column, where the part lies to the left and its leads go that way. */
function smallFace({ x, y, w, h }: Rect): Face {
  const post = (share: number): Point => ({ x: x + 5, y: y + h * share });
  const r = 12;
  const button = { x: x + w - r - 6, y: y + h - r - 4, r };
  return {
    pivot: { x, y },
    length: 0,
    figures: { x: x + 6, y: y + 3, w: w - 12, h: h - r * 2 - 7, px: 12 },
    small: { x: button.x - r - 5, y: button.y + 4 },
    button,
    posts: [post(0.6), post(0.76), post(0.5)],
  };
}

/** Half the sweep of an instrument's needle either side of upright, rad. */
export const SWEEP = (52 * Math.PI) / 180;

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
