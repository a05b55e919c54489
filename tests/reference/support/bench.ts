import {
  NOMINAL_LOOP_OHM,
  neighbourReadings,
  STRIP_PLACES_DEG,
  spacedReadings,
  stripPulls,
  type TestSetup,
} from '../../../src/engine/answers.ts';
import { createArmatureSolver } from '../../../src/engine/armatureBench.ts';
import { MAINS } from '../../../src/engine/drive.ts';
import { JUST_FELT_N } from '../../../src/engine/instruments/stripMotion.ts';
import type { ArmatureDesign } from '../../../src/engine/parts/armature.ts';
import type { ArmatureFault } from '../../../src/engine/parts/armatureFault.ts';

/** The bench as the facts of the trade are asked on it: 230 V 50 Hz, HIGH, cold, clean contacts without scatter. */
export const SETUP: TestSetup = {
  mains: MAINS['230V50Hz'],
  excitation: 'high',
  loopOhm: NOMINAL_LOOP_OHM,
  windingC: 20,
};

type Faults = readonly ArmatureFault[];

export const bridgeAt = (bar: number, ohm = 0.0002): Faults => [
  { kind: 'bridgedBars', bar, ohm, by: 'copper' },
];

export function neighbourPass(a: ArmatureDesign, faults: Faults): number[] {
  return neighbourReadings(createArmatureSolver(a), faults, SETUP);
}

export function spacedPass(a: ArmatureDesign, faults: Faults): number[] {
  return spacedReadings(createArmatureSolver(a), faults, SETUP).readingA;
}

/** Bars whose neighbouring reading falls below nine tenths of the sound one. */
export function fallen(a: ArmatureDesign, faults: Faults): number[] {
  const sound = neighbourPass(a, []);
  return neighbourPass(a, faults).flatMap((amps, bar) => (amps < 0.9 * sound[bar]! ? [bar] : []));
}

/** Mean pull at each slot brought under the strip at one place, N. */
export function pulls(a: ArmatureDesign, faults: Faults, stripDeg: number, setup = SETUP): number[] {
  return stripPulls(createArmatureSolver(a), faults, setup, [stripDeg]).map((p) => p.pullN);
}

/** Largest size of the pull at any slot and any place clear of the jaws, N. */
export function largestPull(
  a: ArmatureDesign,
  faults: Faults,
  places = STRIP_PLACES_DEG,
  setup = SETUP,
): number {
  const all = stripPulls(createArmatureSolver(a), faults, setup, places);
  return Math.max(...all.map((p) => Math.abs(p.pullN)));
}

/** Slots that pull at least half as hard as the hardest, the strip at one place. */
export function pulledSlots(a: ArmatureDesign, faults: Faults, stripDeg: number): number[] {
  const all = pulls(a, faults, stripDeg);
  return all.flatMap((n, slot) => (n > Math.max(...all) / 2 ? [slot] : []));
}

/** Slots felt to pull, the strip at one place. */
export function feltSlots(a: ArmatureDesign, faults: Faults, stripDeg: number): number[] {
  return pulls(a, faults, stripDeg).flatMap((n, slot) => (n >= JUST_FELT_N ? [slot] : []));
}

/** Largest departure of one pass from another, as a share of the other. */
export function largestChange(now: readonly number[], before: readonly number[]): number {
  return Math.max(...now.map((amps, bar) => Math.abs(amps / before[bar]! - 1)));
}
