import { RANGES_A } from './action.ts';
import { ARMATURE_KIT } from './kit.ts';
import type { Observation } from './observation.ts';
import { tipsHung } from './tips.ts';

/** Every lead where it hangs; those of the rail's tools are not there. */
export const LEADS_HUNG = tipsHung(ARMATURE_KIT);

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
