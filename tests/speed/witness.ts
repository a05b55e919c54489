import { Simulation } from 'eecircuit-engine';
import { NOMINAL_LOOP_OHM } from '../../src/engine/answers.ts';
import { createArmatureSolver } from '../../src/engine/armatureBench.ts';
import { LINEAR_GROWLER } from '../../src/engine/growler.ts';
import type { ArmatureDesign } from '../../src/engine/parts/armature.ts';
import { drive } from '../engine/support/parts.ts';
import { liveNetlist } from '../reference/support/liveNetlist.ts';
import { FAULT } from './engine.ts';
import { type Effort, median, type SpeedRow, type Timing, timed } from './measure.ts';

export interface WitnessSpeed {
  readonly perPoint: SpeedRow;
  readonly perCall: SpeedRow;
  /** Relative difference from the engine's reading of the pair at the same operating point. */
  readonly apart: number;
}

/** Frequencies of the two sweeps whose difference is what a frequency costs once the netlist is read. */
export interface Sweeps {
  readonly few: number;
  readonly many: number;
}
export const LONG_SWEEPS: Sweeps = { few: 200, many: 2000 };

/**
 * The same operating point in ngspice (general-purpose circuit solver): growler and bridged winding with the ammeter
 * across one pair of bars, only that pair's volts kept. Per call: netlist read, one frequency solved. Per point: what
 * one more frequency costs in a long sweep.
 */
export async function witnessSpeed(
  a: ArmatureDesign,
  effort: Effort,
  { few, many } = LONG_SWEEPS,
): Promise<WitnessSpeed> {
  const witness = await OnePair.of(a);
  const apart = await witness.apart();
  const each = await perFrequency(witness, effort, { few, many });
  const call = await timed(effort, () => witness.run(1));
  const where = `${a.id}: the same in ngspice, one bar pair`;
  return {
    perPoint: { id: `witness-point-${a.id}`, what: `${where}, per frequency of a sweep`, ...each },
    perCall: { id: `witness-call-${a.id}`, what: `${where}, per call with its netlist`, ...call },
    apart,
  };
}

/**
 * Short and long sweeps in turn, so that what changes while the program warms up falls on both; the median of what
 * each pair of them says. The witness is compiled in the background, so it is run until it is surely done.
 */
async function perFrequency(witness: OnePair, effort: Effort, { few, many }: Sweeps): Promise<Timing> {
  const once = { ...effort, warmUpMs: 0, forMs: 0, samples: 1, sampleMs: 0 };
  await timed({ ...once, forMs: 2 * effort.warmUpMs }, () => witness.run(many));
  const slopes: Pick<Timing, 'ms' | 'wallMs'>[] = [];
  for (let k = 0; k < Math.min(7, effort.samples); k++) {
    const short = await timed(once, () => witness.run(few));
    const long = await timed(once, () => witness.run(many));
    const per = (key: 'ms' | 'wallMs') => (long[key] - short[key]) / (many - few);
    slopes.push({ ms: per('ms'), wallMs: per('wallMs') });
  }
  const of = (key: 'ms' | 'wallMs') => median(slopes.map((slope) => slope[key]));
  return { ms: of('ms'), wallMs: of('wallMs'), samples: slopes.length, runsEach: many - few };
}

class OnePair {
  private readonly a: ArmatureDesign;
  private readonly asked: ReturnType<typeof drive>;
  private readonly simulation = new Simulation();
  private readonly netlist: string;
  private readonly nodes: readonly [string, string];

  private constructor(a: ArmatureDesign) {
    const meter = { barA: 5, barB: 7, loopOhm: NOMINAL_LOOP_OHM };
    this.a = a;
    this.asked = drive({ rotationRad: ((2 * Math.PI) / a.slots) * 3.25, meter });
    const net = liveNetlist({ a, faults: FAULT, drive: this.asked });
    this.netlist = net.text;
    this.nodes = [net.node[meter.barA]!, net.node[meter.barB]!];
  }

  static async of(a: ArmatureDesign): Promise<OnePair> {
    const made = new OnePair(a);
    await made.simulation.start();
    return made;
  }

  async run(points: number): Promise<Awaited<ReturnType<Simulation['runSim']>>> {
    const kept = this.nodes.filter((name) => name !== '0').map((name) => `v(${name})`);
    const sweep = `.ac lin ${points} 50 ${points === 1 ? 50 : 51}`;
    this.simulation.setNetList(this.netlist.replace(/^\.ac .*$/m, `.save ${kept.join(' ')}\n${sweep}`));
    const result = await this.simulation.runSim();
    if (result.dataType !== 'complex' || result.numPoints !== points)
      throw new Error(`Expected ${points} complex points from ngspice, but ${result.numPoints} came.`);
    return result;
  }

  async apart(): Promise<number> {
    const result = await this.run(1);
    const volts = this.nodes.map((name) => {
      const value = result.data.find((d) => d.name === `v(${name})`)?.values[0];
      return typeof value === 'object' ? value : { real: 0, img: 0 };
    });
    const drop = Math.hypot(volts[0]!.real - volts[1]!.real, volts[0]!.img - volts[1]!.img);
    const ours = createArmatureSolver(this.a, LINEAR_GROWLER).solve(FAULT, this.asked).meterA;
    return Math.abs(ours / (drop / NOMINAL_LOOP_OHM) - 1);
  }
}
