import { scaleCurrent, scaleFraction } from '../engine/instruments/ammeter.ts';
import type { RangeA } from './action.ts';
import type { NeedleView } from './observation.ts';

/** Smallest division of the ammeter's printed scale on each range, A. */
export const DIVISION_A: Readonly<Record<RangeA, number>> = { 3: 0.1, 15: 0.5, 30: 1, 100: 2 };

/** Share of the range below which the strokes crowd too much to be read. */
export const CROWDED_BELOW = 0.1;

/** Where a current stands on the printed scale, as a fraction of the full sweep: the strokes are not evenly spaced. */
export function strokeAt(currentA: number, rangeA: RangeA): number {
  return scaleFraction(currentA, rangeA);
}

/** The current printed under the needle, A. */
export function printedA({ deflection }: Pick<NeedleView, 'deflection'>, rangeA: RangeA): number {
  return scaleCurrent(deflection, rangeA);
}

/** The two printed strokes a needle stands between, A, and how it stands to them. */
export interface BetweenStrokes {
  readonly lowA: number;
  readonly highA: number;
  readonly nearer: 'on low' | 'low' | 'middle' | 'high' | 'on high';
}

/** A needle width is what an eye tells from a stroke: a four-hundredth of the sweep. */
const NEEDLE_WIDTH = 1 / 400;

export function betweenStrokes(needle: Pick<NeedleView, 'deflection'>, rangeA: RangeA): BetweenStrokes {
  const division = DIVISION_A[rangeA];
  const below = Math.min(Math.floor(printedA(needle, rangeA) / division + 1e-9), rangeA / division - 1);
  const lowA = tidy(below * division);
  const highA = tidy((below + 1) * division);
  const from = strokeAt(lowA, rangeA);
  const to = strokeAt(highA, rangeA);
  return { lowA, highA, nearer: stands(needle.deflection, from, to) };
}

function stands(deflection: number, from: number, to: number): BetweenStrokes['nearer'] {
  if (Math.abs(deflection - from) <= NEEDLE_WIDTH) return 'on low';
  if (Math.abs(deflection - to) <= NEEDLE_WIDTH) return 'on high';
  const share = (deflection - from) / (to - from);
  if (share < 0.4) return 'low';
  return share > 0.6 ? 'high' : 'middle';
}

function tidy(amps: number): number {
  return Number(amps.toFixed(2));
}
