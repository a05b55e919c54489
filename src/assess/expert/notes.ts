import type { BrushIndex, GaugeKind, PartKind } from '../../bench/action.ts';
import type { Clue } from '../../bench/observation.ts';
import type { FieldPlace, Place, PlatePlace } from '../../bench/places.ts';
import type { RemedyKind } from '../../engine/parts/remedies.ts';

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

/** What an eye makes of the lamp once it has made up its mind. */
export type Glow = 'lit' | 'dim' | 'dark';

export type FieldBrushPlace = Extract<FieldPlace, `field:brush${number}`>;
export type HolderPlace = Exclude<PlatePlace, 'plate:metal'>;

/** The lamp between the plate and one holder: left alone, then with the probe leaned on. */
export interface HolderSeen {
  readonly holder: HolderPlace;
  readonly alone: Glow;
  readonly pressed: Glow;
}

/** The insulation tester between a part's metal and one place of it, megohms or beyond the scale. */
export interface Megohms {
  readonly part: PartKind;
  readonly at: Place;
  readonly megohms: number | 'over';
}

/** The drop along a field branch, or between a bar and the next, mV; null where the feed found no way. */
export interface Drop {
  readonly at: FieldBrushPlace | number;
  readonly millivolts: number | null;
}

export interface Gauged {
  readonly gauge: GaugeKind;
  readonly brush: BrushIndex | null;
  readonly mm: number;
}

/** A remedy that was done; `bar` of a riser. */
export interface Done {
  readonly remedy: RemedyKind;
  readonly bar: number | null;
}

/** What is written down after looking over. @param found how many places had something to see */
export function lookRemark(found: number): string {
  if (found === 0) return 'nothing to see';
  return found === 1 ? 'something to see at one place' : `something to see at ${found} places`;
}

/** Everything the expert has found out, from observations alone. */
export interface Notes {
  readonly looks: readonly { readonly place: Place; readonly sees: readonly Clue[] }[];
  readonly spaced: readonly Amps[];
  readonly neighbour: readonly Amps[];
  /** Bars at which the lamp was seen to glow; null when the job has no lamp test. */
  readonly lit: readonly number[] | null;
  readonly strip: readonly Felt[];
  /** The lamp from the motor terminal to each field brush, and from the case to what can be reached of the winding. */
  readonly continuity: readonly { readonly at: FieldBrushPlace; readonly lamp: Glow }[];
  readonly fieldInsulation: readonly { readonly at: FieldPlace; readonly lamp: Glow }[];
  readonly holders: readonly HolderSeen[];
  readonly megohms: readonly Megohms[];
  readonly drops: readonly Drop[];
  readonly gauges: readonly Gauged[];
  readonly done: readonly Done[];
}

export const NO_NOTES: Notes = {
  looks: [],
  spaced: [],
  neighbour: [],
  lit: null,
  strip: [],
  continuity: [],
  fieldInsulation: [],
  holders: [],
  megohms: [],
  drops: [],
  gauges: [],
  done: [],
};

/** Whether the lens showed a clue at a place. */
export function saw(notes: Pick<Notes, 'looks'>, place: Place, ...clues: readonly Clue[]): boolean {
  return notes.looks.some((look) => look.place === place && look.sees.some((clue) => clues.includes(clue)));
}
