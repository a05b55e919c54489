import type { LeadView, Observation } from '../../src/bench/observation.ts';
import type { LeadId, Place } from '../../src/bench/places.ts';

const HOLSTERED: LeadView = { at: 'holster', grip: null, touches: null, stationDeg: null };

/** A bench that is off, with an armature in the cradle. */
export const QUIET: Observation = {
  atMs: 0,
  selector: 'off',
  supply: 'off',
  rangeA: 30,
  cradle: 'armature',
  rotationDeg: 0,
  hands: [{ holds: 'nothing' }, { holds: 'nothing' }],
  leads: { 'ammeter.1': HOLSTERED, 'ammeter.2': HOLSTERED, 'lamp.1': HOLSTERED, 'lamp.2': HOLSTERED },
  needle: { deflection: 0, pegged: false, atRest: true },
  lamp: { glow: 0 },
  strip: { at: 'rail', angleDeg: null, heightMm: null, pull: 0, buzz: 0 },
  hum: { level: 0, pitchHz: 100, harshness: 0 },
  growlerHeat: 'cool',
  partHeat: 'cool',
  chalkedBar: null,
  look: null,
  stopped: null,
};

export function humming(level: number, harshness = 1, pitchHz = 100): Observation {
  return { ...QUIET, selector: 'high', supply: 'on', hum: { level, pitchHz, harshness } };
}

export function withStrip(seen: Observation, pull: number, buzz: number): Observation {
  return { ...seen, strip: { at: 'core', angleDeg: 150, heightMm: 0.5, pull, buzz } };
}

export function touching(seen: Observation, lead: LeadId, place: Place | null): Observation {
  const view: LeadView = { at: 'hand', grip: 'handle', touches: place, stationDeg: null };
  return { ...seen, leads: { ...seen.leads, [lead]: view } };
}
