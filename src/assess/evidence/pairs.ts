import type { LoopSolution } from '../../engine/circuit/loopSolution.ts';
import { alterationOf } from './alterations.ts';
import type { Dictionary } from './dictionary.ts';
import { DROP_GAINS, dropLikelihoods } from './dropScale.ts';
import { DropPair, shownMv } from './drops.ts';
import { dividedWinding, type JointedWinding, jointedWinding } from './joints.ts';
import { CASES, cellsOf, needleLikelihoods, needleTable, severityCells } from './needles.ts';
import type { Network } from './network.ts';
import type { Severity, WindingKind } from './priors.ts';
import type { DropReading, MeterReading } from './reading.ts';
import {
  faultOf,
  locate,
  nearestSuspect,
  type SuspectBlock,
  type SuspectPlace,
  type Suspects,
} from './suspects.ts';
import { type Alteration, BarPair, NOTHING, type Sources, together } from './thevenin.ts';

/**
 * Two winding faults at once: one suspect that already stands out, with a second fault of every place beside it. The
 * second is looked for on a coarser list of severities; each stands for all up to half-way to the next.
 */
const SECONDS: readonly { readonly kind: WindingKind; readonly severities: readonly Severity[] }[] = [
  { kind: 'openCoil', severities: [{ ohm: 'open', share: 1 }] },
  { kind: 'jointBar', severities: [...coarse([2e-3, 8e-3, 0.03, 0.15], 0.7), { ohm: 'open', share: 0.3 }] },
  { kind: 'jointOneEnd', severities: coarse([4e-3, 0.02, 0.1], 0.6) },
  { kind: 'bridge', severities: coarse([2e-4, 6e-4, 2e-3, 6e-3, 0.02], 0.45) },
  { kind: 'reversed', severities: [{ ohm: 'open', share: 1 }] },
];

function coarse(ohms: readonly number[], share: number): Severity[] {
  return ohms.map((ohm) => ({ ohm, share: share / ohms.length }));
}

/** A second fault on the coarse list. */
export interface Second extends SuspectPlace {
  readonly odds: number;
  /** The single suspect that comes nearest. */
  readonly nearest: number;
}

export function listSeconds(suspects: Suspects, odds: Readonly<Record<WindingKind, number>>): Second[] {
  const { design } = suspects;
  const { bars } = design;
  let first = 0;
  return SECONDS.flatMap(({ kind, severities }) => {
    const block: SuspectBlock = { kind, variant: 0, severities, first };
    first += bars * severities.length;
    return Array.from({ length: bars }, (_, place) =>
      severities.map(({ share }, severity) => ({
        block,
        place,
        severity,
        odds: (odds[kind] * share) / bars,
        nearest: nearestSuspect(suspects, faultOf(design, block, place, severity))!,
      })),
    ).flat();
  });
}

/** The winding of one suspect with every joint a branch, in which second faults are alterations. */
interface FirstWinding {
  readonly winding: JointedWinding;
  readonly network: Network | null;
  /** The suspect itself, and its severity a step up and down. */
  readonly alteration: Alteration;
  readonly beside: readonly Alteration[];
}

/**
 * One suspect with all second faults beside it, weighed against meter readings and drops one after another; only
 * readings not yet weighed cost anything.
 */
export class Pairing {
  readonly suspect: number;
  readonly seconds: readonly Second[];
  /** Logarithm of the likelihood of all readings so far, by second and case. */
  readonly log: Float64Array;
  /** The same of the drops, by second and common error. */
  readonly dropLog: Float64Array;
  private readonly dictionary: Dictionary;
  private readonly first: FirstWinding;
  private readonly seconded: readonly Alteration[];
  private readonly solved = new Map<number, LoopSolution>();
  private steady: LoopSolution | null = null;
  private weighed = 0;
  private weighedDrops = 0;

  constructor(dictionary: Dictionary, suspect: number, seconds: readonly Second[]) {
    const at = locate(dictionary.suspects, suspect);
    if (at === null) throw new Error('a winding without fault has no second one');
    this.dictionary = dictionary;
    this.suspect = suspect;
    this.first = firstWinding(dictionary, at);
    const { winding, alteration } = this.first;
    const { design } = dictionary;
    const altered = seconds.map((second) => ({
      second,
      alteration: alterationOf(design, winding, second.block, second.place, second.severity),
    }));
    const apart = altered.filter((one) => !collide(alteration, one.alteration));
    this.seconds = apart.map(({ second }) => second);
    this.seconded = apart.map((one) => together(alteration, one.alteration));
    this.log = new Float64Array(this.seconds.length * CASES);
    this.dropLog = new Float64Array(this.seconds.length * DROP_GAINS.length);
  }

  /** Weighs the readings from where it left off. */
  weigh(meters: readonly MeterReading[], drops: readonly DropReading[]): void {
    for (; this.weighed < meters.length; this.weighed++) this.add(meters[this.weighed]!);
    for (; this.weighedDrops < drops.length; this.weighedDrops++) this.addDrop(drops[this.weighedDrops]!);
  }

  private addDrop(reading: DropReading): void {
    const { dictionary, first, seconded, seconds, dropLog } = this;
    this.steady ??= dictionary.solveSteady(first.network);
    const pair = new DropPair(this.steady, dictionary.design.bars, reading);
    const of = (alterations: readonly Alteration[]) => {
      const shown = new Float64Array(alterations.length);
      for (let k = 0; k < shown.length; k++) shown[k] = shownMv(pair.volt(alterations[k]!));
      return shown;
    };
    const millivolts = of(seconded);
    const cells = cellsOf(millivolts, runs(seconds));
    const own = cellsOf(of([first.alteration, ...first.beside]), [asOneRun(first.beside)])[0]!;
    for (let k = 0; k < cells.length; k++) cells[k] = Math.sqrt(cells[k]! ** 2 + own ** 2);
    const likelihoods = dropLikelihoods({ millivolts, cells }, reading);
    for (let k = 0; k < likelihoods.length; k++) dropLog[k]! += Math.log(likelihoods[k]!);
  }

  private add(reading: MeterReading): void {
    const { dictionary, seconds } = this;
    const { step } = dictionary.standing(reading.rotationDeg);
    const supply = dictionary.supply(reading.excitation, step);
    const pair = new BarPair(this.solution(reading), reading.bars[0], reading.bars[1]);
    const sources = gather(this.seconded, (alteration, into) => pair.source(alteration, supply, into));
    const cells = severityCells(sources, reading.rangeA, runs(seconds));
    const own = this.ownCell(pair, supply, reading);
    for (let k = 0; k < cells.length; k++) cells[k] = Math.hypot(cells[k]!, own);
    const likelihoods = needleLikelihoods(
      needleTable(sources, cells, reading.rangeA, dictionary.warmth),
      reading,
    );
    for (let k = 0; k < likelihoods.length; k++) this.log[k]! += Math.log(likelihoods[k]!);
  }

  /** What half a step in the first fault's own severity does to the needle. */
  private ownCell(pair: BarPair, supply: Parameters<BarPair['source']>[1], reading: MeterReading): number {
    const { beside, alteration } = this.first;
    if (beside.length === 0) return 0;
    const sources = gather([alteration, ...beside], (one, into) => pair.source(one, supply, into));
    return severityCells(sources, reading.rangeA, [asOneRun(beside)])[0]!;
  }

  private solution(reading: MeterReading): LoopSolution {
    const { dictionary, first, solved } = this;
    const step = dictionary.wholeTurnStep(reading.rotationDeg);
    const known = solved.get(step);
    if (known) return known;
    const fresh = dictionary.solveTurned(first.network, step);
    if (solved.size >= 64) solved.clear();
    solved.set(step, fresh);
    return fresh;
  }
}

/** A suspect and its neighbours in severity as a run of their own. */
function asOneRun(beside: readonly Alteration[]): {
  readonly severities: readonly Severity[];
  readonly first: number;
} {
  return { severities: [null, ...beside].map(() => ({ ohm: 1, share: 1 })), first: 0 };
}

function firstWinding(dictionary: Dictionary, { block, place, severity }: SuspectPlace): FirstWinding {
  const { design } = dictionary;
  const steps = [severity - 1, severity + 1].filter(
    (k) => k >= 0 && k < block.severities.length && block.severities[k]!.ohm !== 'open',
  );
  const beside = block.severities[severity]!.ohm === 'open' ? [] : steps;
  const fault = faultOf(design, block, place, severity);
  if (fault.kind !== 'turnShort' && fault.kind !== 'coilShort') {
    const { winding } = dictionary;
    const as = (k: number) => alterationOf(design, winding, block, place, k);
    return { winding, network: null, alteration: as(severity), beside: beside.map(as) };
  }
  const { topology, port } = dividedWinding(design, fault);
  const winding = jointedWinding(design, topology);
  const as = (k: number): Alteration => ({
    ...NOTHING,
    ports: [port],
    inverse: [block.severities[k]!.ohm as number],
  });
  return {
    winding,
    network: dictionary.network(winding.topology),
    alteration: as(severity),
    beside: beside.map(as),
  };
}

/** Two faults of one joint, one bridge or one bar's joint are not two faults. */
function collide(one: Alteration, other: Alteration): boolean {
  const ports = one.ports.some((p) => other.ports.some((q) => p.a === q.a && p.b === q.b));
  const bars = one.inFront.some(({ bar }) => other.inFront.some((also) => also.bar === bar));
  return ports || bars;
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

/** Runs of seconds that differ in severity only. */
function runs(seconds: readonly Second[]): { severities: readonly Severity[]; first: number }[] {
  const found: { severities: readonly Severity[]; first: number }[] = [];
  seconds.forEach(({ block, severity }, k) => {
    if (severity === 0) found.push({ severities: block.severities, first: k });
  });
  return found;
}
