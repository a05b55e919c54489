import type { LoopSolution } from '../../engine/circuit/loopSolution.ts';
import { type Slack, slackOfNeedle } from './beyond.ts';
import type { Dictionary } from './dictionary.ts';
import { DROP_GAINS, dropLikelihoods, slackOfDrop } from './dropScale.ts';
import { DropPair, shownMv } from './drops.ts';
import type { JointedWinding } from './joints.ts';
import { CASES, cellsOf, needleLikelihoods, needleTable, severityCells } from './needles.ts';
import type { Network } from './network.ts';
import type { Severity } from './priors.ts';
import type { DropReading, MeterReading } from './reading.ts';
import { type Alteration, BarPair, type Sources } from './thevenin.ts';

/** A winding with every joint a branch, in which what may be wrong are alterations. */
export interface AlterableWinding {
  readonly winding: JointedWinding;
  /** Null for the plain winding of the part. */
  readonly network: Network | null;
}

/** What is there in any case; and for each fault in it, all with its severity a step up or down. */
export interface Standing {
  readonly alteration: Alteration;
  readonly beside: readonly (readonly Alteration[])[];
}

/** Alterations that differ in severity only, from the first of them on. */
export interface Run {
  readonly severities: readonly Severity[];
  readonly first: number;
}

/**
 * Alterations of one winding weighed against the meter readings one after another; only readings not yet weighed cost
 * anything.
 */
export class AlteredScale {
  /** Logarithm of the likelihood of all readings so far, by alteration and case. */
  readonly log: Float64Array;
  /** The same where some of the readings may have nothing to do with it. */
  readonly loose: Float64Array;
  /** Both of the drops, by alteration and common error. */
  readonly dropLog: Float64Array;
  readonly dropLoose: Float64Array;
  private readonly dictionary: Dictionary;
  private readonly in: AlterableWinding & Standing;
  private readonly altered: readonly Alteration[];
  private readonly runs: readonly Run[];
  private readonly solved = new Map<number, LoopSolution>();
  private steady: LoopSolution | null = null;
  private weighed = 0;
  private weighedDrops = 0;

  /** @param altered whole alterations, what stands in any case included */
  constructor(
    dictionary: Dictionary,
    standing: AlterableWinding & Standing,
    altered: readonly Alteration[],
    runs: readonly Run[],
  ) {
    this.dictionary = dictionary;
    this.in = standing;
    this.altered = altered;
    this.runs = runs;
    this.log = new Float64Array(altered.length * CASES);
    this.loose = new Float64Array(altered.length * CASES);
    this.dropLog = new Float64Array(altered.length * DROP_GAINS.length);
    this.dropLoose = new Float64Array(altered.length * DROP_GAINS.length);
  }

  /** Weighs the readings from where it left off. */
  weigh(meters: readonly MeterReading[], drops: readonly DropReading[]): void {
    for (; this.weighed < meters.length; this.weighed++) this.add(meters[this.weighed]!);
    for (; this.weighedDrops < drops.length; this.weighedDrops++) this.addDrop(drops[this.weighedDrops]!);
  }

  private addDrop(reading: DropReading): void {
    const { dictionary, altered, runs } = this;
    const { network, alteration, beside } = this.in;
    this.steady ??= dictionary.solveSteady(network);
    const pair = new DropPair(this.steady, dictionary.design.bars, reading);
    const of = (alterations: readonly Alteration[]) => {
      const shown = new Float64Array(alterations.length);
      for (let k = 0; k < shown.length; k++) shown[k] = shownMv(pair.volt(alterations[k]!));
      return shown;
    };
    const millivolts = of(altered);
    const cells = cellsOf(millivolts, runs);
    const own = Math.hypot(
      ...beside.map((steps) => cellsOf(of([alteration, ...steps]), [asOneRun(steps)])[0]!),
    );
    for (let k = 0; k < cells.length; k++) cells[k] = Math.sqrt(cells[k]! ** 2 + own ** 2);
    const likelihoods = dropLikelihoods({ millivolts, cells }, reading);
    addLogs(likelihoods, slackOfDrop(reading), this.dropLog, this.dropLoose);
  }

  private add(reading: MeterReading): void {
    const { dictionary } = this;
    const { step } = dictionary.standing(reading.rotationDeg);
    const supply = dictionary.supply(reading.excitation, step);
    const pair = new BarPair(this.solution(reading), reading.bars[0], reading.bars[1]);
    const sources = gather(this.altered, (alteration, into) => pair.source(alteration, supply, into));
    const cells = severityCells(sources, reading.rangeA, this.runs);
    const own = this.ownCell(pair, supply, reading);
    for (let k = 0; k < cells.length; k++) cells[k] = Math.hypot(cells[k]!, own);
    const table = needleTable(sources, cells, reading.rangeA, dictionary.warmth);
    addLogs(needleLikelihoods(table, reading), slackOfNeedle(reading), this.log, this.loose);
  }

  /** What half a step in the standing faults' own severities does to the needle. */
  private ownCell(pair: BarPair, supply: Parameters<BarPair['source']>[1], reading: MeterReading): number {
    const { beside, alteration } = this.in;
    const cells = beside.map((steps) => {
      const sources = gather([alteration, ...steps], (one, into) => pair.source(one, supply, into));
      return severityCells(sources, reading.rangeA, [asOneRun(steps)])[0]!;
    });
    return Math.hypot(...cells);
  }

  private solution(reading: MeterReading): LoopSolution {
    const { dictionary, solved } = this;
    const step = dictionary.wholeTurnStep(reading.rotationDeg);
    const known = solved.get(step);
    if (known) return known;
    const fresh = dictionary.solveTurned(this.in.network, step);
    if (solved.size >= 64) solved.clear();
    solved.set(step, fresh);
    return fresh;
  }
}

/** A fault and its neighbours in severity as a run of their own. */
function asOneRun(beside: readonly Alteration[]): Run {
  return { severities: [null, ...beside].map(() => ({ ohm: 1, share: 1 })), first: 0 };
}

/** Adds the logarithms of a reading's likelihoods to what earlier readings came to, strict and loose. */
export function addLogs(
  likelihoods: Float64Array,
  { scale, offset }: Slack,
  strict: Float64Array,
  loose: Float64Array,
): void {
  for (let k = 0; k < likelihoods.length; k++) {
    const likelihood = likelihoods[k]!;
    strict[k]! += Math.log(likelihood);
    loose[k]! += Math.log(scale * likelihood + offset);
  }
}

function gather(
  alterations: readonly Alteration[],
  ask: (alteration: Alteration, into: { v2: number; r: number; x: number }) => void,
): Sources {
  const count = alterations.length;
  const sources = { v2: new Float64Array(count), r: new Float64Array(count), x: new Float64Array(count) };
  const into = { v2: 0, r: 0, x: 0 };
  alterations.forEach((alteration, k) => {
    ask(alteration, into);
    sources.v2[k] = into.v2;
    sources.r[k] = into.r;
    sources.x[k] = into.x;
  });
  return sources;
}
