import type { AssessorRecord } from '../../records/record.ts';
import type { SignedRecord } from '../../records/sign.ts';

/** What two assessors said of the same thing. */
export interface Pair {
  readonly about: string;
  readonly first: string;
  readonly second: string;
}

export interface Compared {
  readonly first: string;
  readonly second: string;
  /** One pair per learner and set of attempts judged by both. */
  readonly outcomes: readonly Pair[];
  /** One pair per criterion of those. */
  readonly criteria: readonly Pair[];
}

/** Assessors whose records are at hand, by key: two people may have one name. */
export function assessorsOf(
  records: readonly SignedRecord[],
): { readonly key: string; readonly name: string }[] {
  const names = new Map<string, string>();
  for (const { record } of records) names.set(record.signedWith.fingerprint, record.assessor);
  return [...names].map(([key, name]) => ({ key, name }));
}

/**
 * Lays the records of two assessors side by side where both judged the very same attempts; of several by one assessor
 * over the same attempts the newest counts.
 */
export function compare(records: readonly SignedRecord[], firstKey: string, secondKey: string): Compared {
  const [first, second] = [newestOf(records, firstKey), newestOf(records, secondKey)];
  const both = [...first].flatMap(([attempts, one]) => {
    const other = second.get(attempts);
    return other === undefined ? [] : [{ one, other }];
  });
  return {
    first: nameOf(records, firstKey),
    second: nameOf(records, secondKey),
    outcomes: both.map(({ one, other }) => ({
      about: aboutOf(one),
      first: one.outcome,
      second: other.outcome,
    })),
    criteria: both.flatMap(({ one, other }) => criteriaPairs(one, other)),
  };
}

function newestOf(records: readonly SignedRecord[], key: string): Map<string, AssessorRecord> {
  const own = records.map(({ record }) => record).filter((record) => record.signedWith.fingerprint === key);
  own.sort((one, other) => one.signedAt.localeCompare(other.signedAt));
  return new Map(own.map((record) => [attemptsOf(record), record]));
}

/** The seals and not the ids: the same attempt, entry for entry. */
const attemptsOf = (record: AssessorRecord) =>
  record.evidence
    .map(({ seal }) => seal)
    .sort()
    .join(' ');

const nameOf = (records: readonly SignedRecord[], key: string) =>
  records.find(({ record }) => record.signedWith.fingerprint === key)?.record.assessor ?? '';

const aboutOf = ({ learner, evidence }: AssessorRecord) =>
  `${learner.name}: ${evidence.map(({ job }) => job).join(', ')}`;

function criteriaPairs(one: AssessorRecord, other: AssessorRecord): Pair[] {
  const said = new Map(other.criteria.judgements.map(({ criterion, met }) => [criterion, met]));
  return one.criteria.judgements.flatMap(({ criterion, title, met }) => {
    const second = said.get(criterion);
    return second === undefined ? [] : [{ about: `${one.learner.name}: ${title}`, first: met, second }];
  });
}
