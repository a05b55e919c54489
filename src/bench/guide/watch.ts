import { FULL_GLOW } from '../../engine/instruments/lamp.ts';
import type { Observation } from '../observation.ts';
import { ALL_LEADS } from '../places.ts';
import { acrossPart } from '../state.ts';
import { NO_TROUBLE, troubleAfter } from './deadLamp.ts';
import { meterAfter, NO_METER_TROUBLE } from './meter.ts';
import type { Watched } from './step.ts';

export const NOTHING_WATCHED: Watched = {
  lamp: 'unproved',
  leanedOn: [],
  clues: [],
  handlesSeen: [],
  trouble: NO_TROUBLE,
  meter: NO_METER_TROUBLE,
};

/** What is known after one more observation; the same object when it adds nothing. */
export function watch(watched: Watched, seen: Observation): Watched {
  const lamp = lampAfter(watched.lamp, seen);
  const leanedOn = leanedAfter(watched.leanedOn, seen);
  const worked = seen.minutesSpent > watched.trouble.minutesSpent;
  const clues = cluesAfter(worked ? withoutHandles(watched.clues) : watched.clues, seen);
  const handlesSeen = handlesAfter(watched.handlesSeen, seen);
  const trouble = troubleAfter(watched.trouble, seen, provesNow(seen));
  const meter = meterAfter(watched.meter, seen);
  const next: Watched = { lamp, leanedOn, clues, handlesSeen, trouble, meter };
  const same = (Object.keys(next) as (keyof Watched)[]).every((key) => next[key] === watched[key]);
  return same ? watched : next;
}

/** Prove, test, prove again: what was proved on one spell of LOW does not hold for the next. */
function lampAfter(
  lamp: Watched['lamp'],
  { supply, selector, leads, lamp: { glow } }: Observation,
): Watched['lamp'] {
  if (supply !== 'on' || selector !== 'low') return 'unproved';
  if (tipsTogether(leads)) return glow === FULL_GLOW ? 'proved' : lamp;
  return acrossPart(leads, 'lamp') === null ? lamp : 'used';
}

function tipsTogether(leads: Observation['leads']): boolean {
  return leads['lamp.1'].touches === 'tip:lamp.2' || leads['lamp.2'].touches === 'tip:lamp.1';
}

function provesNow({ supply, selector, leads }: Observation): boolean {
  return supply === 'on' && selector === 'low' && tipsTogether(leads);
}

/** Where someone leans, or has leaned since the tip was put there: a holder left and tried again is leaned on again. */
function leanedAfter(before: Watched['leanedOn'], { leads }: Observation): Watched['leanedOn'] {
  const touched = ALL_LEADS.flatMap((lead) => leads[lead].touches ?? []);
  const now = ALL_LEADS.flatMap((lead) => {
    const { leaning, touches } = leads[lead];
    return leaning && touches !== null ? [touches] : [];
  });
  const kept = before.filter((place) => touched.includes(place));
  const added = now.filter((place) => !kept.includes(place));
  return kept.length === before.length && added.length === 0 ? before : [...kept, ...added];
}

function cluesAfter(before: Watched['clues'], { look }: Observation): Watched['clues'] {
  if (look === null) return before;
  const { place, sees } = look;
  const fresh = sees.filter((clue) => !before.some((one) => one.place === place && one.clue === clue));
  return fresh.length === 0 ? before : [...before, ...fresh.map((clue) => ({ place, clue }))];
}

/** Work by the book makes what was seen of the leads old: it may have been the leads that were put right. */
function withoutHandles(clues: Watched['clues']): Watched['clues'] {
  const kept = clues.filter(({ place }) => !place.startsWith('handle:'));
  return kept.length === clues.length ? clues : kept;
}

function handlesAfter(before: Watched['handlesSeen'], { look }: Observation): Watched['handlesSeen'] {
  if (!look?.place.startsWith('handle:') || before.includes(look.place)) return before;
  return [...before, look.place];
}
