import type { MatPart } from '../../../bench/action.ts';
import { DEFAULT_TEST_VOLT, type TestKind } from '../../../bench/paper.ts';
import type { Place } from '../../../bench/places.ts';
import { isMatTest, MAT_TESTS } from '../../matPasses.ts';
import { information } from '../information.ts';
import type { Case, Group } from './case.ts';
import type { Classes } from './classes.ts';
import { DROP_SPREAD, MEGOHM_SPREAD } from './likelihood.ts';
import type { MatModel } from './model.ts';
import { keyOf, type MatQuestion, type MatShown } from './reading.ts';

/** One reading that could be taken next, with the information it is expected to give about what the part has, bits. */
export interface MatNextReading {
  readonly question: MatQuestion;
  readonly bits: number;
}

/** Cases below this share are left out: what is hardly possible can hardly be told about. */
const LEAST = 1e-5;

/**
 * Which next readings would tell most: the mutual information of the reading and the classes of fault, best first.
 * @param taken what was read already: the same again adds nothing
 */
export function nextMatReadings<F>(
  model: MatModel<F>,
  groups: readonly Group<F>[],
  classes: Classes<F>,
  questions: readonly MatQuestion[],
  taken: readonly MatQuestion[],
): MatNextReading[] {
  const known = new Set(taken.map(keyOf));
  const open = groups.map((group) => group.filter(({ faults, after }) => faults !== null && after > LEAST));
  return questions
    .filter((question) => !known.has(keyOf(question)))
    .map((question) => {
      const at = model.groupOf(question);
      return { question, bits: at === null ? 0 : expectedBits(model, open[at]!, classes, question) };
    })
    .sort((a, b) => b.bits - a.bits);
}

function expectedBits<F>(
  model: MatModel<F>,
  cases: readonly Case<F>[],
  classes: Classes<F>,
  question: MatQuestion,
): number {
  const rows = new Numbers();
  const columns = new Numbers();
  const laid = cases.map((one) => ({
    row: rows.of(classes.nameOf(one)),
    column: columns.of(outcomeOf(model.shows(question, one.faults!))),
    chance: one.after,
  }));
  const joint = new Float64Array(rows.count * columns.count);
  const total = laid.reduce((sum, { chance }) => sum + chance, 0);
  for (const { row, column, chance } of laid) joint[row * columns.count + column]! += chance / total;
  return information(joint, rows.count, columns.count);
}

/** Things numbered as they come. */
class Numbers {
  private readonly known = new Map<string, number>();

  of(name: string): number {
    const number = this.known.get(name) ?? this.known.size;
    this.known.set(name, number);
    return number;
  }

  get count(): number {
    return this.known.size;
  }
}

/** Outcomes that a reader could tell apart: steps of two spreads. */
function outcomeOf(shown: MatShown): string {
  switch (shown.kind) {
    case 'lamp':
      return shown.lit ? 'lit' : 'dark';
    case 'megohm':
      return shown.over ? 'over' : stepOf(shown.megohms + LEAST_MEGOHM, MEGOHM_SPREAD);
    case 'drop':
      return stepOf(shown.millivolts + LEAST_MILLIVOLT, DROP_SPREAD);
  }
}
const stepOf = (size: number, spread: number) => `${Math.round(Math.log(size) / (2 * spread))}`;
const LEAST_MEGOHM = 0.01;
const LEAST_MILLIVOLT = 0.1;

/** Everything the allowed tests could ask of a part. */
export function matQuestions(part: MatPart, tests: readonly TestKind[]): MatQuestion[] {
  return tests.flatMap((test) => (part === 'fieldFrame' ? frameQuestions(test) : plateQuestions(test)));
}

type Ask = Pick<MatQuestion, 'places' | 'brushesApart' | 'leanedOn'>;
const ask = (from: Place, to: Place, leanedOn: Place | null = null): Ask => ({
  places: [from, to],
  brushesApart: true,
  leanedOn,
});
const BRUSHES = MAT_TESTS.fieldContinuity.to;

function frameQuestions(test: TestKind): MatQuestion[] {
  if (isMatTest(test) && MAT_TESTS[test].part === 'fieldFrame')
    return MAT_TESTS[test].to.map((to) => ({ kind: 'lamp', ...ask(MAT_TESTS[test].from, to) }));
  if (test === 'megohm')
    return BRUSHES.map((to) => ({ kind: 'megohm', volt: DEFAULT_TEST_VOLT, ...ask('field:case', to) }));
  if (test !== 'millivolt') return [];
  return BRUSHES.map((to) => ({ kind: 'drop', feed: ['field:terminal', to], ...ask('field:terminal', to) }));
}

/** A holder is tried left alone and leaned on; brushes of a plate are not kept apart by hand. */
function plateQuestions(test: TestKind): MatQuestion[] {
  const alone = { brushesApart: false };
  if (isMatTest(test) && MAT_TESTS[test].part === 'brushPlate') {
    const { from, to } = MAT_TESTS[test];
    return to.flatMap((holder) =>
      [null, holder].map((leaned): MatQuestion => ({ kind: 'lamp', ...ask(from, holder, leaned), ...alone })),
    );
  }
  if (test !== 'megohm') return [];
  const { from, to } = MAT_TESTS.plateInsulation;
  return to.map((holder) => ({ kind: 'megohm', volt: DEFAULT_TEST_VOLT, ...ask(from, holder), ...alone }));
}
