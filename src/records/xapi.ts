import { v5 } from 'uuid';
import type { Marks } from '../assess/mark.ts';
import type { Attempt, Entry } from '../attempt/entry.ts';
import type { FoundPlace, Verdict } from '../bench/paper.ts';
import { type AssessorRecord, type EvidenceItem, pointsAfter, totalAfter } from './record.ts';

/**
 * Statements in the open format for learning experiences (xAPI, IEEE 9274.1.1): who did what, with what result. Only
 * fields that both its version 1.0 and the IEEE standard have are used, and ids are made from what is stated, so that
 * the same attempt sent twice gives the same statements. Nothing of the hidden fault is stated.
 */
export interface Statement {
  readonly id: string;
  readonly actor: Agent;
  readonly verb: { readonly id: string; readonly display: Words };
  readonly object: Activity;
  readonly result?: Result;
  readonly context: Context;
  readonly timestamp: string;
}

type Words = Readonly<Record<string, string>>;

interface Agent {
  readonly objectType: 'Agent';
  readonly name: string;
  readonly account: { readonly homePage: string; readonly name: string };
}

interface Activity {
  readonly objectType: 'Activity';
  readonly id: string;
  readonly definition: {
    readonly name: Words;
    readonly type?: string;
    readonly interactionType?: 'long-fill-in';
  };
}

interface Result {
  readonly score?: {
    readonly scaled: number;
    readonly raw: number;
    readonly min: number;
    readonly max: number;
  };
  readonly success?: boolean;
  readonly completion?: boolean;
  readonly response?: string;
  /** ISO 8601 duration. */
  readonly duration?: string;
  readonly extensions?: Readonly<Record<string, unknown>>;
}

interface Context {
  /** Ties all statements of one attempt together. */
  readonly registration: string;
  readonly instructor?: Agent;
  readonly contextActivities?: { readonly parent: readonly Activity[] };
}

/** Where the people and jobs of a school are named; the address need not answer. */
export interface School {
  /** Absolute address without a slash at the end. */
  readonly home: string;
  /** Language tag of names and sentences (BCP 47). */
  readonly language: string;
}

/** The invented workshop; `.example` is reserved for such use (RFC 2606). */
export const QUARRY_ROAD: School = { home: 'https://quarry-road.example', language: 'en' };

/** Verbs and activity types of the vocabulary published with the format (addresses from memory). */
const VERBS = ['attempted', 'answered', 'scored', 'completed', 'terminated', 'passed', 'failed'] as const;
type Verb = (typeof VERBS)[number];
const verb = (name: Verb) => ({ id: `http://adlnet.gov/expapi/verbs/${name}`, display: { en: name } });
const TYPE = 'http://adlnet.gov/expapi/activities';

/** Namespace of our statements' ids (UUID version 5, RFC 9562): made from the name of the product. */
const NAMESPACE = v5('slot-and-riser/statement', '00000000-0000-0000-0000-000000000000');

/** What was done at the bench, without any judgement by a person. */
export function attemptStatements(attempt: Attempt, marks: Marks, school: School = QUARRY_ROAD): Statement[] {
  const tell = teller(attempt, school);
  return [
    tell('attempted', 'begin', tell.job, attempt.startedAt),
    ...attempt.entries.flatMap((entry) => verdictStatement(entry, tell)),
    ...marks.marks.map((mark) =>
      tell('scored', `mark ${mark.id}`, tell.part('marks', mark.id, mark.title), tell.end, {
        score: score(mark.earned, mark.of),
        extensions: { [`${school.home}/terms/why`]: mark.sentence },
      }),
    ),
    endStatement(attempt, marks, tell),
  ];
}

/** What the assessor decided on one attempt of a record, on top of `attemptStatements`. */
export function recordStatements(record: AssessorRecord, school: School = QUARRY_ROAD): Statement[] {
  return record.evidence.map((item) => {
    const job = jobActivity(school, item.jobId, item.job);
    return {
      id: v5(`${record.id} ${item.attempt} outcome`, NAMESPACE),
      actor: agent(record.learner.name, school),
      verb: verb(record.outcome === 'competent' ? 'passed' : 'failed'),
      object: job,
      result: {
        success: record.outcome === 'competent',
        score: score(totalAfter(record, item), item.marks.of),
        extensions: judgement(record, item, school),
      },
      context: { registration: registration(item.attempt), instructor: agent(record.assessor, school) },
      timestamp: record.signedAt,
    };
  });
}

function judgement(record: AssessorRecord, item: EvidenceItem, school: School): Record<string, unknown> {
  return {
    [`${school.home}/terms/record`]: record.id,
    [`${school.home}/terms/seal`]: item.seal,
    [`${school.home}/terms/key-fingerprint`]: record.signedWith.fingerprint,
    [`${school.home}/terms/changed-marks`]: record.changes
      .filter((change) => change.attempt === item.attempt)
      .map(({ mark, from, to, reason }) => ({ mark, from, to, reason })),
    [`${school.home}/terms/marks`]: item.marks.marks.map((mark) => ({
      mark: mark.id,
      points: pointsAfter(record, item.attempt, mark),
      of: mark.of,
    })),
  };
}

interface Teller {
  (name: Verb, key: string, object: Activity, timestamp: string, result?: Result): Statement;
  readonly job: Activity;
  /** Wall clock at the end of the attempt. */
  readonly end: string;
  readonly at: (ms: number) => string;
  readonly part: (kind: string, id: string, title: string) => Activity;
}

/** Writes statements about one attempt. */
function teller(attempt: Attempt, school: School): Teller {
  const { id, card } = attempt.scenario.public;
  const job = jobActivity(school, id, card.unit);
  const at = (ms: number) => new Date(Date.parse(attempt.startedAt) + ms).toISOString();
  const tell = (
    name: Verb,
    key: string,
    object: Activity,
    timestamp: string,
    result?: Result,
  ): Statement => ({
    id: v5(`${attempt.id} ${key}`, NAMESPACE),
    actor: agent(attempt.learner, school),
    verb: verb(name),
    object,
    ...(result === undefined ? {} : { result }),
    context: {
      registration: registration(attempt.id),
      ...(object === job ? {} : { contextActivities: { parent: [job] } }),
    },
    timestamp,
  });
  const part = (kind: string, id: string, title: string): Activity => ({
    objectType: 'Activity',
    id: `${job.id}/${kind}/${encodeURIComponent(id)}`,
    definition: { name: { [school.language]: title }, type: `${TYPE}/objective` },
  });
  return Object.assign(tell, { job, at, end: at(attempt.endMs), part });
}

const registration = (attempt: string) => v5(`attempt ${attempt}`, NAMESPACE);

function jobActivity(school: School, id: string, unit: string): Activity {
  return {
    objectType: 'Activity',
    id: `${school.home}/jobs/${encodeURIComponent(id)}`,
    definition: { name: { [school.language]: unit }, type: `${TYPE}/simulation` },
  };
}

/** People are named by an account of the school and never by an address of their own. */
function agent(name: string, school: School): Agent {
  const known = name.trim() === '' ? 'unnamed' : name.trim();
  return { objectType: 'Agent', name: known, account: { homePage: school.home, name: known } };
}

function verdictStatement(entry: Entry, tell: Teller): Statement[] {
  const { action } = entry;
  if (action.type !== 'verdict.write' || entry.outcome.kind !== 'done') return [];
  const { part } = action.verdict;
  const object: Activity = {
    ...tell.part('verdicts', part, `Verdict on the ${part}`),
    definition: {
      ...tell.part('verdicts', part, `Verdict on the ${part}`).definition,
      type: `${TYPE}/cmi.interaction`,
      interactionType: 'long-fill-in',
    },
  };
  const response = verdictText(action.verdict);
  return [tell('answered', `verdict ${entry.n}`, object, tell.at(entry.atMs), { response })];
}

function verdictText(verdict: Verdict): string {
  const findings = verdict.findings.map(({ condition, place }) => `${condition}${foundAt(place)}`);
  return `${findings.join(', ')}; next: ${verdict.disposition}; sure: ${verdict.sure}; because: ${verdict.because}`;
}

function foundAt(place: FoundPlace): string {
  switch (place.kind) {
    case 'somewhere':
      return '';
    case 'branch':
      return ` at branch ${place.brush}`;
    case 'holder':
      return ` at ${place.holder.slice('plate:'.length)}`;
    default:
      return ` at ${place.kind} ${place.count} from the chalk`;
  }
}

function endStatement(attempt: Attempt, marks: Marks, tell: Teller): Statement {
  const stopped = marks.stoppedBy !== null;
  return tell(stopped ? 'terminated' : 'completed', 'end', tell.job, tell.end, {
    completion: !stopped,
    score: score(marks.earned, marks.of),
    duration: duration(attempt.endMs),
  });
}

function score(raw: number, max: number): NonNullable<Result['score']> {
  return { scaled: max > 0 ? raw / max : 0, raw, min: 0, max };
}

/** Seconds to two decimals, as the format asks for. */
const duration = (ms: number) => `PT${(Math.round(ms / 10) / 100).toString()}S`;
