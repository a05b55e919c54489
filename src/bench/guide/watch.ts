import { FULL_GLOW } from '../../engine/instruments/lamp.ts';
import type { Observation } from '../observation.ts';
import { ALL_LEADS, type Place } from '../places.ts';
import { acrossPart } from '../state.ts';
import type { Watched } from './step.ts';

export const NOTHING_WATCHED: Watched = { lamp: 'unproved', leanedOn: [] };

/** What is known after one more observation; the same object when it adds nothing. */
export function watch(watched: Watched, seen: Observation): Watched {
  const lamp = lampAfter(watched.lamp, seen);
  const leaned = leanedNow(seen).filter((place) => !watched.leanedOn.includes(place));
  if (lamp === watched.lamp && leaned.length === 0) return watched;
  return { lamp, leanedOn: [...watched.leanedOn, ...leaned] };
}

/** Prove, test, prove again: what was proved on one spell of LOW does not hold for the next. */
function lampAfter(
  lamp: Watched['lamp'],
  { supply, selector, leads, lamp: { glow } }: Observation,
): Watched['lamp'] {
  if (supply !== 'on' || selector !== 'low') return 'unproved';
  const together = leads['lamp.1'].touches === 'tip:lamp.2' || leads['lamp.2'].touches === 'tip:lamp.1';
  if (together) return glow === FULL_GLOW ? 'proved' : lamp;
  return acrossPart(leads, 'lamp') === null ? lamp : 'used';
}

function leanedNow({ leads }: Observation): Place[] {
  return ALL_LEADS.flatMap((lead) => {
    const { leaning, touches } = leads[lead];
    return leaning && touches !== null ? [touches] : [];
  });
}
