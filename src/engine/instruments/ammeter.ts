/**
 * The ammeter of the bench: a moving-iron instrument with a shunt, two leads and two bare needle probes.
 * Its loop is of low burden on purpose: an open coil shows only because the meter hardly limits the current.
 */

/** Shunt and leads without the contacts, ohm. Constant of the invented bench. */
export const FIXED_LOOP_OHM = 7.4e-3;
/** Spread of one contact between probe and bar, ohm: a placement draws evenly from it. Constants of the invented bench. */
export const CONTACT_OHM = {
  clean: { least: 0.2e-3, most: 0.4e-3 },
  dirty: { least: 0.5e-3, most: 3e-3 },
} as const;

/** Accuracy class, % of full scale: one of the class indices of IEC 60051-1 (references I01-I03; indices from memory). */
export const ACCURACY_CLASS = 1.5;

/**
 * Where the printed scale crowds: below about this fraction of the range the torque, which goes with the square of
 * the current, is not evened out by the shape of the iron (references I08).
 */
const CROWDING = 0.15;

/** What is particular to one instrument. */
export interface Ammeter {
  /** Error as a share of the reading, within the accuracy class. */
  readonly gainError: number;
  /** Deflection with no current, fraction of full scale: 0 unless the bench is at fault. */
  readonly zeroOffset: number;
}

export const EXACT_AMMETER: Ammeter = { gainError: 0, zeroOffset: 0 };

/**
 * An instrument within its class.
 * @param random even draws from [0, 1)
 */
export function makeAmmeter(random: () => number, zeroOffset = 0): Ammeter {
  return { gainError: (2 * random() - 1) * (ACCURACY_CLASS / 100), zeroOffset };
}

/**
 * Resistance of one probe on one bar, drawn anew at every placement, ohm.
 * @param random even draws from [0, 1)
 */
export function contactOhm(random: () => number, dirty: boolean): number {
  const { least, most } = dirty ? CONTACT_OHM.dirty : CONTACT_OHM.clean;
  return least + (most - least) * random();
}

/** The whole loop: shunt, leads and both contacts, ohm. */
export function loopOhm(contact1Ohm: number, contact2Ohm: number): number {
  return FIXED_LOOP_OHM + contact1Ohm + contact2Ohm;
}

/**
 * Place of a current on the printed scale, as a fraction of the full-scale angle; beyond 1 when over range.
 * With x = I / range and c = 0.15:   f = x^2 (1 + c) / (x + c)
 * which is the square law of the iron (f ~ x^2) at the bottom and nearly even above.
 * @param currentA rms current, A, >= 0
 * @source references I08 for the square law and the crowding; the blend is ours
 */
export function scaleFraction(currentA: number, rangeA: number): number {
  const x = currentA / rangeA;
  return (x * x * (1 + CROWDING)) / (x + CROWDING);
}

/** The current printed at a place of the scale, A: inverse of `scaleFraction`. */
export function scaleCurrent(fraction: number, rangeA: number): number {
  const f = Math.max(0, fraction);
  const k = 1 + CROWDING;
  return (rangeA * (f + Math.sqrt(f * f + 4 * k * f * CROWDING))) / (2 * k);
}

/** Deflection the needle settles at for a current, before the stops: 1 at full scale. */
export function targetDeflection(currentA: number, rangeA: number, meter: Ammeter = EXACT_AMMETER): number {
  return scaleFraction(currentA * (1 + meter.gainError), rangeA) + meter.zeroOffset;
}
