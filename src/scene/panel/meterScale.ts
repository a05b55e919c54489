import type { RangeA } from '../../bench/action.ts';

/** Half the sweep of the needle either side of upright, rad. */
export const HALF_SWEEP = (46 * Math.PI) / 180;

/** Figures, long strokes and short strokes of each printed scale, A. */
export const DIVISIONS: Readonly<
  Record<RangeA, { figure: number; long: number; short: number; readableFrom: number }>
> = {
  3: { figure: 0.5, long: 0.5, short: 0.1, readableFrom: 0.5 },
  15: { figure: 3, long: 1, short: 0.5, readableFrom: 3 },
  30: { figure: 5, long: 5, short: 1, readableFrom: 5 },
  100: { figure: 20, long: 10, short: 2, readableFrom: 20 },
};

/** Size of the scale's figures in a case of a width, px. */
export function figureSize(w: number): number {
  return Math.max(10, Math.min(17, w / 17));
}

/** Pivot and length of the needle in a case of the given size, px. */
export function sweepAngle(w: number, h: number): { x: number; y: number; length: number; arc: number } {
  const size = figureSize(w);
  const arc = Math.min(h * 0.7, (w / 2 - 14 - size * 1.3) / Math.sin(HALF_SWEEP));
  return { x: w / 2, y: Math.max(14 + size * 1.5, h * 0.11 + size) + arc, length: arc * 0.97, arc };
}

/** Angular fraction of the scale at which a current stands, on a range; both A. The meter's own law gives it. */
export type ScaleFraction = (currentA: number, rangeA: RangeA) => number;

/** Where each short stroke of a scale stands from its zero on, 0..1 of the sweep. */
export type PrintedScale = readonly number[];

export function printedScale(range: RangeA, law: ScaleFraction): PrintedScale {
  const { short } = DIVISIONS[range];
  return Array.from({ length: Math.round(range / short) + 1 }, (_, i) => law(i * short, range));
}
