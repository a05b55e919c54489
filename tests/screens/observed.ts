import type { CommutatorGeometry } from '../../src/bench/geometry.ts';
import type { LeadView, Observation } from '../../src/bench/observation.ts';

export const HOLSTERED: LeadView = { at: 'holster', grip: null, touches: null, stationDeg: null };

/** A bench at rest with the armature in the cradle; tests change what they are about. */
export const AT_REST: Observation = {
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

export const GEOMETRY: CommutatorGeometry = { bars: 23, barZeroDeg: 7.826 };

export function touching(place: LeadView['touches'], at: LeadView['at'] = 'hand'): LeadView {
  return { at, grip: at === 'hand' ? 'handle' : null, touches: place, stationDeg: null };
}
