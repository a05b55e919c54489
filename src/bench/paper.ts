import type { PartKind, RangeA } from './action.ts';

/** The tests a sheet has lines for. */
export const TEST_KINDS = ['look', 'spaced', 'neighbour', 'ground', 'strip'] as const;
export type TestKind = (typeof TEST_KINDS)[number];

/**
 * One line a learner writes on the test sheet, in their own words and counted from their own chalk mark.
 * `count` is the number of bars from the chalked bar in the sense of rising angle, 0..bars-1; null where the line is
 * about the whole part.
 */
export interface SheetLine {
  readonly test: TestKind;
  readonly count: number | null;
  /** Current read by the learner, A, with the range it was read on. */
  readonly readingA?: number;
  readonly rangeA?: RangeA;
  readonly lamp?: 'lit' | 'dim' | 'dark';
  readonly strip?: 'still' | 'pulled' | 'buzzing';
  readonly remark?: string;
}

export const CONDITIONS = [
  'sound',
  'openCoil',
  'badRiserJoint',
  'grounded',
  'shortedCoil',
  'bridgedBars',
  'reversed',
  'poorInsulation',
  'worn',
  'notTested',
] as const;
export type Condition = (typeof CONDITIONS)[number];

export const DISPOSITIONS = ['service', 'cleanAndRetest', 'resolder', 'winder', 'replace'] as const;
export type Disposition = (typeof DISPOSITIONS)[number];

/** Where a finding lies, as finely as the learner dares to say, counted from the chalk. */
export type FoundPlace =
  | { readonly kind: 'bar'; readonly count: number }
  /** The coil or bridge between bar `count` and the next. */
  | { readonly kind: 'pair'; readonly count: number }
  | { readonly kind: 'somewhere' };

export interface Finding {
  readonly condition: Condition;
  readonly place: FoundPlace;
}

/** The learner's decision on one part. */
export interface Verdict {
  readonly part: PartKind;
  readonly findings: readonly Finding[];
  readonly disposition: Disposition;
  /** How sure the learner says they are, 0..1. */
  readonly sure: number;
  /** Numbers of the log entries or sheet lines the learner leans on; free text. */
  readonly because: string;
}
