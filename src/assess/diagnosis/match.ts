import type { Finding } from '../../bench/paper.ts';
import type { TrueFinding } from './finding.ts';
import { placeWorth } from './place.ts';

/** A fault of the part with the finding of the verdict that comes nearest to it, and what that is worth. */
export interface Matched {
  readonly told: TrueFinding;
  readonly finding: Finding | null;
  readonly condition: number;
  readonly place: number;
}

/**
 * Gives each fault the finding that fits it best, each finding used once. Where two faults want one finding the
 * earlier in the file has it: the order makes no difference to a verdict that is right.
 */
export function matched(
  told: readonly TrueFinding[],
  findings: readonly Finding[],
  chalked: number | null,
  bars: number,
): Matched[] {
  const left = [...findings];
  // Whoever says sound has named no place, and none that is left open on purpose.
  const placed = ({ condition, place }: Finding, truth: TrueFinding) =>
    condition === 'sound' ? 0 : placeWorth(place, chalked, truth.place, bars);
  return told.map((truth) => {
    const worths = left.map((finding) => ({
      told: truth,
      finding,
      condition: truth.expected.conditions[finding.condition] ?? 0,
      place: placed(finding, truth),
    }));
    const best = worths.reduce<Matched | null>(
      (top, one) => (top === null || value(one) > value(top) ? one : top),
      null,
    );
    if (best === null || value(best) === 0) return { told: truth, finding: null, condition: 0, place: 0 };
    left.splice(left.indexOf(best.finding!), 1);
    return best;
  });
}

const value = ({ condition, place }: { condition: number; place: number }) => 2 * condition + place;
