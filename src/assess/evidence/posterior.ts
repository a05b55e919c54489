import { type CaseTable, FAULTS_MOST } from './cases.ts';
import { CLUES_AT_MOST } from './clues.ts';
import type { InsulationScale } from './insulation.ts';
import type { EvidenceModel } from './model.ts';

/** A set of states of the part: each list marks (1) what belongs to it; a list left out leaves all in. */
export interface StateSet {
  readonly winding?: Uint8Array | undefined;
  readonly insulation?: Uint8Array | undefined;
  /** Clean, dirty. */
  readonly surface?: Uint8Array | undefined;
}

/** Weights of what the lens showed, as logarithms: by insulation suspect, by surface. */
export interface OtherLooks {
  readonly insulation: Float64Array;
  readonly surface: Float64Array;
}

/** Clean and dirty. */
const SURFACES = 2;
/** Whether a case of the winding has any fault. */
const FAULTS = 2;
/** Cases that can be whatever the insulation, and those that need a ground. */
const NEEDS = 2;
/** Cells over which weights of cases are added up: by look, surface, whether there is a fault, and need of a ground. */
const cellAt = (look: number, s: number, f: number, need: number) =>
  ((look * SURFACES + s) * FAULTS + f) * NEEDS + need;

/**
 * Probabilities of every state of the part (case of the winding, state of the insulation, state of the surface), and
 * of any set of them. They add up to one.
 *
 *   P ∝ weight(case, surface) · weight(insulation) · rarity(of winding, insulation, surface at once) · looks · cut-off bars
 *
 * Where neither looks nor cut-off bars tie them together, the sums over winding and insulation are taken apart.
 */
export class Posterior {
  readonly model: EvidenceModel;
  readonly cases: CaseTable;
  readonly winding: Float64Array;
  readonly insulation: Float64Array;
  readonly surface: Float64Array;
  private readonly weights: Float64Array;
  private readonly base: Float64Array;
  private readonly cutOff: readonly Float64Array[];
  private readonly rarity: readonly number[];
  private readonly looks: LookFactors;
  /** Marks (1) cases that cut a bar off from the winding of which lamp or tester told something, and those alone. */
  private readonly cuts: Uint8Array;
  private readonly cutting: readonly number[];
  /** 1 where the insulation has gone to ground. */
  private readonly toGround: Uint8Array;
  private readonly total: number;

  constructor(model: EvidenceModel, cases: CaseTable, scale: InsulationScale, looks: OtherLooks) {
    const { dirty, another } = model.priors;
    this.model = model;
    this.cases = cases;
    this.weights = caseWeights(cases, dirty);
    const highest = scale.log.reduce((most, log) => Math.max(most, log), -Infinity);
    this.base = Float64Array.from(model.insulation, (one, i) => one.odds * Math.exp(scale.log[i]! - highest));
    this.cutOff = scale.cutOff.map((logs) => logs.map(Math.exp));
    this.rarity = [1, 1, another, another ** 2];
    this.looks = lookFactors(cases, looks);
    this.cuts = cutsOf(
      cases,
      scale.cutOff.map((logs) => logs.some((log) => log !== 0)),
    );
    this.cutting = [...this.cuts.keys()].filter((w) => this.cuts[w] === 1);
    this.toGround = Uint8Array.from(model.insulation, ({ kind }) => (kind.startsWith('grounded') ? 1 : 0));
    this.winding = new Float64Array(cases.count);
    this.insulation = new Float64Array(model.insulation.length);
    this.surface = new Float64Array(SURFACES);
    this.total = this.sum({});
    this.fillMarginals();
  }

  /** Probability that the part is in one of some states. */
  chance(set: StateSet): number {
    return Math.min(1, this.sum(set) / this.total);
  }

  private sum(set: StateSet): number {
    const ties = this.tiedUp(set.winding);
    let sum = 0;
    this.eachOther(set, (i, s, look) => {
      for (let f = 0; f < FAULTS; f++) {
        let plain = ties[cellAt(look, s, f, 0)]!;
        if (this.toGround[i] === 1) plain += ties[cellAt(look, s, f, 1)]!;
        if (plain > 0) sum += plain * this.base[i]! * this.rarityOf(i, s, f);
      }
      for (const w of this.cutting) if (set.winding?.[w] !== 0) sum += this.weightOf(w, i, s, look);
    });
    return sum;
  }

  /** Weights of all other cases, added up by look, surface and whether there is a fault. */
  private tiedUp(mask: Uint8Array | undefined): Float64Array {
    const { weights, cases, looks } = this;
    const sums = new Float64Array(looks.factors.length * SURFACES * FAULTS * NEEDS);
    looks.factors.forEach((factors, look) => {
      for (let w = 0; w < cases.count; w++) {
        if (mask?.[w] === 0 || this.cuts[w] === 1) continue;
        const factor = factors === null ? 1 : factors[w]!;
        for (let s = 0; s < SURFACES; s++)
          sums[cellAt(look, s, cases.faulty[w]!, cases.grounded[w]!)]! += weights[SURFACES * w + s]! * factor;
      }
    });
    return sums;
  }

  private fillMarginals(): void {
    const { looks, cases, total } = this;
    const other = new Float64Array(looks.factors.length * SURFACES * FAULTS * NEEDS);
    const ties = this.tiedUp(undefined);
    this.eachOther({}, (i, s, look) => {
      for (let f = 0; f < FAULTS; f++) {
        const weight = this.base[i]! * this.rarityOf(i, s, f);
        for (let need = 0; need <= this.toGround[i]!; need++) {
          const at = cellAt(look, s, f, need);
          other[at]! += weight;
          this.insulation[i]! += (weight * ties[at]!) / total;
          this.surface[s]! += (weight * ties[at]!) / total;
        }
      }
      for (const w of this.cutting) {
        const weight = this.weightOf(w, i, s, look) / total;
        this.winding[w]! += weight;
        this.insulation[i]! += weight;
        this.surface[s]! += weight;
      }
    });
    for (let w = 0; w < cases.count; w++)
      if (this.cuts[w] === 0) this.winding[w] = this.plainWeight(w, other) / total;
  }

  private plainWeight(w: number, other: Float64Array): number {
    let sum = 0;
    this.looks.factors.forEach((factors, look) => {
      for (let s = 0; s < SURFACES; s++) {
        const rest = other[cellAt(look, s, this.cases.faulty[w]!, this.cases.grounded[w]!)]!;
        sum += this.weights[SURFACES * w + s]! * rest * (factors === null ? 1 : factors[w]!);
      }
    });
    return sum;
  }

  private eachOther(set: StateSet, visit: (i: number, s: number, look: number) => void): void {
    for (let i = 0; i < this.base.length; i++) {
      if (set.insulation?.[i] === 0) continue;
      for (let s = 0; s < SURFACES; s++)
        if (set.surface?.[s] !== 0) visit(i, s, this.looks.of[i * SURFACES + s]!);
    }
  }

  private rarityOf(i: number, s: number, f: number): number {
    return this.rarity[(i > 0 ? 1 : 0) + s + f]!;
  }

  private weightOf(w: number, i: number, s: number, look: number): number {
    const { cases, cutOff } = this;
    if (cases.grounded[w]! > this.toGround[i]!) return 0;
    let cut = 1;
    for (let at = FAULTS_MOST * w; at < FAULTS_MOST * (w + 1); at++)
      if (cases.cutOff[at]! >= 0) cut *= cutOff[cases.cutOff[at]!]![i]!;
    const factors = this.looks.factors[look]!;
    const plain = this.weights[SURFACES * w + s]! * this.base[i]! * this.rarityOf(i, s, cases.faulty[w]!);
    return plain * cut * (factors === null ? 1 : factors[w]!);
  }
}

/** @param told by bar: whether what lamp or tester showed depends on its being cut off */
function cutsOf({ count, cutOff }: CaseTable, told: readonly boolean[]): Uint8Array {
  const cuts = new Uint8Array(count);
  cutOff.forEach((bar, at) => {
    if (bar >= 0 && told[bar]) cuts[Math.floor(at / FAULTS_MOST)] = 1;
  });
  return cuts;
}

/** Weights of the cases by surface, the largest 1. */
function caseWeights(cases: CaseTable, dirtyOdds: number): Float64Array {
  const { clean, dirty, count } = cases;
  const oddsLog = Math.log(dirtyOdds);
  let most = -Infinity;
  for (let w = 0; w < count; w++) most = Math.max(most, clean[w]!, dirty[w]! + oddsLog);
  const weights = new Float64Array(SURFACES * count);
  for (let w = 0; w < count; w++) {
    weights[SURFACES * w] = Math.exp(clean[w]! - most);
    weights[SURFACES * w + 1] = Math.exp(dirty[w]! + oddsLog - most);
  }
  return weights;
}

/** What the lens showed, put together: which list of factors applies to an insulation state and a surface. */
interface LookFactors {
  readonly of: Uint16Array;
  /** By case of the winding; null where all are 1. */
  readonly factors: readonly (Float64Array | null)[];
}

/** Few sums of insulation and surface looks differ: one list of factors for each that does. */
function lookFactors(cases: CaseTable, { insulation, surface }: OtherLooks): LookFactors {
  const sums: number[] = [];
  const of = new Uint16Array(insulation.length * SURFACES);
  insulation.forEach((log, i) => {
    surface.forEach((other, s) => {
      const sum = log + other;
      const known = sums.indexOf(sum);
      of[i * SURFACES + s] = known >= 0 ? known : sums.push(sum) - 1;
    });
  });
  const plain = cases.look.every((log) => log === 0);
  const factors = sums.map((sum) =>
    plain && sum === 0 ? null : cases.look.map((log) => Math.exp(clip(log + sum))),
  );
  return { of, factors };
}

function clip(log: number): number {
  return Math.max(-CLUES_AT_MOST, Math.min(CLUES_AT_MOST, log));
}
