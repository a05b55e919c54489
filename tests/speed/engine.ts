import { NOMINAL_LOOP_OHM, neighbourStation, spanStation, type TestSetup } from '../../src/engine/answers.ts';
import { createArmatureSolver } from '../../src/engine/armatureBench.ts';
import { faultDictionary } from '../../src/engine/dictionary/dictionary.ts';
import { MAINS } from '../../src/engine/drive.ts';
import type { ArmatureDesign } from '../../src/engine/parts/armature.ts';
import type { ArmatureFault } from '../../src/engine/parts/armatureFault.ts';
import { type Effort, type SpeedRow, timed } from './measure.ts';

export const SETUP: TestSetup = {
  mains: MAINS['230V50Hz'],
  excitation: 'high',
  loopOhm: NOMINAL_LOOP_OHM,
  windingC: 20,
};
export const FAULT: readonly ArmatureFault[] = [{ kind: 'bridgedBars', bar: 5, ohm: 2e-4, by: 'copper' }];

/** Rotations that never come twice and never fall on a step of the table, rad. */
const rotationOf = (n: number) => 0.0123 + 0.7548776662 * n;

/** Bridged bars solved at a new rotation, with the reading between every two bars. */
export async function everyPair(a: ArmatureDesign, effort: Effort): Promise<SpeedRow> {
  const sweep = createArmatureSolver(a).sweep(FAULT, SETUP);
  const pairs = new Float64Array((a.bars * (a.bars - 1)) / 2);
  const timing = await timed(effort, (n) => {
    sweep.turnTo(rotationOf(n));
    sweep.everyPair(NOMINAL_LOOP_OHM, pairs);
  });
  const what = `${a.id}: solved at a new rotation, all ${pairs.length} bar pairs`;
  return { id: `pairs-${a.id}`, what, ...timing, aimMs: a.bars > 30 ? 0.4 : 0.1 };
}

/** The same for one pair only, as a pass round the commutator wants it. */
export async function onePair(a: ArmatureDesign, effort: Effort): Promise<SpeedRow> {
  const sweep = createArmatureSolver(a).sweep(FAULT, SETUP);
  const timing = await timed(effort, (n) => sweep.readingAt(rotationOf(n), 5, 7, NOMINAL_LOOP_OHM));
  return { id: `pair-${a.id}`, what: `${a.id}: solved at a new rotation, one bar pair`, ...timing };
}

/** What a session asks for after an act. */
export async function onePoint(a: ArmatureDesign, effort: Effort): Promise<SpeedRow> {
  const solver = createArmatureSolver(a);
  const meter = { barA: 0, barB: 1, loopOhm: NOMINAL_LOOP_OHM };
  const timing = await timed(effort, (n) => {
    const point = solver.solve(FAULT, { ...SETUP, rotationRad: rotationOf(n), meter });
    return point.meterA + point.coilLossW()[0]! + point.strip(180, 5e-4).meanN;
  });
  const what = `${a.id}: one operating point with ammeter, coil losses and strip`;
  return { id: `point-${a.id}`, what, ...timing };
}

export async function dictionaryOf(a: ArmatureDesign, effort: Effort, aimMs?: number): Promise<SpeedRow> {
  const stations = [neighbourStation(a), spanStation(a)];
  const { faults, amps } = faultDictionary(a, SETUP, stations);
  const timing = await timed(effort, () => faultDictionary(a, SETUP, stations));
  const what = `${a.id}: ${faults.length} single faults × ${a.slots} slot positions, ${amps.length} readings`;
  return { id: `dictionary-${a.id}`, what, ...timing, ...(aimMs === undefined ? {} : { aimMs }) };
}

/** 360 places of the strip, half a degree apart round the upper arc, with every slot brought under each. */
export async function stripMapOf(a: ArmatureDesign, effort: Effort): Promise<SpeedRow> {
  const solver = createArmatureSolver(a);
  const anglesDeg = Float64Array.from({ length: 360 }, (_, k) => 90.25 + 0.5 * k);
  const timing = await timed(effort, (n) =>
    solver.stripMap(FAULT, SETUP, { anglesDeg, heightM: 5e-4, fromRad: 1e-4 * n }),
  );
  return { id: `strip-${a.id}`, what: `${a.id}: strip map, 360 places × ${a.slots} slots`, ...timing };
}
