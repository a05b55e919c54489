import type { JobCard } from '../../assess/procedure/criterion.ts';
import { CRITERIA, canCount } from '../../assess/procedure/rubric.ts';
import { ARMATURE_TESTS, TEST_KINDS, type TestKind } from '../../bench/paper.ts';
import {
  BUILT_IN_RUBRIC,
  HOUSE_SEQUENCE,
  type Rubric,
  type RubricRow,
  type ScoringRule,
} from '../../scenario/public/rubric.ts';

/** Changes an instructor makes to a rubric, each giving a new one. */

/** Where a rubric of one's own begins. */
export const FIRST_OWN: Rubric = { ...BUILT_IN_RUBRIC, name: 'Rubric of this job', version: 1 };

/** Everything that can be marked, the order of the house left out: it has its own place on the form. */
const CHOICES: readonly RubricRow[] = BUILT_IN_RUBRIC.criteria;

/** What of it can count for a job. What a rubric says of the rest stays in it, for when the job has more. */
export function choicesFor(card: JobCard): readonly RubricRow[] {
  return CHOICES.filter(({ criterion }) => canCount(criterion, card));
}

export const ofProcedure = ({ criterion }: RubricRow) => CRITERIA.has(criterion);

export function rowOf({ criteria }: Rubric, criterion: string): RubricRow | null {
  return criteria.find((row) => row.criterion === criterion) ?? null;
}

/** Takes a criterion in, as it is built in, or leaves it out; the order of the list stays the built-in one. */
export function withMarked(rubric: Rubric, criterion: string, marked: boolean): Rubric {
  const criteria = CHOICES.flatMap((usual) => {
    const own = rowOf(rubric, usual.criterion);
    if (usual.criterion !== criterion) return own ? [own] : [];
    return marked ? [own ?? usual] : [];
  });
  const house = rowOf(rubric, HOUSE_SEQUENCE);
  return { ...rubric, criteria: house ? [...criteria, house] : criteria };
}

export function withRow(rubric: Rubric, row: RubricRow): Rubric {
  const criteria = rubric.criteria.map((one) => (one.criterion === row.criterion ? row : one));
  return { ...rubric, criteria };
}

/** @param order  the tests of the house, or null for none */
export function withOrder(rubric: Rubric, order: readonly TestKind[] | null): Rubric {
  const { houseSequence: _, ...rest } = rubric;
  const others = rubric.criteria.filter(({ criterion }) => criterion !== HOUSE_SEQUENCE);
  if (order === null) return { ...rest, criteria: others };
  const house = rowOf(rubric, HOUSE_SEQUENCE) ?? { criterion: HOUSE_SEQUENCE, weight: 5 };
  return { ...rest, criteria: [...others, house], houseSequence: order };
}

/** The order a house sequence begins with: the tests of the job as a verdict sheet lists them. */
export function firstOrder(tests: readonly TestKind[]): TestKind[] {
  const inJob = TEST_KINDS.filter((test) => tests.includes(test));
  return inJob.length > 1 ? inJob : [...ARMATURE_TESTS];
}

/** Moves a test one place earlier. */
export function earlier(order: readonly TestKind[], nth: number): readonly TestKind[] {
  return nth < 1 ? order : order.toSpliced(nth - 1, 2, order[nth]!, order[nth - 1]!);
}

export function withSure(rubric: Rubric, rule: ScoringRule | 'none'): Rubric {
  return { ...rubric, sure: rule === 'none' ? null : { rule, weight: rubric.sure?.weight ?? 5 } };
}
