import type { Group } from './case.ts';
import type { MatEvidence, MatQuestion, MatShown } from './reading.ts';

/** A part of the mat: how readings weigh what it may have, and what readings it would give. */
export interface MatModel<F> {
  /** Faults of all cases there may be in any weighing. */
  readonly everyFault: readonly F[];
  /** Groups of cases, always the same ones in the same order. */
  weigh(evidence: MatEvidence): readonly Group<F>[];
  /** Number of the group a question is about, or null when it is about none. */
  groupOf(question: MatQuestion): number | null;
  /** What would be read of the part with some faults. */
  shows(question: MatQuestion, faults: readonly F[]): MatShown;
}
