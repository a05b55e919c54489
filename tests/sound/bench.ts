import type { LeadView, Observation } from '../../src/bench/observation.ts';
import type { LeadId, Place } from '../../src/bench/places.ts';
import { UNTOUCHED } from '../../src/bench/untouched.ts';

/** A bench that is off, with an armature in the cradle. */
export const QUIET: Observation = {
  ...UNTOUCHED,
  rangeA: 30,
  cradle: 'armature',
  hum: { level: 0, pitchHz: 100, harshness: 0 },
};

export function humming(level: number, harshness = 1, pitchHz = 100): Observation {
  return { ...QUIET, selector: 'high', supply: 'on', hum: { level, pitchHz, harshness } };
}

export function withStrip(seen: Observation, pull: number, buzz: number): Observation {
  return { ...seen, strip: { at: 'core', angleDeg: 150, heightMm: 0.5, pull, buzz } };
}

export function touching(seen: Observation, lead: LeadId, place: Place | null): Observation {
  const view: LeadView = { at: 'hand', grip: 'handle', touches: place, stationDeg: null, leaning: false };
  return { ...seen, leads: { ...seen.leads, [lead]: view } };
}
