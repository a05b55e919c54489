import type { Observation } from '../../../bench/observation.ts';
import { betweenStrokes } from '../../../bench/scale.ts';

/** What a careful eye reads off the printed scale: a stroke, or halfway between two, A. */
export function nearestReading({ needle, rangeA }: Observation): number {
  const { lowA, highA, nearer } = betweenStrokes(needle, rangeA);
  if (nearer === 'middle') return Number(((lowA + highA) / 2).toFixed(3));
  return nearer === 'low' || nearer === 'on low' ? lowA : highA;
}
