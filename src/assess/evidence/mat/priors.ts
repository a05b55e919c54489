import type { BrushPlateFaultKind } from '../../../engine/parts/brushPlate.ts';
import type { FieldFrameFaultKind } from '../../../engine/parts/fieldFrame.ts';

/**
 * How often each fault of field frame and brush plate comes to the bench before anything has been read. Figures ours:
 * common practice names the faults, no source counts them. Nothing here may depend on what is hidden in the job.
 */

/** Odds of one fault of this kind somewhere on the frame, against winding or insulation without fault (1). */
export const FIELD_ODDS: Readonly<Record<FieldFrameFaultKind, number>> = {
  openCoil: 0.4,
  brushJoint: 0.8,
  shortedTurns: 0.3,
  groundedCoil: 0.6,
  weakInsulation: 0.3,
};

/** Share of bad brush joints that have let go altogether. */
export const JOINT_OPEN = 0.6;
/** Share of weak insulations that hold until a voltage, and give way above it; peak, V. */
export const GIVING = 0.25;
export const GIVING_V: readonly number[] = [200, 300];
/** A second fault of the winding beside the first, and a fault of the insulation beside one of the winding, is this much rarer. */
export const ANOTHER = 0.2;
/** Odds of something that is none of the things listed. */
export const NONE_OF_THESE = 0.02;

/** Odds of one fault of this kind at one holder, against a holder without fault (1). */
export const PLATE_ODDS: Readonly<Record<BrushPlateFaultKind, number>> = {
  dirt: 0.2,
  looseRivet: 0.12,
  insulatorDown: 0.1,
  brokenPigtail: 0.1,
};
/**
 * A second fault beside a torn pigtail is this much rarer than chance alone would have it: one explains the complaint.
 * What lies between holder and plate has causes in common, heat and carbon, and comes together as chance has it.
 */
export const BESIDE_TORN = 0.5;
/**
 * Share of holders with a loose rivet at which another is loose that makes when the first breaks. Two that act alike
 * read as one.
 */
export const OPPOSITE_RIVET = 0.05;
/** Odds of something that is none of the things listed, at each holder. */
export const NONE_AT_HOLDER = 0.002;

/** Severities evenly spread on the logarithm, neighbours a factor of about `factor` apart, ohm. */
export function evenly(least: number, most: number, factor: number): number[] {
  const steps = Math.max(1, Math.round(Math.log(most / least) / Math.log(factor)));
  return Array.from({ length: steps + 1 }, (_, i) => least * (most / least) ** (i / steps));
}

/** Resistance of a bad joint that still holds; of leaks, ohm. Steps as fine as readings can tell. */
export const JOINT_OHM = evenly(1e-4, 0.5, 1.08);
export const WEAK_OHM = evenly(1e4, 1e7, 1.3);
export const GROUND_OHM: readonly number[] = [0.5, 30, 300];
export const GROUND_FRACTION: readonly number[] = [0.25, 0.75];
/** Share of a coil's turns that a short bridges, and its contact, ohm. */
export const SHORT_SHARE: readonly number[] = Array.from({ length: 38 }, (_, i) => 0.025 * (i + 1));
export const SHORT_OHM = 2e-5;
/** Leakage of insulation below the voltage at which it gives way, ohm. */
export const GIVING_OHM = evenly(1e5, 1e8, 1.6);
/** Where two faults of a winding stand side by side, each is taken at a few severities that stand for those about it. */
export const SOME_SHARE_STEP = 0.15;
export const SOME_SHARE: readonly number[] = Array.from({ length: 6 }, (_, i) => 0.1 + SOME_SHARE_STEP * i);
export const SOME_JOINT_STEP = 2;
export const SOME_JOINT_OHM: readonly number[] = Array.from(
  { length: 9 },
  (_, i) => 3e-4 * SOME_JOINT_STEP ** i,
);
export const DIRT_OHM = evenly(50, 1e7, 1.3);
export const DOWN_OHM = evenly(5, 1e7, 1.3);
/** Peak voltage at which an insulator gives way, V; null: it leaks at any. */
export const DOWN_V: readonly (number | null)[] = [null, 200, 300];
export const RIVET_OHM: readonly number[] = [0.01, 0.3, 5];
