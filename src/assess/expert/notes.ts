import type { Clue } from '../../bench/observation.ts';
import type { Place } from '../../bench/places.ts';

/** One reading of the ammeter, by the bar under the first probe. */
export interface Amps {
  readonly bar: number;
  readonly readingA: number;
}

/** The strip over one slot. */
export interface Felt {
  readonly slot: number;
  readonly angleDeg: number;
  readonly pull: number;
  readonly buzz: number;
}

/** Everything the expert has found out, from observations alone. */
export interface Notes {
  readonly looks: readonly { readonly place: Place; readonly sees: readonly Clue[] }[];
  readonly spaced: readonly Amps[];
  readonly neighbour: readonly Amps[];
  /** Bars at which the lamp was seen to glow; null when the job has no lamp test. */
  readonly lit: readonly number[] | null;
  readonly strip: readonly Felt[];
}

export const NO_NOTES: Notes = { looks: [], spaced: [], neighbour: [], lit: null, strip: [] };
