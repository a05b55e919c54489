import { barAngleDeg, wrapDeg } from '../bench/geometry.ts';
import { type ArmatureSolver, barZeroDeg, createArmatureSolver } from '../engine/armatureBench.ts';
import { MAINS } from '../engine/drive.ts';
import { scaleCurrent } from '../engine/instruments/ammeter.ts';
import type { ArmatureFault } from '../engine/parts/armatureFault.ts';
import { nominalLoopOhm, nominalSetup } from './diagnosis/shown.ts';
import type { Film } from './film.ts';
import { firstBar, type Pass } from './passes.ts';
import { workedOf } from './worked.ts';

/** One ammeter pass beside what a sound part and the true part would have read at the same place, A rms. */
export interface PassChart {
  readonly test: 'spaced' | 'neighbour';
  /** Bars stepped between the probes. */
  readonly spacing: number;
  /** Middle of the two probes, degrees from the bottom. */
  readonly middleDeg: number;
  /** Index is the count from the chalked bar, or the bench's own number when none was chalked; null: not read. */
  readonly own: readonly (number | null)[];
  readonly sound: readonly number[];
  readonly truth: readonly number[];
}

/** The learner's own passes as charts, those that were done at all. */
export function passCharts(film: Film): PassChart[] {
  const worked = workedOf(film);
  const chalk = film.stretches.at(-1)?.seen.chalkedBar ?? 0;
  const solver = createArmatureSolver(film.design);
  const charts = [chartOf('spaced', worked.spaced), chartOf('neighbour', worked.neighbour)];
  return charts.filter((chart) => chart !== null);

  function chartOf(test: PassChart['test'], { spacing, readings }: Pass): PassChart | null {
    const middleDeg = readings.at(-1)?.middleDeg;
    if (middleDeg === undefined) return null;
    const { bars } = film.design;
    const read = new Map(
      readings.map((r) => [firstBar(r, bars), scaleCurrent(r.deflection, r.rangeA)] as const),
    );
    const counted = Array.from({ length: bars }, (_, count) => (chalk + count) % bars);
    const at = { spacing, middleDeg, counted };
    return {
      test,
      spacing,
      middleDeg,
      own: counted.map((bar) => read.get(bar) ?? null),
      sound: expected(solver, film, [], at),
      truth: expected(solver, film, film.scenario.hidden.armature.faults, at),
    };
  }
}

interface Place {
  readonly spacing: number;
  readonly middleDeg: number;
  readonly counted: readonly number[];
}

/** Each pair of bars brought under the probes in turn, contacts at the middle of their spread, A. */
function expected(solver: ArmatureSolver, film: Film, faults: readonly ArmatureFault[], at: Place): number[] {
  const { design, scenario } = film;
  const setup = nominalSetup(MAINS[scenario.public.mains]);
  const geometry = { bars: design.bars, barZeroDeg: barZeroDeg(design) };
  return at.counted.map((bar) => {
    const middleAtRest = barAngleDeg(geometry, bar, 0) + (180 * at.spacing) / design.bars;
    const rotationRad = (wrapDeg(at.middleDeg - middleAtRest) * Math.PI) / 180;
    const point = solver.solve(faults, { ...setup, rotationRad, meter: null });
    return point.reading(bar, (bar + at.spacing) % design.bars, nominalLoopOhm(faults));
  });
}
