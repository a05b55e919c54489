import { ACCURACY_CLASS, CONTACT_OHM, FIXED_LOOP_OHM } from '../../engine/instruments/ammeter.ts';
import { DEFLECTION_STEP } from '../../engine/instruments/needle.ts';
import { COPPER_DENSITY, COPPER_HEAT } from '../../engine/instruments/thermal.ts';
import { COPPER_PER_K } from '../../engine/math/constants.ts';
import type { ArmatureDesign } from '../../engine/parts/armature.ts';
import { coilCopperVolume, coilOhm } from '../../engine/parts/winding.ts';

/**
 * How far a reading may lie from what a fault would show, and for what reasons. What is common to all readings of an
 * attempt (the instrument's own error, the state of the commutator) is carried along as a few cases, so that many
 * readings do not average it away; what is drawn anew at every contact is spread.
 */

/** One case of how the probes meet the bars: loop resistance (ohm), its spread, and its weight. */
export interface ContactCase {
  readonly loopOhm: number;
  readonly sdOhm: number;
  readonly weight: number;
}

/** Two contacts, each evenly spread: together a triangle, whose variance is one sixth of its half width squared. */
function twoContacts({ least, most }: { readonly least: number; readonly most: number }) {
  return { loopOhm: FIXED_LOOP_OHM + least + most, variance: (most - least) ** 2 / 6 };
}

/** Three cases stand for the wide triangle of dirty contacts: their spread and what is left within each add up to it. */
function dirtyCases(): ContactCase[] {
  const { loopOhm, variance } = twoContacts(CONTACT_OHM.dirty);
  const apart = 1.08 * Math.sqrt(variance);
  const sdOhm = Math.sqrt(variance - apart ** 2 / 2);
  return [
    { loopOhm: loopOhm - apart, sdOhm, weight: 1 / 4 },
    { loopOhm, sdOhm, weight: 1 / 2 },
    { loopOhm: loopOhm + apart, sdOhm, weight: 1 / 4 },
  ];
}

function cleanCases(): ContactCase[] {
  const { loopOhm, variance } = twoContacts(CONTACT_OHM.clean);
  return [{ loopOhm, sdOhm: Math.sqrt(variance), weight: 1 }];
}

export const SURFACES = ['clean', 'dirty'] as const;
export type Surface = (typeof SURFACES)[number];
export const CONTACT_CASES: Readonly<Record<Surface, readonly ContactCase[]>> = {
  clean: cleanCases(),
  dirty: dirtyCases(),
};

/** Warmth of the growler winding changes all readings of an attempt alike, by up to this share. */
const WARMTH_SHARE = 0.003;
/**
 * Share by which the inductances that readings are worked out from may be off, all readings alike: what lies between
 * the network and finite elements of the same geometry, rounded up.
 */
const MODEL_SHARE = 0.012;
/** Most by which all readings may be off alike: the instrument within its class, that warmth, and the model. */
export const GAIN_MOST = ACCURACY_CLASS / 100 + WARMTH_SHARE + MODEL_SHARE;
/** Evenly likely errors common to all readings, as shares of the reading; what lies between is read off a parabola. */
export const GAINS: readonly number[] = [-3, -2, -1, 0, 1, 2, 3].map((x) => (x / 3) * GAIN_MOST);
/** What the model leaves out, drawn anew at every reading: rounded rotations, the part's own warmth; share of the reading. */
export const CURRENT_SD = 0.003;

/** How long a reading lets its current run through the coils, s. Ours, no source. */
const HELD_S = 6;

/**
 * The ammeter warms the coils it is read through: by I²·R·t into their own copper. How far is not known, so it
 * spreads the reading; on heavy strip it is nothing, on fine wire some per cent.
 * @returns rise of resistance as a share, per ampere squared
 */
export function warmthOf(design: ArmatureDesign): number {
  const heatJPerK = COPPER_HEAT * COPPER_DENSITY * coilCopperVolume(design);
  return (COPPER_PER_K * coilOhm(design) * HELD_S) / heatJPerK;
}

/** A needle read in steps, with what is left of its swing when it seems at rest. */
const NEEDLE_SD = Math.hypot(DEFLECTION_STEP / Math.sqrt(12), DEFLECTION_STEP / 4);
/** An eye reads to a hundredth of the scale either way, evenly. */
const EYE_SD = Math.hypot(NEEDLE_SD, 0.01 / Math.sqrt(3));
/** Chance that a reading has nothing to do with the part: a slip of hand or pen. Ours, no source. */
export const READING_NOISE = {
  instrument: { sd: NEEDLE_SD, slip: 0.005 },
  sheet: { sd: EYE_SD, slip: 0.02 },
} as const;
