import type { Marks } from '../../assess/mark.ts';
import type { Attempt } from '../../attempt/entry.ts';
import type { Mode } from '../../bench/port.ts';
import type { CriteriaSet } from '../../records/criteria.ts';
import type { Draft } from '../../records/draft.ts';
import type { Playback } from '../../records/playback.ts';
import type { Decision } from '../../records/record.ts';
import type { SignedRecord } from '../../records/sign.ts';
import type { Verification } from '../../records/verify.ts';
import type { Job } from '../../scenario/public/job.ts';
import type { Parsed } from '../../scenario/scenario.ts';
import type { MountScene } from '../apprentice/bench/mountScene.ts';
import type { Safe } from '../shared/keepSafe.ts';
import type { PassReadings } from '../shell.ts';

/** One finished attempt in the assessor's list. */
export interface FinishedAttempt {
  readonly id: string;
  readonly learner: string;
  readonly jobId: string;
  /** Short name of the unit on the job card. */
  readonly job: string;
  readonly mode: Mode;
  /** Wall clock at the start, ISO 8601. */
  readonly startedAt: string;
  /** Simulated time at the bench, ms. */
  readonly endMs: number;
  readonly state: 'handedIn' | 'stopped';
  readonly earned: number;
  readonly of: number;
  /** The newest record signed over it, or null. */
  readonly record: { readonly id: string; readonly outcome: Decision; readonly assessor: string } | null;
}

/** An attempt to be watched: the learner's, or the expert's at the same job. */
export interface Run {
  readonly attempt: Attempt;
  readonly job: Job;
  readonly playback: Playback;
}

export interface OpenedAttempt extends Run {
  /** How the rubric was changed, one sentence each; empty for the built-in one. */
  readonly rubricChanges: readonly string[];
}

/** What is found by playing an attempt through and weighing what was read, which takes longer than to open it. */
export interface Findings {
  readonly marks: Marks;
  readonly passes: readonly PassReadings[];
  /** Whether doing it all again gave what the record says; the sentence names the first divergence. */
  readonly replay: { readonly agreed: boolean; readonly sentence: string };
}
export type JudgedAttempt = OpenedAttempt & Findings;

export interface DraftSummary {
  readonly id: string;
  readonly title: string;
  readonly changedAt: string;
}

export interface KnownKey {
  readonly fingerprint: string;
  readonly owner: string;
  readonly madeAt: string;
  /** True for a key of this browser, which can sign; false for one that is only recognised. */
  readonly canSign: boolean;
}

export interface FileOut {
  readonly name: string;
  readonly text: string;
}

/** A file somebody handed over, looked into and not yet kept. */
export interface CheckedFile {
  readonly name: string;
  readonly verification: Verification;
  /** Each attempt in it, done again. */
  readonly replays: readonly {
    readonly attempt: string;
    readonly agreed: boolean;
    readonly sentence: string;
  }[];
  readonly signed: SignedRecord | null;
  readonly attempts: readonly { readonly id: string; readonly learner: string; readonly job: string }[];
  /** Keeps attempts and record at this desk. @returns a sentence saying what was kept */
  keep(): Promise<Parsed<string>>;
}

/** Forms in which a record leaves the desk. */
export type RecordForm = 'evidence' | 'table' | 'statements';
export type AttemptForm = 'sealed' | 'log' | 'marks' | 'statements';

/** Everything the assessor's screens ask of the rest. Errors of a person come back as issues, never as throws. */
export interface AssessorDesk {
  readonly criteria: readonly CriteriaSet[];
  readonly safe: Safe;
  attempts(): Promise<Parsed<readonly FinishedAttempt[]>>;
  open(attemptId: string): Promise<Parsed<OpenedAttempt>>;
  judge(attemptId: string): Promise<Parsed<Findings>>;
  /** The scripted expert at the same job, from observations alone. */
  expertRun(attemptId: string): Promise<Parsed<Run>>;
  /** Hangs the picture of a bench that only shows into its host; returns the way to take it out. */
  mountReplay(job: Job, ...mount: Parameters<MountScene>): () => void;

  drafts(): Promise<Parsed<readonly DraftSummary[]>>;
  /** Starts a draft over attempts of one person. @returns its id */
  begin(attemptIds: readonly string[]): Promise<Parsed<string>>;
  draft(id: string): Promise<Parsed<{ readonly draft: Draft; readonly revision: number }>>;
  /** @returns the new revision */
  save(draft: Draft, since: number): Promise<Parsed<number>>;
  discard(id: string): Promise<Parsed<null>>;
  /** Seals the attempts, signs the record over them and puts the draft away. @returns the record's id */
  sign(draft: Draft, fingerprint: string): Promise<Parsed<string>>;

  records(): Promise<Parsed<readonly SignedRecord[]>>;
  record(id: string): Promise<Parsed<SignedRecord>>;
  recordFile(id: string, form: RecordForm): Promise<Parsed<FileOut>>;
  attemptFile(id: string, form: AttemptForm): Promise<Parsed<FileOut>>;
  /** A table of attempts, one a row. */
  listFile(attemptIds: readonly string[]): Promise<Parsed<FileOut>>;

  check(file: File): Promise<Parsed<CheckedFile>>;

  keys(): Promise<Parsed<readonly KnownKey[]>>;
  makeKey(owner: string): Promise<Parsed<KnownKey>>;
  /** Remembers the key of a record as somebody's, once its fingerprint has been compared. */
  trust(signed: SignedRecord, owner: string): Promise<Parsed<KnownKey>>;
  forget(fingerprint: string): Promise<Parsed<null>>;
}
