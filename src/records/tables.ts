import type { Marks } from '../assess/mark.ts';
import type { Attempt, Entry } from '../attempt/entry.ts';
import { type Cell, csv } from './csv.ts';
import { type AssessorRecord, pointsAfter, totalAfter } from './record.ts';

/** Everything else of an action, as `name=value` pairs. */
function particulars(action: Entry['action']): string {
  const { type: _, ...rest } = action;
  return Object.entries(rest)
    .map(([name, value]) => `${name}=${typeof value === 'object' ? JSON.stringify(value) : String(value)}`)
    .join('; ');
}

const LOG_HEADER = ['entry', 'time_s', 'act', 'particulars', 'outcome', 'said', 'rules_broken', 'critical'];

/** The log of one attempt, one act a row. */
export function logCsv(attempt: Pick<Attempt, 'entries'>): string {
  return csv(LOG_HEADER, attempt.entries.map(logRow));
}

function logRow({ n, atMs, action, outcome }: Entry): Cell[] {
  const { breaches } = outcome;
  return [
    n,
    atMs / 1000,
    action.type,
    particulars(action),
    outcome.kind,
    outcome.kind === 'refused' ? outcome.sentence : null,
    breaches.map((breach) => breach.interlock).join(' '),
    breaches.some((breach) => breach.critical),
  ];
}

const MARKS_HEADER = ['attempt', 'mark', 'group', 'title', 'earned', 'of', 'why', 'entries'];

/** Marks as computed, one a row. */
export function marksCsv(attempt: string, marks: Marks): string {
  return csv(
    MARKS_HEADER,
    marks.marks.map((mark) => [
      attempt,
      mark.id,
      mark.group,
      mark.title,
      mark.earned,
      mark.of,
      mark.sentence,
      mark.entries.join(' '),
    ]),
  );
}

const RECORD_HEADER = [
  'record',
  'learner',
  'attempt',
  'job',
  'started',
  'mode',
  'mark',
  'title',
  'computed',
  'after_assessor',
  'of',
  'reasons',
  'stopped_by',
  'outcome',
  'assessor',
  'signed_at',
  'key_fingerprint',
];

/** A signed record, one mark a row, computed and changed points side by side. */
export function recordCsv(record: AssessorRecord): string {
  return csv(
    RECORD_HEADER,
    record.evidence.flatMap((item) =>
      item.marks.marks.map((mark) => [
        record.id,
        record.learner.name,
        item.attempt,
        item.job,
        item.startedAt,
        item.mode,
        mark.id,
        mark.title,
        mark.earned,
        pointsAfter(record, item.attempt, mark),
        mark.of,
        reasonsFor(record, item.attempt, mark.id),
        item.marks.stoppedBy?.breach.interlock ?? null,
        record.outcome,
        record.assessor,
        record.signedAt,
        record.signedWith.fingerprint,
      ]),
    ),
  );
}

function reasonsFor(record: AssessorRecord, attempt: string, mark: string): string {
  return record.changes
    .filter((change) => change.attempt === attempt && change.mark === mark)
    .map((change) => `${change.from} to ${change.to}: ${change.reason}`)
    .join(' | ');
}

/** One attempt of a list, as it goes into a table of a class. */
export interface AttemptRow {
  readonly id: string;
  readonly learner: string;
  readonly job: string;
  readonly startedAt: string;
  readonly mode: string;
  readonly minutes: number;
  readonly state: string;
  readonly earned: number | null;
  readonly of: number | null;
  /** Outcome of the record signed over it, or null. */
  readonly outcome: string | null;
}

const LIST_HEADER = [
  'attempt',
  'learner',
  'job',
  'started',
  'mode',
  'minutes',
  'state',
  'earned',
  'of',
  'outcome',
];

export function attemptsCsv(rows: readonly AttemptRow[]): string {
  return csv(
    LIST_HEADER,
    rows.map((row) => [
      row.id,
      row.learner,
      row.job,
      row.startedAt,
      row.mode,
      row.minutes,
      row.state,
      row.earned,
      row.of,
      row.outcome,
    ]),
  );
}

/** Signed records, one a row, with totals after the assessor's changes. */
export function outcomesCsv(records: readonly AssessorRecord[]): string {
  return csv(
    ['record', 'learner', 'attempts', 'earned', 'of', 'outcome', 'assessor', 'signed_at', 'key_fingerprint'],
    records.map((record) => [
      record.id,
      record.learner.name,
      record.evidence.length,
      record.evidence.reduce((sum, item) => sum + totalAfter(record, item), 0),
      record.evidence.reduce((sum, item) => sum + item.marks.of, 0),
      record.outcome,
      record.assessor,
      record.signedAt,
      record.signedWith.fingerprint,
    ]),
  );
}
