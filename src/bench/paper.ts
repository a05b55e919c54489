import type { TestVolt } from '../engine/instruments/insulationTester.ts';
import type { BrushIndex, GaugeKind, PartKind, RangeA } from './action.ts';
import type { FieldPlace, PlatePlace } from './places.ts';

export { DEFAULT_TEST_VOLT, TEST_VOLTS, type TestVolt } from '../engine/instruments/insulationTester.ts';

/** Tests of an armature on the growler. */
export const ARMATURE_TESTS = ['look', 'spaced', 'neighbour', 'ground', 'strip'] as const;
/** The tests a sheet has lines for. Looking, gauges, insulation tester and millivolt drop serve every part. */
export const TEST_KINDS = [
  ...ARMATURE_TESTS,
  'fieldContinuity',
  'fieldInsulation',
  'plateInsulation',
  'plateEarthed',
  'megohm',
  'millivolt',
  'gauges',
] as const;
export type TestKind = (typeof TEST_KINDS)[number];

/**
 * One line a learner writes on the test sheet, in their own words and counted from their own chalk mark.
 * `count` is the number of bars from the chalked bar in the sense of rising angle, 0..bars-1; null where the line is
 * about the whole part.
 */
export interface SheetLine {
  readonly test: TestKind;
  /** Part the line is about; left out: the armature. */
  readonly part?: PartKind;
  readonly count: number | null;
  /** Field brush or holder the line is about. */
  readonly at?: FieldPlace | PlatePlace;
  /** Current read by the learner, A, with the range it was read on. */
  readonly readingA?: number;
  readonly rangeA?: RangeA;
  readonly lamp?: 'lit' | 'dim' | 'dark';
  readonly strip?: 'still' | 'pulled' | 'buzzing';
  /** Insulation resistance read, megohms, or beyond the scale, with the voltage it was tested at. */
  readonly megohms?: number | 'over';
  readonly testVolt?: TestVolt;
  /** Drop read, mV. */
  readonly millivolts?: number;
  /** Length read, mm, and the gauge it was read on. */
  readonly millimetres?: number;
  readonly gauge?: GaugeKind;
  readonly brush?: BrushIndex;
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
  /** A joint that is neither coil nor riser: field brush, pigtail, holder. */
  'brokenJoint',
  'looseRivet',
] as const;
export type Condition = (typeof CONDITIONS)[number];

/** What can be said of each part, in the order a verdict lists it. */
export const CONDITIONS_OF: Readonly<Record<PartKind, readonly Condition[]>> = {
  armature: [
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
  ],
  fieldFrame: [
    'sound',
    'openCoil',
    'brokenJoint',
    'grounded',
    'shortedCoil',
    'poorInsulation',
    'worn',
    'notTested',
  ],
  brushPlate: [
    'sound',
    'grounded',
    'bridgedBars',
    'looseRivet',
    'brokenJoint',
    'poorInsulation',
    'worn',
    'notTested',
  ],
};

export const DISPOSITIONS = ['service', 'cleanAndRetest', 'resolder', 'winder', 'replace'] as const;
export type Disposition = (typeof DISPOSITIONS)[number];

/** Where a finding lies, as finely as the learner dares to say, counted from the chalk. */
export type FoundPlace =
  | { readonly kind: 'bar'; readonly count: number }
  /** The coil or bridge between bar `count` and the next. */
  | { readonly kind: 'pair'; readonly count: number }
  /** Branch of the field frame that ends at this field brush. */
  | { readonly kind: 'branch'; readonly brush: 1 | 2 }
  | { readonly kind: 'holder'; readonly holder: Exclude<PlatePlace, 'plate:metal'> }
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
