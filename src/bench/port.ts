import type { BodyEffect } from '../engine/instruments/touch.ts';
import type { Action } from './action.ts';
import type { Observation } from './observation.ts';

/** Help the bench gives: guided refuses danger, practice warns and lets it happen, assessed lets it happen in silence. */
export type Mode = 'guided' | 'practice' | 'assessed';

export interface Breach {
  /** Code of the interlock that was broken. */
  readonly interlock: string;
  readonly sentence: string;
  /** A critical breach stops the attempt. */
  readonly critical: boolean;
  /** What went through the body: worked out when it has happened, for the debrief. */
  readonly touch?: BodyTouch;
}

/** A body on live metal: settled current, A rms, and what such a current does. */
export interface BodyTouch {
  readonly currentA: number;
  readonly effect: BodyEffect;
}

/** What became of an action. `refused` leaves the bench as it was and says why in one sentence. */
export type Outcome =
  | { readonly kind: 'done'; readonly breaches: readonly Breach[] }
  | { readonly kind: 'refused'; readonly sentence: string; readonly breaches: readonly Breach[] };

/**
 * A running bench as screens, scene and sound see it: one in this browser now, one held by a server later.
 * Simulated time runs with the link's clock while it is not paused.
 */
export interface BenchPort {
  send(action: Action): Outcome;
  /** The observation now. */
  look(): Observation;
  /** Calls back after every action and while anything a person could notice is changing; returns the way to stop. */
  watch(listener: (seen: Observation) => void): () => void;
  pause(): void;
  resume(): void;
}
