import type { MatPart } from './action.ts';
import type { TestKind } from './paper.ts';
import type { FieldPlace, PlatePlace } from './places.ts';

/** The lamp tests of field frame and brush plate: one probe stays at a place, the other goes from one to the next. */

export type MatTest = 'fieldContinuity' | 'fieldInsulation' | 'plateInsulation' | 'plateEarthed';
export type MatPlace = FieldPlace | PlatePlace;

export interface MatLampTest {
  readonly part: MatPart;
  readonly from: MatPlace;
  readonly to: readonly MatPlace[];
}

export const MAT_TESTS: Readonly<Record<MatTest, MatLampTest>> = {
  fieldContinuity: {
    part: 'fieldFrame',
    from: 'field:terminal',
    to: ['field:brush1', 'field:brush2'],
  },
  fieldInsulation: {
    part: 'fieldFrame',
    from: 'field:case',
    to: ['field:brush1', 'field:brush2'],
  },
  plateInsulation: {
    part: 'brushPlate',
    from: 'plate:metal',
    to: ['plate:insulated1', 'plate:insulated2'],
  },
  plateEarthed: {
    part: 'brushPlate',
    from: 'plate:metal',
    to: ['plate:earthed1', 'plate:earthed2'],
  },
};

export function isMatTest(test: TestKind): test is MatTest {
  return test in MAT_TESTS;
}
