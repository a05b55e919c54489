import type { Attempt, Entry } from '../attempt/entry.ts';

/** Everything of an attempt but its log. */
export type AttemptHead = Omit<Attempt, 'entries'>;

export interface AttemptSummary {
  readonly id: string;
  readonly scenarioId: string;
  /** Short name of the unit on the job card. */
  readonly unit?: string;
  readonly startedAt: string;
  readonly endMs: number;
  readonly mode: Attempt['mode'];
  readonly learner: string;
  /** Set when the attempt was handed in or stopped: no more may be added. */
  readonly result: AttemptResult | null;
}

/** How an attempt ended, for the list of jobs; the marks themselves are always computed from the log. */
export interface AttemptResult {
  readonly state: 'handedIn' | 'stopped';
  readonly earned: number;
  readonly of: number;
}

/** Why something could not be kept, in one sentence for the person at the screen. */
export class StoreRefused extends Error {}

/**
 * The one port through which attempts are kept: this browser now, a server later. A promise that resolves means the
 * thing is on disk; one that rejects leaves what was stored before as it was.
 */
export interface AttemptStore {
  list(): Promise<readonly AttemptSummary[]>;
  begin(head: AttemptHead): Promise<void>;
  /** Adds entries whose numbers follow on from those already kept. */
  append(id: string, entries: readonly Entry[]): Promise<void>;
  /** Keeps how far simulated time has run, so that a reload goes on from there. */
  reached(id: string, endMs: number): Promise<void>;
  close(id: string, endMs: number, result: AttemptResult): Promise<void>;
  /** The stored attempt as it lies there; whoever reads it parses it. */
  read(id: string): Promise<unknown>;
  /** Adds a whole attempt from a file; refuses one that is already here. */
  add(attempt: Attempt, result: AttemptResult | null): Promise<void>;
  remove(id: string): Promise<void>;
}
