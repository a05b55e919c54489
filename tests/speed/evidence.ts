import { createEvidence, nextReadings, Weigher } from '../../src/assess/evidence/index.ts';
import type { DropReading, MeterReading, Reading } from '../../src/assess/evidence/reading.ts';
import { neighbourStation } from '../../src/engine/answers.ts';
import { createArmatureSolver } from '../../src/engine/armatureBench.ts';
import { neighbourDrops, seeMillivolts } from '../../src/engine/instruments/millivoltDrop.ts';
import type { ArmatureDesign } from '../../src/engine/parts/armature.ts';
import { FAULT, SETUP } from './engine.ts';
import { type Effort, type SpeedRow, timed } from './measure.ts';

const RANGE_A = 15;
/** Readings after which a learner's pass is taken up afresh. */
const PASS = 28;

/** Readings of a neighbouring pass over bridged bars, one bar after another. */
export function passOf(a: ArmatureDesign): MeterReading[] {
  const { first, second } = neighbourStation(a);
  const sweep = createArmatureSolver(a).sweep(FAULT, SETUP);
  return Array.from({ length: Math.min(PASS, a.bars) }, (_, step) => {
    const rotationDeg = (-360 * step) / a.bars;
    const bars = [(first + step) % a.bars, (second + step) % a.bars] as const;
    const amps = sweep.readingAt((rotationDeg * Math.PI) / 180, ...bars, SETUP.loopOhm);
    const shown = { deflection: Math.min(1.03, amps / RANGE_A), pegged: amps / RANGE_A > 1.03 };
    const with_ = { rangeA: RANGE_A, excitation: 'high', windingC: 20, from: 'instrument' } as const;
    return { kind: 'meter', entry: step, bars, rotationDeg, ...with_, ...shown };
  });
}

/** Which of all the readings the job still allows would tell most, half a pass having been read. */
export async function nextReading(a: ArmatureDesign, effort: Effort): Promise<SpeedRow> {
  const model = modelOf(a);
  const weigher = new Weigher(model);
  for (const reading of passOf(a).slice(0, PASS / 2)) weigher.add(reading);
  const posterior = weigher.result();
  const timing = await timed(effort, () => nextReadings(posterior)[0]);
  const what = `${a.id}: which next reading would tell most`;
  return { id: `next-${a.id}`, what, aimMs: 1000, ...timing };
}

function modelOf(design: ArmatureDesign) {
  const tests = ['look', 'spaced', 'neighbour', 'ground', 'strip', 'megohm', 'millivolt'] as const;
  return createEvidence({ design, mains: '230V50Hz', tests });
}

/** One more reading weighed against every suspect, and the probabilities of all of them afterwards. */
export async function evidenceUpdate(a: ArmatureDesign, effort: Effort): Promise<SpeedRow> {
  return update(a, passOf(a), 'evidence', 'reading', effort);
}

/** The same of a millivolt drop. */
export async function dropUpdate(a: ArmatureDesign, effort: Effort): Promise<SpeedRow> {
  return update(a, dropsOf(a), 'drop', 'millivolt drop', effort);
}

async function update(
  a: ArmatureDesign,
  pass: readonly Reading[],
  id: string,
  name: string,
  effort: Effort,
): Promise<SpeedRow> {
  const model = modelOf(a);
  let weigher = new Weigher(model);
  const timing = await timed(effort, (n) => {
    if (n % pass.length === 0) weigher = new Weigher(model);
    weigher.add(pass[n % pass.length]!);
    return weigher.result();
  });
  const what = `${a.id}: one ${name} weighed against ${model.suspects.count} suspects`;
  return { id: `${id}-${a.id}`, what, aimMs: 50, ...timing };
}

/** Drops of every pair of neighbours of the same part, the feed moved along. */
function dropsOf(a: ArmatureDesign): DropReading[] {
  return neighbourDrops(a, FAULT).map((volt, bar) => {
    const pair = [bar, (bar + 1) % a.bars] as const;
    const { millivolts } = seeMillivolts(volt);
    return { kind: 'drop', entry: bar, feed: pair, bars: pair, millivolts, from: 'instrument' };
  });
}
