import type { Action, PartKind } from '../action.ts';
import type { CommutatorGeometry } from '../geometry.ts';
import type { Observation } from '../observation.ts';
import type { SheetLine, TestKind } from '../paper.ts';
import type { LeadId, Place } from '../places.ts';
import type { LampStage } from '../state.ts';
import type { Control } from '../touchables.ts';

/** The next thing to do, and why. */
export interface GuideStep {
  readonly do: string;
  readonly because: string;
  /** The act itself, or null for what only the learner can do: read, write, wait. */
  readonly act: Action | null;
  /** What to look for on the bench. */
  readonly highlight: Place | Control | null;
  /** Set when a line should be written for this test. */
  readonly write?: TestKind;
}

/** What of a job card the guide goes by. */
export interface GuideJob {
  readonly parts: readonly PartKind[];
  readonly tests: readonly TestKind[];
  readonly armature: CommutatorGeometry;
}

/** What is in sight, what stands on the sheet, and what someone who has watched knows of the lamp. */
export interface GuideFacts {
  readonly seen: Observation;
  readonly lines: readonly SheetLine[];
  readonly watched: Watched;
}

/** Folded from one observation after another: see watch.ts. */
export interface Watched {
  readonly lamp: LampStage;
  /** Holders someone has leaned on. */
  readonly leanedOn: readonly Place[];
}

/** One look at the bench with the card at hand. */
export interface Asked extends GuideFacts {
  readonly job: GuideJob;
}

export function doing(
  act: Action,
  say: string,
  because: string,
  highlight: GuideStep['highlight'],
): GuideStep {
  return { do: say, because, act, highlight };
}

export function writing(test: TestKind, say: string, because: string): GuideStep {
  return { do: say, because, act: null, highlight: null, write: test };
}

/** The first of several steps that is still to be done. */
export function first(...steps: readonly (() => GuideStep | null)[]): GuideStep | null {
  for (const step of steps) {
    const found = step();
    if (found !== null) return found;
  }
  return null;
}

/** The selector at a place, or the step that brings it there. */
export function powered(to: 'off' | 'low', { seen }: Asked, because: string): GuideStep | null {
  if (seen.selector === to) return null;
  const act: Action = { type: 'selector.turn', to };
  return doing(act, `Turn the selector to ${to.toUpperCase()}.`, because, 'selector');
}

/** Leads of one kind hung up, tips off first. */
export function hungUp(leads: readonly LeadId[], { seen }: Asked): GuideStep | null {
  const lead = leads.find((id) => seen.leads[id].at !== 'holster' && seen.leads[id].at !== 'absent');
  if (lead === undefined) return null;
  return doing(
    { type: 'lead.holster', lead },
    'Hang up the leads of the test before.',
    'A lead left on a part belongs to the next reading too, and a hand that holds one cannot do anything else.',
    lead,
  );
}
