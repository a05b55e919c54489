/**
 * Counting from the chalk: the chalked bar is 0, and the count rises in the sense of rising angle, that is down the
 * side facing the person at the bench.
 */

/** @returns the count of a bar from the chalked one, 0..bars-1, or null while no bar is chalked. */
export function countFromChalk(bar: number, chalkedBar: number | null, bars: number): number | null {
  return chalkedBar === null ? null : (((bar - chalkedBar) % bars) + bars) % bars;
}

/** @returns the bench's own number of a bar counted from the chalk. */
export function barFromCount(count: number, chalkedBar: number, bars: number): number {
  return (((chalkedBar + count) % bars) + bars) % bars;
}

/** Bars from one to the other in the sense of rising angle, 0..bars-1. */
export function stepsUp(from: number, to: number, bars: number): number {
  return (((to - from) % bars) + bars) % bars;
}

/** The shorter way between two bars round the commutator, in bars. */
export function spacing(one: number, other: number, bars: number): number {
  const up = stepsUp(one, other, bars);
  return Math.min(up, bars - up);
}
