import { RANGES_A } from '../../bench/action.ts';
import type { TestKind } from '../../bench/paper.ts';
import {
  groundPaths,
  NOMINAL_LOOP_OHM,
  neighbourReadings,
  spacedReadings,
  stripPulls,
  type TestSetup,
} from '../../engine/answers.ts';
import type { ArmatureSolver } from '../../engine/armatureBench.ts';
import type { Mains } from '../../engine/drive.ts';
import { CONTACT_OHM, loopOhm } from '../../engine/instruments/ammeter.ts';
import { benchLamp, glow, steadyFilament } from '../../engine/instruments/lamp.ts';
import { JUST_FELT_N } from '../../engine/instruments/stripMotion.ts';
import { median } from '../../engine/math/median.ts';
import type { ArmatureFault } from '../../engine/parts/armatureFault.ts';

/** What the tests of the bench show on one part, scatter off. */
export interface Shown {
  /** How far each reading lies from a sound part's, the level left out, as a share: -1 where nothing flows. */
  readonly neighbour: readonly number[];
  readonly spaced: readonly number[];
  /** Deviation from which a reading stands out of its pass. */
  readonly band: { readonly neighbour: number; readonly spaced: number };
  readonly litBars: readonly number[];
  /** Slots, counted once, at which the strip is felt to pull somewhere clear of the jaws. */
  readonly feltSlots: number;
}

/** Room temperature, degrees C. */
const ROOM_C = 20;
/** Scatter of clean contacts never lets a smaller deviation be told, whatever the range; bench figures, three sigma. */
const SCATTER_BAND = 0.03;

/** Ammeter loop with both contacts at the middle of their spread, ohm. */
export function nominalLoopOhm(faults: readonly ArmatureFault[]): number {
  const { least, most } = faults.some(({ kind }) => kind === 'dirtyCommutator')
    ? CONTACT_OHM.dirty
    : CONTACT_OHM.clean;
  return loopOhm((least + most) / 2, (least + most) / 2);
}

export function nominalSetup(mains: Mains): TestSetup {
  return { mains, excitation: 'high', loopOhm: NOMINAL_LOOP_OHM, windingC: ROOM_C };
}

/**
 * Deviations of a turn from what a sound part of the same kind shows, bar by bar: slot mates alternate and a forced
 * winding wanders when they are sound. The level of the whole turn is left out, since nobody has a sound part to hand.
 */
export function deviations(readings: readonly number[], sound: readonly number[]): number[] {
  const ratios = readings.map((reading, bar) => reading / sound[bar]!);
  const middle = median(ratios);
  return ratios.map((ratio) => (middle > 0 ? ratio / middle - 1 : 0));
}

/** An eye tells a hundredth of the range, read on the lowest range that holds the reading. */
function bandOf(readings: readonly number[]): number {
  const middle = median(readings);
  const range = RANGES_A.find((full) => full >= middle) ?? RANGES_A.at(-1)!;
  return middle > 0 ? Math.max(SCATTER_BAND, (0.01 * range) / middle) : 1;
}

/** Whether the lamp is seen to glow over a path of some resistance. */
export function lampLit(ohm: number | null, mains: Mains): boolean {
  if (ohm === null) return false;
  const circuit = { volt: mains.volt, path: { re: ohm, im: 0 } };
  return glow(steadyFilament(benchLamp(mains.volt), circuit)) > 0;
}

export function shownBy(solver: ArmatureSolver, faults: readonly ArmatureFault[], mains: Mains): Shown {
  const setup = nominalSetup(mains);
  const { slots } = solver.design;
  const neighbour = neighbourReadings(solver, faults, setup);
  const spaced = spacedReadings(solver, faults, setup).readingA;
  const sound = {
    neighbour: neighbourReadings(solver, [], setup),
    spaced: spacedReadings(solver, [], setup).readingA,
  };
  const pulls = stripPulls(solver, faults, setup).filter(({ pullN }) => pullN >= JUST_FELT_N);
  const felt = pulls.map(({ stripDeg, rotationDeg }) => Math.round(((stripDeg - rotationDeg) * slots) / 360));
  return {
    neighbour: deviations(neighbour, sound.neighbour),
    spaced: deviations(spaced, sound.spaced),
    band: { neighbour: bandOf(neighbour), spaced: bandOf(spaced) },
    litBars: groundPaths(solver, faults, mains).flatMap((ohm, bar) => (lampLit(ohm, mains) ? [bar] : [])),
    feltSlots: new Set(felt.map((slot) => ((slot % slots) + slots) % slots)).size,
  };
}

const standsOut = (deviation: readonly number[], band: number) => deviation.some((d) => Math.abs(d) > band);

/**
 * Tests that show anything at all that a sound part of the same kind does not: an equalised winding makes the strip
 * buzz all round when it is sound.
 */
export function telling(shown: Shown, sound: Shown): TestKind[] {
  const tells: Partial<Record<TestKind, boolean>> = {
    spaced: standsOut(shown.spaced, shown.band.spaced),
    neighbour: standsOut(shown.neighbour, shown.band.neighbour),
    ground: shown.litBars.length > 0,
    strip: shown.feltSlots > sound.feltSlots,
  };
  return (['spaced', 'neighbour', 'ground', 'strip'] as const).filter((test) => tells[test]);
}
