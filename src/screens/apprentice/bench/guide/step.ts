import type { Action } from '../../../../bench/action.ts';
import type { GuideStep, RemedyDone } from '../../../../bench/guide/guide.ts';
import type { Observation } from '../../../../bench/observation.ts';
import type { SheetLine, TestKind, Verdict } from '../../../../bench/paper.ts';
import type { Job } from '../../../../scenario/public/job.ts';
import type { Known } from './known.ts';

/** The next thing to do, and why. */
export interface Step {
  readonly say: string;
  readonly why: string;
  /** The act itself, or null for what only the learner can do: read, write, wait, decide. */
  readonly act: Action | null;
  /** Set when a line should be written for this test. */
  readonly write?: TestKind;
}

/** What the guide goes by: the card, what is in sight, what stands on paper, what has been seen so far. */
export interface Situation {
  readonly job: Job;
  readonly seen: Observation;
  /** Lines that still say something of the parts. */
  readonly lines: readonly SheetLine[];
  readonly remedies: readonly RemedyDone[];
  readonly verdicts: readonly Verdict[];
  readonly known: Known;
}

export function doing(act: Action, say: string, why: string): Step {
  return { say, why, act };
}

export function writing(test: TestKind, say: string, why: string): Step {
  return { say, why, act: null, write: test };
}

/** The selector at a place, or the step that brings it there. */
export function powered(to: 'low' | 'high', { seen }: Situation, why: string): Step | null {
  if (seen.selector === to) return null;
  return doing({ type: 'selector.turn', to }, `Turn the selector to ${to.toUpperCase()}.`, why);
}

/** A step of the bench's own guide as one of this one. */
export function asStep(step: GuideStep | null): Step | null {
  if (!step) return null;
  const { do: say, because: why, act, write } = step;
  return { say, why, act, ...(write ? { write } : {}) };
}
