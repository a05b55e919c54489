import type { RangeA } from '../../bench/action.ts';
import { RANGES_A } from '../../bench/action.ts';
import type { TestKind } from '../../bench/paper.ts';
import {
  largestSpacing,
  NOMINAL_LOOP_OHM,
  neighbourStation,
  STRIP_PLACES_DEG,
  type Station,
  spacedStation,
} from '../../engine/answers.ts';
import { createArmatureSolver } from '../../engine/armatureBench.ts';
import { ROOM_C } from '../../engine/instruments/thermal.ts';
import type { Laid } from './dictionary.ts';
import type { EvidenceModel } from './model.ts';
import type { DropLaid } from './reading.ts';
import type { StripHeld } from './strip.ts';

/** Every reading of a test done in full, in the order of the bars or slots. */
export interface MeterPass {
  readonly test: 'neighbour' | 'spaced';
  readonly readings: readonly (Laid & { readonly rangeA: RangeA })[];
}

export interface StripPass {
  readonly angleDeg: number;
  readonly readings: readonly StripHeld[];
}

/** Gap at which the strip is usually held, mm. */
export const STRIP_HEIGHT_MM = 0.5;

/** The ammeter passes a job allows, done in full at the places the trade does them at. */
export function meterPasses(model: EvidenceModel): MeterPass[] {
  const { design, tests, dictionary } = model;
  const solver = createArmatureSolver(design, dictionary.growler);
  const setup = {
    mains: dictionary.mains,
    excitation: 'high',
    loopOhm: NOMINAL_LOOP_OHM,
    windingC: ROOM_C,
  } as const;
  const pass = (test: MeterPass['test'], station: Station): MeterPass => {
    const point = solver.solve([], { ...setup, rotationRad: 0, meter: null });
    const amps = point.reading(station.first, station.second, setup.loopOhm);
    return { test, readings: passOf(design.bars, station, rangeFor(amps)) };
  };
  const wanted = (test: TestKind) => tests.includes(test);
  return [
    ...(wanted('neighbour') ? [pass('neighbour', neighbourStation(design))] : []),
    ...(wanted('spaced') ? [pass('spaced', spacedStation(design, largestSpacing(solver, setup)))] : []),
  ];
}

/** The lowest range on which a sound part leaves some room above. */
function rangeFor(amps: number): RangeA {
  return RANGES_A.find((full) => amps < 0.85 * full) ?? RANGES_A[RANGES_A.length - 1]!;
}

/** The armature turned under probes that stand still, a bar at a time. */
function passOf(bars: number, { first, second }: Station, rangeA: RangeA): MeterPass['readings'] {
  return Array.from({ length: bars }, (_, step) => ({
    bars: [(first + step) % bars, (second + step) % bars] as const,
    rotationDeg: (360 - (360 * step) / bars) % 360,
    excitation: 'high' as const,
    rangeA,
  }));
}

/** The drop between every bar and the next, the feed moved along with the meter; none where the job does not allow it. */
export function dropPass({ design: { bars }, tests }: EvidenceModel): DropLaid[] {
  if (!tests.includes('millivolt')) return [];
  return Array.from({ length: bars }, (_, bar) => {
    const pair = [bar, (bar + 1) % bars] as const;
    return { feed: pair, bars: pair };
  });
}

/** The strip at each of its usual places with every slot brought under it. */
export function stripPasses({ design, tests }: EvidenceModel): StripPass[] {
  if (!tests.includes('strip')) return [];
  return STRIP_PLACES_DEG.map((angleDeg) => ({
    angleDeg,
    readings: Array.from({ length: design.slots }, (_, slot) => ({
      angleDeg,
      heightMm: STRIP_HEIGHT_MM,
      rotationDeg: (angleDeg - (360 * slot) / design.slots + 720) % 360,
      excitation: 'high' as const,
    })),
  }));
}
