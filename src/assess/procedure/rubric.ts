import type { Mark } from '../mark.ts';
import type { Worked } from '../worked.ts';
import { COVERAGE } from './coverage.ts';
import type { Criterion } from './criterion.ts';
import { PAPERWORK } from './paperwork.ts';
import { SAFETY } from './safety.ts';

/** Every criterion the bench knows, by id. */
export const CRITERIA: ReadonlyMap<string, Criterion> = new Map(
  [...COVERAGE, ...SAFETY, ...PAPERWORK].map((criterion) => [criterion.id, criterion]),
);

/** What a rubric is: which criteria are marked, in which order, and what each is worth. */
export type Rubric = readonly { readonly criterion: string; readonly weight: number }[];

/**
 * The built-in rubric. Only precedence that has a reason is marked; open, ground and short tests may come in any
 * order. The weights are ours: what can kill and what finds the fault weighs most.
 */
export const BUILT_IN_RUBRIC: Rubric = [
  { criterion: 'lookedFirst', weight: 4 },
  { criterion: 'chalkedFirst', weight: 2 },
  { criterion: 'placedOff', weight: 4 },
  { criterion: 'cradleFilled', weight: 4 },
  { criterion: 'spacedLargest', weight: 2 },
  { criterion: 'spacedPass', weight: 10 },
  { criterion: 'neighbourPass', weight: 10 },
  { criterion: 'lampProved', weight: 8 },
  { criterion: 'groundPass', weight: 10 },
  { criterion: 'stripPass', weight: 10 },
  { criterion: 'stripOnHigh', weight: 3 },
  { criterion: 'stripClear', weight: 2 },
  { criterion: 'leadsRight', weight: 5 },
  { criterion: 'safeHands', weight: 10 },
  { criterion: 'probesOff', weight: 3 },
  { criterion: 'needleSpared', weight: 2 },
  { criterion: 'keptCool', weight: 2 },
  { criterion: 'notLeftOn', weight: 4 },
  { criterion: 'recordedFirst', weight: 5 },
];

/** Marks for how the work was done; criteria for tests the job does not have are left out. */
export function procedureMarks(worked: Worked, rubric: Rubric = BUILT_IN_RUBRIC): Mark[] {
  return rubric.flatMap(({ criterion: id, weight }) => {
    const criterion = CRITERIA.get(id);
    if (criterion === undefined) throw new Error(`the rubric names ${id}, which is no criterion`);
    if (criterion.applies?.(worked) === false) return [];
    const { share, sentence, entries } = criterion.judge(worked);
    const earned = Math.round(share * weight * 10) / 10;
    return [{ id, group: 'procedure', title: criterion.title, earned, of: weight, sentence, entries }];
  });
}
