import { type Rubric, thresholdOf } from '../../scenario/public/rubric.ts';
import { PROVEN_ID, provableParts } from '../diagnosis/proven.ts';
import type { Mark } from '../mark.ts';
import type { Worked } from '../worked.ts';
import { BENCH_CARE } from './benchCare.ts';
import { COVERAGE } from './coverage.ts';
import type { Criterion, JobCard } from './criterion.ts';
import { houseSequence } from './houseSequence.ts';
import { MAT_COVERAGE } from './matCoverage.ts';
import { PAPERWORK } from './paperwork.ts';
import { RAIL_WORK } from './railWork.ts';
import { REMEDY_WORK } from './remedyWork.ts';
import { SAFETY } from './safety.ts';

/** Every criterion of how the work was done, by id. What each is worth stands in scenario/public/rubric.ts. */
export const CRITERIA: ReadonlyMap<string, Criterion> = new Map(
  [
    ...COVERAGE,
    ...MAT_COVERAGE,
    ...RAIL_WORK,
    ...REMEDY_WORK,
    ...SAFETY,
    ...BENCH_CARE,
    ...PAPERWORK,
    houseSequence,
  ].map((criterion) => [criterion.id, criterion]),
);

/** Whether a criterion can count for a job, by what its card says alone; the marks leave out what cannot. */
export function canCount(id: string, card: JobCard): boolean {
  if (id === PROVEN_ID) return provableParts(card).length > 0;
  return CRITERIA.get(id)?.applies?.(card) ?? true;
}

/** Marks for how the work was done. */
export function procedureMarks(worked: Worked, rubric: Rubric): Mark[] {
  const card = worked.film.scenario.public;
  return rubric.criteria.flatMap((row) => {
    const { criterion: id, weight } = row;
    const criterion = CRITERIA.get(id);
    if (criterion === undefined || !canCount(id, card) || criterion.arises?.(worked) === false) return [];
    const { share, sentence, entries } = criterion.judge(worked, thresholdOf(row) ?? 0);
    const { of, earned } = worked.film.points.worth(weight);
    return [{ id, group: 'procedure', title: criterion.title, earned: earned(share), of, sentence, entries }];
  });
}
