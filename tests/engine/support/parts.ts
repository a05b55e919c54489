import { readFileSync } from 'node:fs';
import { type Drive, MAINS } from '../../../src/engine/drive.ts';
import type { ArmatureDesign } from '../../../src/engine/parts/armature.ts';

function part(id: string): ArmatureDesign {
  const file = new URL(`../../../scenarios/parts/${id}.json`, import.meta.url);
  return JSON.parse(readFileSync(file, 'utf8')) as ArmatureDesign;
}

export const WAVE_23 = part('wave-23');
export const LAP_28 = part('lap-28');
export const LAP_24 = part('lap-24');
export const ARMATURES = [WAVE_23, LAP_28, LAP_24] as const;

/** 230 V 50 Hz on HIGH, cold, slot 0 at the bottom, no ammeter; fields may be replaced. */
export function drive(change: Partial<Drive> = {}): Drive {
  return {
    mains: MAINS['230V50Hz'],
    excitation: 'high',
    rotationRad: 0,
    windingC: 20,
    meter: null,
    ...change,
  };
}

/** Six-pole wave armature with a dummy coil: 36 slots, 35 bars (the worked example of references W08). */
export const FORCED_WAVE_35: ArmatureDesign = {
  ...WAVE_23,
  id: 'forced-wave-35',
  name: 'Six-pole armature, 35 bars, forced wave winding',
  poles: 6,
  slots: 36,
  bars: 35,
  commutatorPitch: 12,
  spanSlots: 6,
  dummyPlace: 20,
  slotMouth: 0.0012,
  slotWidth: 0.0022,
  conductorArea: 8e-6,
};

export const EQUALISED_LAP_28: ArmatureDesign = { ...LAP_28, id: 'equalised-lap-28', equalised: true };

/** The wave winding of the references' B and G rows: four poles, 25 coils, pitch 13. */
export const WAVE_25: ArmatureDesign = {
  ...WAVE_23,
  id: 'wave-25',
  name: 'Four-pole armature, 25 bars, wave wound',
  bars: 25,
  slots: 25,
  commutatorPitch: 13,
  slotWidth: 0.003,
  conductorArea: 12e-6,
};
