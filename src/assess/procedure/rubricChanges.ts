import {
  BUILT_IN_RUBRIC,
  HOUSE_SEQUENCE,
  type Rubric,
  type RubricRow,
  THRESHOLDS,
  thresholdOf,
} from '../../scenario/public/rubric.ts';
import { DIAGNOSIS_TITLES } from '../diagnosis/marks.ts';
import { PROVEN_ID, PROVEN_TITLE } from '../diagnosis/proven.ts';
import { listed, TEST_WORDS } from '../words.ts';
import { CRITERIA } from './rubric.ts';

/** What a criterion is called wherever a person meets it. */
export function criterionTitle(id: string): string {
  const ofVerdict: Readonly<Record<string, string>> = { ...DIAGNOSIS_TITLES, [PROVEN_ID]: PROVEN_TITLE };
  return CRITERIA.get(id)?.title ?? ofVerdict[id] ?? id;
}

const points = (weight: number) => `${weight} ${weight === 1 ? 'point' : 'points'}`;

function rowChanges(row: RubricRow): string[] {
  const title = criterionTitle(row.criterion);
  const usual = BUILT_IN_RUBRIC.criteria.find(({ criterion }) => criterion === row.criterion);
  if (usual === undefined) return [`“${title}” is marked, ${points(row.weight)}; built in: not marked.`];
  const changes: string[] = [];
  if (row.weight !== usual.weight)
    changes.push(`“${title}” is worth ${points(row.weight)}; built in: ${usual.weight}.`);
  const [threshold, before] = [thresholdOf(row), thresholdOf(usual)];
  const range = THRESHOLDS[row.criterion];
  if (range !== undefined && threshold !== before)
    changes.push(`“${title}”: ${range.meaning} ${threshold} ${range.unit}; built in: ${before}.`);
  return changes;
}

function leftOut({ criteria }: Rubric): string[] {
  const marked = new Set(criteria.map(({ criterion }) => criterion));
  return BUILT_IN_RUBRIC.criteria
    .filter(({ criterion }) => !marked.has(criterion))
    .map(
      ({ criterion, weight }) => `“${criterionTitle(criterion)}” is not marked; built in: ${points(weight)}.`,
    );
}

function sureChange({ sure }: Rubric): string[] {
  if (sure === null) return [];
  const rule = sure.rule === 'brier' ? 'Brier' : 'logarithmic';
  return [`How sure is scored by the ${rule} rule, ${points(sure.weight)}; built in: not scored.`];
}

/** How a rubric differs from the built-in one, one sentence each, for the record; empty for the built-in one. */
export function rubricChanges(rubric: Rubric): string[] {
  const changes = [...rubric.criteria.flatMap(rowChanges), ...leftOut(rubric), ...sureChange(rubric)];
  const order = rubric.houseSequence?.map((test) => TEST_WORDS[test]);
  const marked = rubric.criteria.some(({ criterion }) => criterion === HOUSE_SEQUENCE);
  if (order !== undefined && marked) changes.push(`Order of the house: ${listed(order)}.`);
  if (changes.length === 0) return [];
  return [`Marked by “${rubric.name}”, version ${rubric.version}.`, ...changes];
}
