import type { Action, PartKind } from '../action.ts';
import type { CommutatorGeometry } from '../geometry.ts';
import type { Clue, Observation } from '../observation.ts';
import type { SheetLine, TestKind } from '../paper.ts';
import type { LeadId, Place } from '../places.ts';
import type { LampStage } from '../state.ts';
import type { Control } from '../touchables.ts';
import type { LampTrouble } from './deadLamp.ts';
import type { MeterTrouble } from './meter.ts';
import type { RemedyDone } from './remedies.ts';

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
  readonly limits: CardLimits;
}

/** Limits on the card that decide whether a remedy is called for: mm, and megohms. */
export interface CardLimits {
  readonly commutatorDiameterMm: number;
  readonly runOutMm: number;
  readonly undercutMm: number;
  readonly insulationMohm: number;
}

/** What is in sight, what stands on the sheet, and what someone who has watched knows of lamp and ammeter. */
export interface GuideFacts {
  readonly seen: Observation;
  /** Lines that still say something of the parts: see remedies.ts. */
  readonly lines: readonly SheetLine[];
  readonly remedies: readonly RemedyDone[];
  readonly watched: Watched;
}

/** Folded from one observation after another: see watch.ts. */
export interface Watched {
  readonly lamp: LampStage;
  /** Holders someone has leaned on since the tip was put there. */
  readonly leanedOn: readonly Place[];
  /** A lamp that stays dark with its tips together. */
  readonly trouble: LampTrouble;
  /** An ammeter that has shown nothing yet. */
  readonly meter: MeterTrouble;
  /** Handles that were looked at through the lens. */
  readonly handlesSeen: readonly Place[];
  /** What the lens has shown, and where; of the bench's own leads only until they are put right. */
  readonly clues: readonly { readonly place: Place; readonly clue: Clue }[];
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
export function powered(to: 'off' | 'low', { seen }: Pick<Asked, 'seen'>, because: string): GuideStep | null {
  if (seen.selector === to) return null;
  const act: Action = { type: 'selector.turn', to };
  return doing(act, `Turn the selector to ${to.toUpperCase()}.`, because, 'selector');
}

/** Leads of one kind hung up, tips off first. */
export function hungUp(leads: readonly LeadId[], { seen }: Pick<Asked, 'seen'>): GuideStep | null {
  const lead = leads.find((id) => seen.leads[id].at !== 'holster' && seen.leads[id].at !== 'absent');
  if (lead === undefined) return null;
  return doing(
    { type: 'lead.holster', lead },
    'Hang up the leads of the test before.',
    'A lead left on a part belongs to the next reading too, and a hand that holds one cannot do anything else.',
    lead,
  );
}
