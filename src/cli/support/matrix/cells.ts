import { nominalLoopOhm, nominalSetup, shownBy } from '../../../assess/diagnosis/shown.ts';
import { neighbourReadings, spacedReadings } from '../../../engine/answers.ts';
import type { ArmatureSolver } from '../../../engine/armatureBench.ts';
import { MAINS } from '../../../engine/drive.ts';
import { armatureResistance } from '../../../engine/instruments/armatureDc.ts';
import { LEAST_OHM, type TestVolt, terminalVolt } from '../../../engine/instruments/insulationTester.ts';
import { neighbourDrops } from '../../../engine/instruments/millivoltDrop.ts';
import { ROOM_C } from '../../../engine/instruments/thermal.ts';
import { median } from '../../../engine/math/median.ts';
import type { ArmatureDesign } from '../../../engine/parts/armature.ts';
import type { ArmatureFault } from '../../../engine/parts/armatureFault.ts';

/** What one ammeter pass shows. */
export interface PassCell {
  /** Readings that stand out of their own turn. */
  readonly places: number;
  /** How far the middle of the turn lies off that of a sound part, as a share of it. */
  readonly level: number;
  /** Whether that is more than an eye and clean contacts let pass; seen only by one who knows the sound reading. */
  readonly levelSeen: boolean;
}

/** What every test of the bench shows of one condition of an armature, contact scatter off. */
export interface Row {
  readonly name: string;
  readonly spaced: PassCell;
  readonly neighbour: PassCell;
  /** Slots felt to pull somewhere clear of the jaws. */
  readonly strip: number;
  /** Bars from which the lamp is seen to glow. */
  readonly lamp: number;
  /** Bars that read less than 1 MΩ to the core at each test voltage. */
  readonly insulation: Readonly<Record<TestVolt, number>>;
  /** Pairs whose millivolt drop stands out. */
  readonly drop: number;
}

/** The bench of the matrix: 230 V 50 Hz. */
const BENCH = MAINS['230V50Hz'];
/** Spread of a sound armature's bar-to-bar values, as a share of the middle: trade practice, no source (A11). */
const DROP_BAND = 0.05;

/** Middle of each kind of bar in each ammeter pass, A: bars that share a slot lie differently and read differently. */
export interface Levels {
  readonly spaced: readonly number[];
  readonly neighbour: readonly number[];
}

/** With the contacts the condition has. */
export function levels(solver: ArmatureSolver, faults: readonly ArmatureFault[]): Levels {
  const setup = { ...nominalSetup(BENCH), loopOhm: nominalLoopOhm(faults) };
  const kinds = solver.design.coilsPerSlot;
  const middles = (readings: readonly number[]) =>
    Array.from({ length: kinds }, (_, kind) => median(readings.filter((_, bar) => bar % kinds === kind)));
  return {
    spaced: middles(spacedReadings(solver, faults, setup).readingA),
    neighbour: middles(neighbourReadings(solver, faults, setup)),
  };
}

/** How far one turn lies off another, as a share, the kinds of bars taken together. */
function levelOff(now: readonly number[], sound: readonly number[]): number {
  return now.reduce((sum, amps, kind) => sum + amps / sound[kind]!, 0) / now.length - 1;
}

/** @param sound levels of the sound armature */
export function rowOf(
  solver: ArmatureSolver,
  name: string,
  faults: readonly ArmatureFault[],
  sound: Levels,
): Row {
  const shown = shownBy(solver, faults, BENCH);
  const now = levels(solver, faults);
  const pass = (kind: 'spaced' | 'neighbour'): PassCell => {
    const level = levelOff(now[kind], sound[kind]);
    const places = shown[kind].filter((d) => Math.abs(d) > shown.band[kind]).length;
    return { places, level, levelSeen: Math.abs(level) > shown.band[kind] };
  };
  return {
    name,
    spaced: pass('spaced'),
    neighbour: pass('neighbour'),
    strip: shown.feltSlots,
    lamp: shown.litBars.length,
    insulation: { 250: lowBars(solver.design, faults, 250), 500: lowBars(solver.design, faults, 500) },
    drop: dropPlaces(solver.design, faults),
  };
}

/** Bars below the least accepted insulation, each with the voltage it charges up to. */
function lowBars(a: ArmatureDesign, faults: readonly ArmatureFault[], volt: TestVolt): number {
  const ohm = (bar: number, peakV: number) =>
    armatureResistance(a, faults, bar, 'core', { peakV, tempC: ROOM_C });
  const low = Array.from({ length: a.bars }, (_, bar) => ohm(bar, terminalVolt(volt, ohm(bar, 0))));
  return low.filter((reading) => reading !== null && reading < LEAST_OHM).length;
}

function dropPlaces(a: ArmatureDesign, faults: readonly ArmatureFault[]): number {
  const drops = neighbourDrops(a, faults);
  const middle = median(drops.map((volt) => volt ?? 0));
  return drops.filter((volt) => volt === null || Math.abs(volt / middle - 1) > DROP_BAND).length;
}
