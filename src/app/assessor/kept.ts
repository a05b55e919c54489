import type { Attempt } from '../../attempt/entry.ts';
import type { Parsed } from '../../scenario/scenario.ts';

/** An attempt as it is read today, and as it lies in the store: seals are made over what lies there, however old. */
export interface KeptAttempt {
  readonly attempt: Attempt;
  readonly asKept: Attempt;
}

export type Kept = (id: string) => Promise<Parsed<KeptAttempt>>;
