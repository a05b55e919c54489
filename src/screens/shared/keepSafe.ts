import type { Issue, Parsed } from '../../scenario/scenario.ts';

/** What the desks ask for to keep everything in this browser safe. */
export interface Safe {
  /** Everything kept in this browser as one file. */
  saveAll(): Promise<Parsed<{ readonly name: string; readonly text: string }>>;
  /** Takes in such a file; what is here already is never overwritten. */
  takeIn(file: File): Promise<Parsed<TakenInFile>>;
  /** How much room there is, in one sentence; null where the browser does not say. */
  room(): Promise<string | null>;
}

export interface TakenInFile {
  readonly said: string;
  /** What was left out and why; it is still in the file. */
  readonly leftOut: readonly Issue[];
}
