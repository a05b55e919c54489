import type { TestKind } from '../../bench/paper.ts';

/** One criterion and what it is worth. Which acts are critical is no part of a rubric: see bench/interlocks.ts. */
export interface RubricRow {
  readonly criterion: string;
  /** Points, 0..100. */
  readonly weight: number;
  /** Only where the criterion has one; left out: as in the built-in rubric. Unit: see THRESHOLDS. */
  readonly threshold?: number;
}

/** Proper scoring rules: whoever states what they really believe can expect the most points. */
export const SCORING_RULES = ['brier', 'logarithmic'] as const;
export type ScoringRule = (typeof SCORING_RULES)[number];

/** What is marked, in which order, and what each criterion is worth. */
export interface Rubric {
  readonly name: string;
  /** Counted up by whoever changes the rubric. */
  readonly version: number;
  readonly criteria: readonly RubricRow[];
  /** The order a school wants the tests done in, where it wants one; marked by the criterion of the same name. */
  readonly houseSequence?: readonly TestKind[];
  /** How the learner's own "how sure" is scored; null: not at all. */
  readonly sure: { readonly rule: ScoringRule; readonly weight: number } | null;
}

/** The criterion that only a rubric with a house sequence can have. */
export const HOUSE_SEQUENCE = 'houseSequence';

/** What the threshold of a criterion may be. */
export interface ThresholdRange {
  readonly least: number;
  readonly most: number;
  /** Follows the figure in a sentence. */
  readonly unit: string;
  readonly meaning: string;
}

const LEAST_COVERED: ThresholdRange = {
  least: 0,
  most: 100,
  unit: '%',
  meaning: 'Least share to be tested before anything is earned',
};

/** Criteria that have a threshold, by id. */
export const THRESHOLDS: Readonly<Record<string, ThresholdRange>> = {
  spacedPass: LEAST_COVERED,
  neighbourPass: LEAST_COVERED,
  groundPass: LEAST_COVERED,
  fieldContinuityPass: LEAST_COVERED,
  fieldInsulationPass: LEAST_COVERED,
  plateInsulationPass: LEAST_COVERED,
  plateEarthedPass: LEAST_COVERED,
  stripPass: LEAST_COVERED,
  megohmPass: LEAST_COVERED,
  millivoltPass: LEAST_COVERED,
  gaugesRead: LEAST_COVERED,
  spacedLargest: { least: 2, most: 12, unit: 'spacings', meaning: 'Spacings to be tried before the pass' },
  needleSpared: {
    least: 200,
    most: 60_000,
    unit: 'ms',
    meaning: 'Longest the needle may stay against its stop',
  },
};

/**
 * The built-in rubric. Only precedence that has a reason is marked; open, ground and short tests may come in any
 * order. The weights are ours: what can kill and what finds the fault weighs most.
 */
export const BUILT_IN_RUBRIC: Rubric = {
  name: 'Built-in rubric',
  version: 1,
  criteria: [
    { criterion: 'lookedFirst', weight: 4 },
    { criterion: 'chalkedFirst', weight: 2 },
    { criterion: 'placedOff', weight: 4 },
    { criterion: 'cradleFilled', weight: 4 },
    { criterion: 'spacedLargest', weight: 2, threshold: 3 },
    { criterion: 'spacedPass', weight: 10, threshold: 0 },
    { criterion: 'neighbourPass', weight: 10, threshold: 0 },
    { criterion: 'lampProved', weight: 8 },
    { criterion: 'groundPass', weight: 10, threshold: 0 },
    { criterion: 'fieldContinuityPass', weight: 10, threshold: 0 },
    { criterion: 'fieldInsulationPass', weight: 10, threshold: 0 },
    { criterion: 'plateInsulationPass', weight: 10, threshold: 0 },
    { criterion: 'plateEarthedPass', weight: 10, threshold: 0 },
    { criterion: 'stripPass', weight: 10, threshold: 0 },
    { criterion: 'stripOnHigh', weight: 3 },
    { criterion: 'stripClear', weight: 2 },
    { criterion: 'megohmPass', weight: 8, threshold: 0 },
    { criterion: 'testerSafe', weight: 6 },
    { criterion: 'millivoltPass', weight: 8, threshold: 0 },
    { criterion: 'dropSafe', weight: 3 },
    { criterion: 'gaugesRead', weight: 6, threshold: 0 },
    { criterion: 'remedyAfterFinding', weight: 6 },
    { criterion: 'remedySafe', weight: 5 },
    { criterion: 'retested', weight: 8 },
    { criterion: 'partSpared', weight: 5 },
    { criterion: 'benchSetRight', weight: 8 },
    { criterion: 'leadsRight', weight: 5 },
    { criterion: 'prepared', weight: 3 },
    { criterion: 'safeHands', weight: 10 },
    { criterion: 'probesOff', weight: 3 },
    // Common practice, no source; how long is too long is ours.
    { criterion: 'needleSpared', weight: 2, threshold: 1500 },
    { criterion: 'keptCool', weight: 2 },
    { criterion: 'notLeftOn', weight: 4 },
    { criterion: 'recordedFirst', weight: 5 },
    // The verdict, shared by the parts of the job.
    { criterion: 'condition', weight: 15 },
    { criterion: 'place', weight: 10 },
    { criterion: 'disposition', weight: 10 },
    { criterion: 'supported', weight: 10 },
    { criterion: 'proven', weight: 15 },
  ],
  sure: null,
};

/** The rubric a job is marked by. */
export function rubricOf(job: { readonly rubric?: Rubric }): Rubric {
  return job.rubric ?? BUILT_IN_RUBRIC;
}

/** @returns points, or null where the rubric does not mark this */
export function weightOf(rubric: Rubric, criterion: string): number | null {
  return rubric.criteria.find((row) => row.criterion === criterion)?.weight ?? null;
}

/** The threshold a row stands for, its own or the built-in one; null where the criterion has none. */
export function thresholdOf(row: RubricRow): number | null {
  const usual = BUILT_IN_RUBRIC.criteria.find(({ criterion }) => criterion === row.criterion);
  return row.threshold ?? usual?.threshold ?? null;
}
