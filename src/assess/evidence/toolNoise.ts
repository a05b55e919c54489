import type { Source } from './reading.ts';

/** What lies between tools of the rail and what is made of them, on every part. Figures ours, no source. */

/** Share of readings that are simply mistaken. */
export const TOOL_SLIP: Readonly<Record<Source, number>> = { instrument: 0.0003, sheet: 0.002 };
/** Range over which a slip may put a reading: decades of resistance on the natural logarithm; mV. */
export const MEGOHM_RANGE = 15;
export const DROP_RANGE_MV = 200;

/** Density of the normal distribution. */
export function gauss(off: number, spread: number): number {
  return Math.exp(-0.5 * (off / spread) ** 2) / (spread * Math.sqrt(2 * Math.PI));
}
