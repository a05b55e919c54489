import type { Rubric } from '../scenario/public/rubric.ts';

/** What a mark is of, and how a share of it becomes points. */
export interface Worth {
  readonly of: number;
  /** @param share  0..1 */
  earned(share: number): number;
  /** The same by a scoring rule, for which almost all may round to all: nobody gains by saying more than they believe. */
  scored(share: number): number;
}

/** How what a rubric says a criterion is worth becomes points. */
export interface Points {
  /** The rubric as it is marked by. */
  rubricOf(rubric: Rubric): Rubric;
  /**
   * What a criterion is worth, or one part's share of that.
   * @param parts  how many parts share it
   * @param nth  which of them, from 0
   */
  worth(weight: number, parts?: number, nth?: number): Worth;
}

/**
 * Splits a sum that is to be whole into whole parts by largest remainder: each is less than one off what it should be.
 * Of equal remainders, the first come first.
 */
export function wholeParts(exact: readonly number[]): number[] {
  const sum = Math.round(exact.reduce((total, one) => total + one, 0));
  const parts = exact.map(Math.floor);
  const left = sum - parts.reduce((total, one) => total + one, 0);
  const byRemainder = exact.map((one, nth) => ({ nth, rest: one - parts[nth]! }));
  byRemainder.sort((one, other) => other.rest - one.rest);
  for (const { nth } of byRemainder.slice(0, left)) parts[nth]! += 1;
  return parts;
}

/** A rubric in whole points. One whose points are whole stays as it is. */
function wholeRubric(rubric: Rubric): Rubric {
  const { criteria, sure } = rubric;
  const weights = wholeParts([...criteria.map(({ weight }) => weight), sure?.weight ?? 0]);
  return {
    ...rubric,
    criteria: criteria.map((row, nth) => ({ ...row, weight: weights[nth]! })),
    sure: sure && { ...sure, weight: weights.at(-1)! },
  };
}

/** Shares are sums of fractions of one: the last bit of rounding takes no point away. */
const isAll = (share: number) => share > 1 - 1e-9;

/** Whole points. The last of them is for whoever did all of it. */
export const WHOLE: Points = {
  rubricOf: wholeRubric,
  worth(weight, parts = 1, nth = 0) {
    const of = wholeParts(Array.from({ length: parts }, () => weight / parts))[nth]!;
    return {
      of,
      earned: (share) => (isAll(share) ? of : Math.max(0, Math.min(Math.round(share * of), of - 1))),
      scored: (share) => Math.round(share * of),
    };
  },
};

const tenths = (points: number) => Math.round(points * 10) / 10;

/** As attempts were marked before points were whole; what was signed then still comes to the same. */
export const TENTHS: Points = {
  rubricOf: (rubric) => rubric,
  worth(weight, parts = 1) {
    const earned = (share: number) => tenths((share * weight) / parts);
    return { of: parts === 1 ? weight : tenths(weight / parts), earned, scored: earned };
  },
};
