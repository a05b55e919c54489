import type { PartKind } from '../../../bench/action.ts';
import { isMatTest, MAT_TESTS, type MatPlace } from '../../../bench/matTests.ts';
import type { TestKind } from '../../../bench/paper.ts';

/** What a line of each test is about: counted from the chalk, at a brush or holder, on a part, read on a scale. */

export type { MatPlace } from '../../../bench/matTests.ts';

const BRUSHES_OF_FRAME = MAT_TESTS.fieldContinuity.to;
const INSULATED = MAT_TESTS.plateInsulation.to;
const EARTHED = MAT_TESTS.plateEarthed.to;

/** What a line is about, as far as the form has come. */
export interface Subject {
  readonly test: TestKind;
  readonly part: PartKind;
}

/** Brushes or holders a line can be about; none where the whole part or a bar is meant. */
export function placesOf({ test, part }: Subject): readonly MatPlace[] {
  if (isMatTest(test)) return MAT_TESTS[test].to;
  if (test === 'megohm') return part === 'brushPlate' ? INSULATED : [];
  if (test !== 'millivolt' || part === 'armature') return [];
  return part === 'fieldFrame' ? BRUSHES_OF_FRAME : [...INSULATED, ...EARTHED];
}

/** Tests that are only ever made on the commutator. */
const OF_BARS: ReadonlySet<TestKind> = new Set(['spaced', 'neighbour', 'ground', 'strip']);

export function isOfBars(test: TestKind): boolean {
  return OF_BARS.has(test);
}

/** Whether a line carries a count from the chalk. */
export function isCounted({ test, part }: Subject): boolean {
  return isOfBars(test) || ((test === 'look' || test === 'millivolt') && part === 'armature');
}

/** Whether the form asks which part is meant: the test serves several, and the line does not say so by itself. */
export function asksPart(test: TestKind): boolean {
  return test === 'look' || test === 'megohm' || test === 'millivolt';
}

/** The figure a line of a test carries, and its unit. */
export const FIGURES = {
  megohm: { field: 'megohms', unit: 'MΩ', label: 'Display shows' },
  millivolt: { field: 'millivolts', unit: 'mV', label: 'Drop' },
  gauges: { field: 'millimetres', unit: 'mm', label: 'Gauge shows' },
} as const;
export type FigureTest = keyof typeof FIGURES;

export function isFigureTest(test: TestKind): test is FigureTest {
  return test in FIGURES;
}

export function isLampTest(test: TestKind): boolean {
  return test === 'ground' || isMatTest(test);
}
