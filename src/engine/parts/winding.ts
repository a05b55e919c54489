import { COPPER_RESISTIVITY, MU0 } from '../math/constants.ts';
import type { ArmatureDesign } from './armature.ts';

/** Soldered joint of one coil end in its riser, ohm. Estimate. */
export const JOINT_OHM = 20e-6;

/** Where one coil of the winding lies and which bars it joins. */
export interface CoilPlace {
  readonly topSlot: number;
  readonly bottomSlot: number;
  readonly startBar: number;
  readonly endBar: number;
}

/** Places of all working coils, coil i starting at bar i; a dummy coil is skipped. Length bars. */
export function coilPlaces(a: ArmatureDesign): readonly CoilPlace[] {
  const end = ((a.commutatorPitch % a.bars) + a.bars) % a.bars;
  return Array.from({ length: a.bars }, (_, coil) => {
    const place = a.dummyPlace !== undefined && coil >= a.dummyPlace ? coil + 1 : coil;
    const topSlot = Math.floor(place / a.coilsPerSlot);
    return {
      topSlot,
      bottomSlot: (topSlot + a.spanSlots) % a.slots,
      startBar: coil,
      endBar: (coil + end) % a.bars,
    };
  });
}

/** Length of the conductor over one end of the core, from slot to slot, m. Textbook estimate for a diamond coil. */
export function endTurnLength(a: ArmatureDesign): number {
  const meanRadius = a.outerRadius - a.lipHeight - a.wedgeHeight - a.layerHeight;
  return (1.25 * meanRadius * 2 * Math.PI * a.spanSlots) / a.slots + 0.008;
}

/** Resistance of one coil at 20 C without its riser joints, ohm. */
export function coilOhm(a: ArmatureDesign): number {
  return (COPPER_RESISTIVITY * 2 * (a.stackLength + endTurnLength(a)) * a.turns) / a.conductorArea;
}

/**
 * Leakage inductance of a coil's two ends, H: μ0·N²·2·l_end·0.3.
 * @source usual form of the end-winding permeance with a textbook coefficient; a guess for these coils
 */
export function endLeakage(a: ArmatureDesign): number {
  return MU0 * a.turns * a.turns * 2 * endTurnLength(a) * 0.3;
}

/** Copper of one coil, m³. */
export function coilCopperVolume(a: ArmatureDesign): number {
  return 2 * (a.stackLength + endTurnLength(a)) * a.turns * a.conductorArea;
}

/**
 * Resistance of one equaliser connection between bars one pole pair apart, ohm: the winding's own conductor led
 * round behind the commutator, with a joint at each end. Estimate.
 */
export function equaliserOhm(a: ArmatureDesign): number {
  const length = (1.25 * 2 * Math.PI * a.commutatorRadius) / (a.poles / 2);
  return (COPPER_RESISTIVITY * length) / a.conductorArea + 2 * JOINT_OHM;
}

/**
 * Angle of bar 0 from the bottom at rotation zero, degrees in (-180, 180]: the coils of a slot have, on average, the
 * midpoint of their two bars on the coil's axis.
 */
export function barZeroDeg(a: ArmatureDesign): number {
  const axis = (360 / a.slots) * (a.spanSlots / 2);
  const meanCoil = (a.coilsPerSlot - 1) / 2;
  const angle = axis - (360 / a.bars) * (meanCoil + a.commutatorPitch / 2);
  const wrapped = ((((angle + 180) % 360) + 360) % 360) - 180;
  return wrapped === -180 ? 180 : wrapped;
}
