import type { RangeA } from '../../../bench/action.ts';
import type { Observation } from '../../../bench/observation.ts';

/** Smallest division of the ammeter's printed scale on each range, A. */
const DIVISION_A: Readonly<Record<RangeA, number>> = { 3: 0.1, 15: 0.5, 30: 1, 100: 2 };

/** What a careful eye reads off the needle: the nearest half division, A. */
export function nearestReading({ needle, rangeA }: Observation): number {
  const half = DIVISION_A[rangeA] / 2;
  return Number((Math.round((needle.deflection * rangeA) / half) * half).toFixed(2));
}
