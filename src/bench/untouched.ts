import { RANGES_A } from './action.ts';
import type { LeadView, Observation } from './observation.ts';
import { ALL_LEADS, isClip, type LeadId } from './places.ts';

const HOLSTERED: LeadView = { at: 'holster', grip: null, touches: null, stationDeg: null, leaning: false };
/** Every lead where it hangs; those of the rail's tools are not there. */
export const LEADS_HUNG = Object.fromEntries(
  ALL_LEADS.map((lead) => [lead, isClip(lead) ? { ...HOLSTERED, at: 'absent' } : HOLSTERED]),
) as Record<LeadId, LeadView>;

/** A bench for an armature alone that nobody has touched yet: where picture, sound and words are tried without a session. */
export const UNTOUCHED: Observation = {
  atMs: 0,
  selector: 'off',
  supply: 'off',
  rangeA: RANGES_A[RANGES_A.length - 1]!,
  cradle: 'empty',
  rotationDeg: 0,
  hands: [{ holds: 'nothing' }, { holds: 'nothing' }],
  leads: LEADS_HUNG,
  needle: { deflection: 0, pegged: false, atRest: true },
  lamp: { glow: 0 },
  strip: { at: 'rail', angleDeg: null, heightMm: null, pull: 0, buzz: 0 },
  hum: { level: 0, pitchHz: 0, harshness: 0 },
  growlerHeat: 'cool',
  partHeat: 'cool',
  chalkedBar: null,
  look: null,
  mat: { fieldFrame: 'absent', brushPlate: 'absent' },
  brushesApart: false,
  gauge: null,
  tester: {
    at: 'absent',
    volt: 250,
    pressed: false,
    megohms: null,
    over: false,
    charged: false,
    discharged: true,
  },
  drop: { at: 'absent', feed: null, feedA: 0, millivolts: null, over: false },
  minutesSpent: 0,
  prepared: [],
  scrapped: [],
  stopped: null,
};
