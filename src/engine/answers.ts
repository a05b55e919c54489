import type { ArmatureSolver } from './armatureBench.ts';
import { emptyCradle } from './armatureBench.ts';
import type { Drive, Excitation, Mains } from './drive.ts';
import type { ArmatureDesign } from './parts/armature.ts';
import type { ArmatureFault } from './parts/armatureFault.ts';
import { barZeroDeg } from './parts/winding.ts';

/**
 * What each test of the bench shows on a given armature, bar by bar: the figures an answer key is made of. Probes
 * stand at fixed stations and the bars pass under them, so every bar is read at the same place.
 */
export interface TestSetup {
  readonly mains: Mains;
  readonly excitation: Excitation;
  /** Ammeter loop with both contacts, ohm. */
  readonly loopOhm: number;
  readonly windingC: number;
}

/** Fixed part of the ammeter loop (7.4 mΩ) and two clean contacts (0.3 mΩ each). */
export const NOMINAL_LOOP_OHM = 0.008;

/** Two bars lying under the probes at a rotation of the armature, degrees. */
export interface Station {
  readonly first: number;
  readonly second: number;
}

/** Angle of a bar from the bottom with the armature at rotation zero, degrees in (-180, 180]. */
function barDeg(a: ArmatureDesign, bar: number): number {
  return wrap(barZeroDeg(a) + (360 * bar) / a.bars);
}

function wrap(deg: number): number {
  const w = ((((deg + 180) % 360) + 360) % 360) - 180;
  return w < -180 + 1e-9 ? w + 360 : w;
}

/** A millionth of a degree decides ties for the place at the lower angle: by rule, not by rounding. */
const TIE = 1e-6;

/** Bar whose `offset` place is nearest to a station at rotation zero. */
function nearest(a: ArmatureDesign, stationDeg: number, offsetDeg: number): number {
  let best = 0;
  let least = Infinity;
  for (let bar = 0; bar < a.bars; bar++) {
    const away = Math.abs(wrap(barDeg(a, bar) + offsetDeg - stationDeg + TIE));
    if (away < least) {
      least = away;
      best = bar;
    }
  }
  return best;
}

/** Neighbouring bars whose midpoint is nearest -45 degrees (two poles: just above the horizontal, -90). */
export function neighbourStation(a: ArmatureDesign): Station {
  const first = nearest(a, a.poles === 2 ? -90 : -45, 180 / a.bars);
  return { first, second: (first + 1) % a.bars };
}

/** Spaced bars at the ends of a pole pitch: nearest -90 and 0 degrees (two poles: 180 and 0). */
export function spanStation(a: ArmatureDesign): Station {
  return { first: nearest(a, a.poles === 2 ? 180 : -90, 0), second: nearest(a, 0, 0) };
}

/** First probe horizontal, in front of the person working, the second `spacing` bars further round. */
export function spacedStation(a: ArmatureDesign, spacing: number): Station {
  const first = nearest(a, -90, 0);
  return { first, second: (first + spacing) % a.bars };
}

/** Readings at a station as the armature is turned once round, one for each bar brought under the first probe, A. */
export function passReadings(
  solver: ArmatureSolver,
  faults: readonly ArmatureFault[],
  setup: TestSetup,
  station: Station,
): number[] {
  const { bars } = solver.design;
  const sweep = solver.sweep(faults, setup);
  return Array.from({ length: bars }, (_, bar) => {
    const step = bar - station.first;
    const second = (station.second + step + 2 * bars) % bars;
    return sweep.readingAt((-2 * Math.PI * step) / bars, bar, second, setup.loopOhm);
  });
}

function driveAt(setup: TestSetup, rotationRad: number): Drive {
  const { mains, excitation, windingC } = setup;
  return { mains, excitation, windingC, rotationRad, meter: null };
}

/** Reading between each bar and the next, one per bar, A. */
export function neighbourReadings(
  solver: ArmatureSolver,
  faults: readonly ArmatureFault[],
  setup: TestSetup,
): number[] {
  return passReadings(solver, faults, setup, neighbourStation(solver.design));
}

/**
 * Bars to step for the largest reading with the first probe horizontal, found on the sound armature; with four poles
 * only the spacings next to 90 degrees count, because the reading stays nearly level beyond.
 */
export function largestSpacing(solver: ArmatureSolver, setup: TestSetup): number {
  const a = solver.design;
  const point = solver.solve([], driveAt(setup, 0));
  const pitch = 360 / a.bars;
  let best = 1;
  let most = -1;
  for (let spacing = 1; spacing <= a.bars / 2; spacing++) {
    if (a.poles === 4 && Math.abs(spacing * pitch - 90) >= pitch - TIE) continue;
    const { first, second } = spacedStation(a, spacing);
    const reading = point.reading(first, second, setup.loopOhm);
    if (reading > most) {
      most = reading;
      best = spacing;
    }
  }
  return best;
}

/** Reading between each bar and the one `spacingBars` further on, A. */
export function spacedReadings(
  solver: ArmatureSolver,
  faults: readonly ArmatureFault[],
  setup: TestSetup,
): { readonly spacingBars: number; readonly readingA: number[] } {
  const spacingBars = largestSpacing(solver, setup);
  const station = spacedStation(solver.design, spacingBars);
  return { spacingBars, readingA: passReadings(solver, faults, setup, station) };
}

/** Resistance from each bar to the core as a lamp at mains voltage finds it, ohm; null where there is no path. */
export function groundPaths(
  solver: ArmatureSolver,
  faults: readonly ArmatureFault[],
  mains: Mains,
): (number | null)[] {
  const peakV = Math.SQRT2 * mains.volt;
  return Array.from({ length: solver.design.bars }, (_, bar) => {
    const z = solver.path(faults, 'core', bar, mains.hz, peakV);
    return z && Math.hypot(z.re, z.im);
  });
}

/** Pull on the strip at one place with the armature at one rotation. */
export interface StripPull {
  readonly stripDeg: number;
  readonly rotationDeg: number;
  readonly pullN: number;
}

/** Places round the upper arc, clear of the jaws, at which a learner holds the strip. */
export const STRIP_PLACES_DEG: readonly number[] = [95, 120, 150, 180, 210, 240, 265];

/** Mean pull with every slot brought under the strip in turn, at each of the places given. */
export function stripPulls(
  solver: ArmatureSolver,
  faults: readonly ArmatureFault[],
  setup: TestSetup,
  places: readonly number[] = STRIP_PLACES_DEG,
  heightM = 0.0005,
): StripPull[] {
  const { slots } = solver.design;
  return places.flatMap((stripDeg) =>
    Array.from({ length: slots }, (_, slot) => {
      const rotationDeg = (((stripDeg - (360 * slot) / slots) % 360) + 360) % 360;
      const point = solver.solve(faults, driveAt(setup, (rotationDeg * Math.PI) / 180));
      return { stripDeg, rotationDeg, pullN: point.strip(stripDeg, heightM).meanN };
    }),
  );
}

/** Growler current with this armature in the cradle at rotation zero, and with none, A. */
export function growlerCurrents(
  solver: ArmatureSolver,
  faults: readonly ArmatureFault[],
  setup: TestSetup,
): { readonly currentA: number; readonly emptyCurrentA: number } {
  return {
    currentA: solver.solve(faults, driveAt(setup, 0)).growlerA,
    emptyCurrentA: emptyCradle(setup.mains, setup.excitation, setup.windingC).growlerA,
  };
}
