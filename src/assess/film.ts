import type { Entry } from '../attempt/entry.ts';
import type { Observation } from '../bench/observation.ts';
import type { Breach } from '../bench/port.ts';
import type { ArmatureDesign } from '../engine/parts/armature.ts';
import type { Scenario } from '../scenario/scenario.ts';

/** A stretch of simulated time in which nobody did anything, ended by an act or by the end of the record. */
export interface Stretch {
  /** Number of the entry that began it; -1 for the time before the first. */
  readonly since: number;
  readonly fromMs: number;
  readonly toMs: number;
  /** What the learner had before them at its end, just before the next act. */
  readonly seen: Observation;
}

/** A rule broken, with the entry during or after which it was broken. */
export interface Broken {
  readonly entry: number;
  readonly breach: Breach;
  /** The bench refused the act, so the harm was not done. */
  readonly refused: boolean;
}

/** A whole attempt played again: what was done, and what could be seen while it was done. */
export interface Film {
  readonly scenario: Scenario;
  readonly design: ArmatureDesign;
  readonly entries: readonly Entry[];
  readonly stretches: readonly Stretch[];
  readonly broken: readonly Broken[];
}

export function lasted(stretch: Stretch): number {
  return stretch.toMs - stretch.fromMs;
}

/** The bench is on with the selector at the given place and an armature closes its magnetic circuit. */
export function excited(seen: Observation, selector: 'low' | 'high'): boolean {
  return seen.supply === 'on' && seen.selector === selector && seen.cradle === 'armature';
}

/** Acts of one kind that went through. */
export function acts<T extends Entry['action']['type']>(
  film: Pick<Film, 'entries'>,
  type: T,
): (Entry & { readonly action: Extract<Entry['action'], { readonly type: T }> })[] {
  return film.entries.filter(
    (entry): entry is Entry & { readonly action: Extract<Entry['action'], { readonly type: T }> } =>
      entry.action.type === type && entry.outcome.kind === 'done',
  );
}
