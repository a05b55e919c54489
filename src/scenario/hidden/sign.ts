import type { Clue } from '../../bench/observation.ts';
import type { Place } from '../../bench/places.ts';

/**
 * A sign the lens may show. A fault shows its sign at a place only with a certain chance, and a sound place shows a
 * sign of its own now and then: clues are not verdicts. The chances are ours (common practice names the signs, no
 * source gives figures).
 */
export interface Sign {
  readonly place: Place;
  readonly clue: Clue;
  readonly chance: number;
}
