import type { CaseTable } from './cases.ts';
import { CLUES_AT_MOST } from './clues.ts';
import type { LampScale } from './insulation.ts';
import type { EvidenceModel } from './model.ts';
import { SURFACES } from './noise.ts';

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

/** How much of each factor an insulation state and a surface bring along, by number of winding faults beside them. */
type Rarity = readonly number[];

/**
 * Probabilities of every state of the part (case of the winding, state of the insulation, state of the surface), and
 * of any set of them. They add up to one.
 */
export class Posterior {
  readonly model: EvidenceModel;
  readonly cases: CaseTable;
  readonly winding: Float64Array;
  readonly insulation: Float64Array;
  readonly surface: Float64Array;
  private readonly weights: Float64Array;
  private readonly insulationWeights: Float64Array;
  private readonly cutOff: readonly Float64Array[];
  private readonly rarity: Rarity;
  /** By insulation state and surface: which of the look factors applies. */
  private readonly lookOf: Uint16Array;
  private readonly lookFactors: readonly (Float64Array | null)[];
  private readonly total: number;

  constructor(model: EvidenceModel, cases: CaseTable, lamp: LampScale, looks: OtherLooks) {
    this.model = model;
    this.cases = cases;
    this.weights = caseWeights(cases, model.priors.dirty);
    const highest = lamp.log.reduce((most, log) => Math.max(most, log), -Infinity);
    this.insulationWeights = Float64Array.from(
      model.insulation,
      ({ odds }, i) => odds * Math.exp(lamp.log[i]! - highest),
    );
    this.cutOff = lamp.cutOff.map((logs) => logs.map(Math.exp));
    const { another } = model.priors;
    this.rarity = [1, 1, another, another ** 2, another ** 3];
    const { lookOf, factors } = lookFactors(cases, looks);
    this.lookOf = lookOf;
    this.lookFactors = factors;
    this.winding = new Float64Array(cases.count);
    this.insulation = new Float64Array(model.insulation.length);
    this.surface = new Float64Array(SURFACES.length);
    this.total = this.sum({}, (w, i, s, weight) => {
      this.winding[w]! += weight;
      this.insulation[i]! += weight;
      this.surface[s]! += weight;
    });
    for (const part of [this.winding, this.insulation, this.surface])
      for (let k = 0; k < part.length; k++) part[k]! /= this.total;
  }

  /** Probability that the part is in one of some states. */
  chance(set: StateSet): number {
    return Math.min(1, this.sum(set, null) / this.total);
  }

  private sum(
    set: StateSet,
    visit: ((w: number, i: number, s: number, weight: number) => void) | null,
  ): number {
    let sum = 0;
    for (let i = 0; i < this.insulationWeights.length; i++) {
      if (set.insulation && set.insulation[i] === 0) continue;
      for (let s = 0; s < SURFACES.length; s++) {
        if (set.surface && set.surface[s] === 0) continue;
        sum += this.sumWinding(i, s, set.winding, visit);
      }
    }
    return sum;
  }

  private sumWinding(
    i: number,
    s: number,
    mask: Uint8Array | undefined,
    visit: ((w: number, i: number, s: number, weight: number) => void) | null,
  ): number {
    const { weights, cases, cutOff, rarity } = this;
    const base = this.insulationWeights[i]!;
    const others = (i > 0 ? 1 : 0) + s;
    const look = this.lookFactors[this.lookOf[i * SURFACES.length + s]!]!;
    let sum = 0;
    for (let w = 0; w < cases.count; w++) {
      if (mask && mask[w] === 0) continue;
      let weight = weights[w * SURFACES.length + s]! * base * rarity[others + cases.faults[w]!]!;
      if (weight === 0) continue;
      if (look) weight *= look[w]!;
      const one = cases.cutOff[2 * w]!;
      if (one >= 0) weight *= cutOff[one]![i]!;
      const two = cases.cutOff[2 * w + 1]!;
      if (two >= 0) weight *= cutOff[two]![i]!;
      sum += weight;
      if (visit) visit(w, i, s, weight);
    }
    return sum;
  }
}

/** Weights of the cases by surface, the largest 1. */
function caseWeights(cases: CaseTable, dirtyOdds: number): Float64Array {
  const { clean, dirty, count } = cases;
  const oddsLog = Math.log(dirtyOdds);
  let most = -Infinity;
  for (let w = 0; w < count; w++) most = Math.max(most, clean[w]!, dirty[w]! + oddsLog);
  const weights = new Float64Array(SURFACES.length * count);
  for (let w = 0; w < count; w++) {
    weights[w * SURFACES.length] = Math.exp(clean[w]! - most);
    weights[w * SURFACES.length + 1] = Math.exp(dirty[w]! + oddsLog - most);
  }
  return weights;
}

/** Few sums of insulation and surface looks differ: one list of factors for each that does, null where all are 1. */
function lookFactors(cases: CaseTable, { insulation, surface }: OtherLooks) {
  const sums: number[] = [];
  const lookOf = new Uint16Array(insulation.length * surface.length);
  insulation.forEach((log, i) => {
    surface.forEach((other, s) => {
      const sum = log + other;
      const known = sums.indexOf(sum);
      lookOf[i * surface.length + s] = known >= 0 ? known : sums.push(sum) - 1;
    });
  });
  const plain = cases.look.every((log) => log === 0);
  const factors = sums.map((sum) =>
    plain && sum === 0 ? null : cases.look.map((log) => Math.exp(clip(log + sum))),
  );
  return { lookOf, factors };
}

function clip(log: number): number {
  return Math.max(-CLUES_AT_MOST, Math.min(CLUES_AT_MOST, log));
}
