import type { PartKind } from '../../../bench/action.ts';
import type { TestKind } from '../../../bench/paper.ts';
import type { FieldPlace, PlatePlace } from '../../../bench/places.ts';

/** What a line of each test is about: counted from the chalk, at a brush or holder, on a part, read on a scale. */

export type MatPlace = FieldPlace | PlatePlace;

const BRUSHES_OF_FRAME: readonly MatPlace[] = ['field:brush1', 'field:brush2'];
const INSULATED: readonly MatPlace[] = ['plate:insulated1', 'plate:insulated2'];
const EARTHED: readonly MatPlace[] = ['plate:earthed1', 'plate:earthed2'];

/** Where the lamp tests of field frame and brush plate are written down. */
export const PLACES_OF: Readonly<Partial<Record<TestKind, readonly MatPlace[]>>> = {
  fieldContinuity: BRUSHES_OF_FRAME,
  fieldInsulation: BRUSHES_OF_FRAME,
  plateInsulation: INSULATED,
  plateEarthed: EARTHED,
};

/** The place the other lamp probe is on, in all lines of one test. */
export const COMMON_PLACE: Readonly<Partial<Record<TestKind, MatPlace>>> = {
  fieldContinuity: 'field:terminal',
  fieldInsulation: 'field:case',
  plateInsulation: 'plate:metal',
  plateEarthed: 'plate:metal',
};

/** What a line is about, as far as the form has come. */
export interface Subject {
  readonly test: TestKind;
  readonly part: PartKind;
}

/** Brushes or holders a line can be about; none where the whole part or a bar is meant. */
export function placesOf({ test, part }: Subject): readonly MatPlace[] {
  if (PLACES_OF[test]) return PLACES_OF[test];
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
  return test === 'ground' || PLACES_OF[test] !== undefined;
}
