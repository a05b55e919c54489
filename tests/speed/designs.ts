import type { ArmatureDesign } from '../../src/engine/parts/armature.ts';
import { LAP_28 } from '../engine/support/parts.ts';

/** Four-pole armatures of 60 bars for measuring only: two coils in each of 30 slots, and one in each of 60. */
export const S30_C60: ArmatureDesign = {
  ...LAP_28,
  id: 's30-c60',
  name: 'Four-pole armature, 60 bars, lap wound, two coils a slot',
  slots: 30,
  coilsPerSlot: 2,
  bars: 60,
  spanSlots: 8,
  slotMouth: 0.0016,
  slotWidth: 0.0028,
  conductorArea: 5e-6,
};

export const S60_C60: ArmatureDesign = {
  ...LAP_28,
  id: 's60-c60',
  name: 'Four-pole armature, 60 bars, lap wound',
  slots: 60,
  bars: 60,
  spanSlots: 15,
  slotMouth: 0.0008,
  slotWidth: 0.0013,
  layerHeight: 0.004,
  conductorArea: 5e-6,
};
