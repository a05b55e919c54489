import type { CommutatorGeometry } from '../../src/bench/geometry.ts';
import type { LeadView, Observation } from '../../src/bench/observation.ts';
import { LEADS_HUNG, UNTOUCHED } from '../../src/bench/untouched.ts';

export const HOLSTERED: LeadView = LEADS_HUNG['lamp.1'];

/** A bench at rest with the armature in the cradle; tests change what they are about. */
export const AT_REST: Observation = {
  ...UNTOUCHED,
  rangeA: 30,
  cradle: 'armature',
  hum: { level: 0, pitchHz: 100, harshness: 0 },
};

export const GEOMETRY: CommutatorGeometry = { bars: 23, barZeroDeg: 7.826 };

export function touching(place: LeadView['touches'], at: LeadView['at'] = 'hand'): LeadView {
  return { at, grip: at === 'hand' ? 'handle' : null, touches: place, stationDeg: null, leaning: false };
}
