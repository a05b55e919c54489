import type { Breach } from '../bench/port.ts';

/** One mark, traced to the log. */
export interface Mark {
  readonly id: string;
  readonly group: 'procedure' | 'diagnosis';
  readonly title: string;
  readonly earned: number;
  readonly of: number;
  /** Why, in one sentence a learner understands. */
  readonly sentence: string;
  /** Numbers of the log entries that earned or lost it. */
  readonly entries: readonly number[];
}

export interface Marks {
  readonly marks: readonly Mark[];
  readonly earned: number;
  readonly of: number;
  /** Set when a critical act stopped the attempt: the outcome is then *not yet*, whatever the marks. */
  readonly stoppedBy: { readonly entry: number; readonly breach: Breach } | null;
}
