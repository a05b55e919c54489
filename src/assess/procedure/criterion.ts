import type { ScenarioPublic } from '../../scenario/scenario.ts';
import type { Worked } from '../worked.ts';

/** What a criterion says of one attempt: how much of its mark was earned, why, and from which entries. */
export interface Judgement {
  /** 0..1 */
  readonly share: number;
  readonly sentence: string;
  readonly entries: readonly number[];
}

/** What of a job decides which criteria can count for it. */
export type JobCard = Pick<ScenarioPublic, 'parts' | 'tests' | 'rubric'>;

/** One thing looked for in how the work was done. A predicate over the log; its weight stands in the rubric. */
export interface Criterion {
  readonly id: string;
  readonly title: string;
  /** Whether it can count for a job; left out: for every one. */
  applies?(card: JobCard): boolean;
  /** Whether an attempt gave occasion for it; left out: always. */
  arises?(worked: Worked): boolean;
  /** @param threshold  of the rubric, for criteria that have one (scenario/public/rubric.ts); else 0 */
  judge(worked: Worked, threshold: number): Judgement;
}

/** Nothing was done that could show this, so nothing is earned. */
export function notShown(sentence: string): Judgement {
  return { share: 0, sentence, entries: [] };
}

/** @param least  percent below which nothing is earned */
export function atLeast(least: number, judged: Judgement): Judgement {
  if (judged.share * 100 >= least) return judged;
  return { ...judged, share: 0, sentence: `${judged.sentence} Less than ${least} % earns nothing.` };
}

/** Judges a habit by the rules of the bench that were broken against it. */
export function byRules(
  codes: readonly string[],
  words: {
    /** Entries that show the work was done at all; none: not shown. */
    readonly shownBy: (worked: Worked) => readonly number[];
    readonly notShown: string;
    readonly kept: string;
  },
): (worked: Worked) => Judgement {
  return (worked) => {
    const broken = worked.film.broken.filter(({ breach }) => codes.includes(breach.interlock));
    const done = broken.filter(({ refused }) => !refused);
    const worst = done[0] ?? broken[0];
    const shown = words.shownBy(worked);
    if (worst === undefined && shown.length === 0) return notShown(words.notShown);
    if (worst === undefined) return { share: 1, sentence: words.kept, entries: shown };
    const entries = broken.map(({ entry }) => entry);
    if (done.length > 0) return { share: 0, sentence: worst.breach.sentence, entries };
    return { share: 0.5, sentence: `The bench had to stop you: ${worst.breach.sentence}`, entries };
  };
}

/** At most a handful of entries, first and last among them: enough to find the place in the log. */
export function someOf(entries: readonly number[]): number[] {
  const sorted = [...new Set(entries)].filter((n) => n >= 0).sort((a, b) => a - b);
  return sorted.length <= 6 ? sorted : [...sorted.slice(0, 5), sorted.at(-1)!];
}
