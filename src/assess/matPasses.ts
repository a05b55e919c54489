import type { MatPart } from '../bench/action.ts';
import type { TestKind } from '../bench/paper.ts';
import type { FieldPlace, Place, PlatePlace } from '../bench/places.ts';
import type { LampReading } from './readings.ts';

/** Lamp tests of field frame and brush plate, put together from single readings. */

export const MAT_TEST_KINDS = [
  'fieldContinuity',
  'fieldInsulation',
  'plateInsulation',
  'plateEarthed',
] as const;
export type MatTestKind = (typeof MAT_TEST_KINDS)[number];

export interface MatTest {
  readonly part: MatPart;
  readonly from: FieldPlace | PlatePlace;
  readonly to: readonly (FieldPlace | PlatePlace)[];
  /** What a sound part shows at every place. */
  readonly sound: 'lit' | 'dark';
  /** What hands have to do meanwhile, or a good result hides a bad part. */
  readonly meanwhile: 'brushesApart' | 'leanAndEase' | 'nothing';
}

export const MAT_TESTS: Readonly<Record<MatTestKind, MatTest>> = {
  fieldContinuity: {
    part: 'fieldFrame',
    from: 'field:terminal',
    to: ['field:brush1', 'field:brush2'],
    sound: 'lit',
    meanwhile: 'brushesApart',
  },
  fieldInsulation: {
    part: 'fieldFrame',
    from: 'field:case',
    to: ['field:brush1', 'field:brush2'],
    sound: 'dark',
    meanwhile: 'nothing',
  },
  plateInsulation: {
    part: 'brushPlate',
    from: 'plate:metal',
    to: ['plate:insulated1', 'plate:insulated2'],
    sound: 'dark',
    meanwhile: 'leanAndEase',
  },
  plateEarthed: {
    part: 'brushPlate',
    from: 'plate:metal',
    to: ['plate:earthed1', 'plate:earthed2'],
    sound: 'lit',
    meanwhile: 'leanAndEase',
  },
};

export function isMatTest(test: TestKind): test is MatTestKind {
  return (MAT_TEST_KINDS as readonly TestKind[]).includes(test);
}

/** How one place of a test was tried. */
export interface Tried {
  readonly to: FieldPlace | PlatePlace;
  /** 0..1 */
  readonly share: number;
  readonly entries: readonly number[];
}

/** Two places, in whichever order the tips lie on them. */
export function joins([a, b]: readonly [Place, Place], one: Place, other: Place): boolean {
  return (a === one && b === other) || (a === other && b === one);
}

/**
 * Each place of the test. Brushes that touch let one good branch hide the other, and a loose rivet makes or breaks
 * when the holder is pressed: a good result counts in full only when it was seen both ways, a bad one at once.
 */
export function matPass(lamp: readonly LampReading[], kind: MatTestKind): Tried[] {
  const { from, to, meanwhile, sound } = MAT_TESTS[kind];
  return to.map((place) => {
    const here = lamp.filter(({ settled, places }) => settled && joins(places, from, place));
    const counted = meanwhile === 'brushesApart' ? here.filter((reading) => reading.brushesApart) : here;
    const bad = counted.some(({ lit }) => lit !== (sound === 'lit'));
    const share =
      counted.length === 0 ? 0 : bad || meanwhile !== 'leanAndEase' ? 1 : bothWays(counted, place);
    return { to: place, share, entries: counted.map(({ entry }) => entry) };
  });
}

function bothWays(readings: readonly LampReading[], holder: Place): number {
  const leaned = readings.some(({ leanedOn }) => leanedOn === holder);
  const eased = readings.some(({ leanedOn }) => leanedOn !== holder);
  return (leaned ? 0.5 : 0) + (eased ? 0.5 : 0);
}
