import { CaseTable, type CaseWeight, type PairCase } from './cases.ts';
import { DropScale, overDrops } from './dropScale.ts';
import { overGains } from './gains.ts';
import { InsulationScale } from './insulation.ts';
import { LookScale } from './looks.ts';
import { meterLikelihoods } from './meter.ts';
import type { EvidenceModel } from './model.ts';
import { CASES } from './needles.ts';
import { SURFACES } from './noise.ts';
import { listSeconds, Pairing, type Second } from './pairs.ts';
import { Posterior } from './posterior.ts';
import type { MeterReading, Reading } from './reading.ts';
import { PULLS, passLikelihoods, stripLikelihoods } from './strip.ts';
import { locate, type SuspectPlace, suspectAt } from './suspects.ts';

/** Places whose suspects are thought of as the first of two faults, and how much they must weigh among the singles. */
const FIRSTS = 3;
const FIRST_LEAST = 0.01;
/** Pairings remembered, so that a suspect that falls back and rises again costs nothing. */
const PAIRINGS_REMEMBERED = 80;
/** Of "none of these" any reading is as likely as of the suspects together, or it may be anything. */
const ANYTHING = 0.1;

const SURFACE_COUNT = SURFACES.length;
const GAIN_COUNT = CASES / SURFACE_COUNT;

/** A suspect that may have a second one beside it: how much it weighs with its other severities against itself alone. */
interface First {
  readonly suspect: number;
  readonly breadth: number;
}

/**
 * Weighs readings one after another. What it says depends on which readings there were, not on their order: every
 * reading multiplies each suspect's probability by how well the suspect predicts it.
 */
export class Weigher {
  readonly model: EvidenceModel;
  private readonly meters: MeterReading[] = [];
  /** Logarithm of the likelihood of the meter readings, by suspect and case. */
  private readonly meterLog: Float64Array;
  /** The same with the instrument's errors averaged, by suspect and surface. */
  private readonly meterMean: Float64Array;
  private meterMeanStale = false;
  private readonly noneMeterLog = new Float64Array(CASES);
  private readonly stripLog: Float64Array;
  private noneStripLog = 0;
  /** Of each strip reading, how much better a suspect explains it than a sound part does: pairs need them one by one. */
  private readonly strips: Float64Array[] = [];
  private readonly drops: DropScale;
  private readonly insulation: InsulationScale;
  private readonly looks: LookScale;
  private readonly pairings = new Map<string, Pairing>();
  private readonly seconds: readonly Second[];
  /** Share of each suspect among all before anything is read. */
  private readonly shares: Float64Array;
  private readonly oddsLog: Float64Array;
  private readonly places: readonly (SuspectPlace | null)[];
  /** Bar each suspect cuts off, or -1. */
  private readonly cutOff: Int16Array;

  constructor(model: EvidenceModel) {
    const { suspects, insulation, design, priors } = model;
    this.model = model;
    this.meterLog = new Float64Array(suspects.count * CASES);
    this.meterMean = new Float64Array(2 * suspects.count);
    this.stripLog = new Float64Array(suspects.count);
    this.insulation = new InsulationScale(insulation, design.bars);
    this.seconds = listSeconds(suspects, priors.winding);
    this.places = Array.from({ length: suspects.count }, (_, k) => locate(suspects, k));
    this.looks = new LookScale(model, this.places, this.seconds);
    this.cutOff = Int16Array.from(this.places, cutOffBar);
    this.oddsLog = suspects.odds.map(Math.log);
    const total = suspects.odds.reduce((sum, odds) => sum + odds, 0);
    this.shares = suspects.odds.map((odds) => odds / total);
    this.drops = new DropScale(model.drops, this.shares);
  }

  add(reading: Reading): void {
    if (reading.kind === 'meter') this.addMeter(reading);
    else if (reading.kind === 'strip')
      this.addStrip(stripLikelihoods(this.model.dictionary, reading), 1 / PULLS);
    else if (reading.kind === 'stripPass')
      this.addStrip(passLikelihoods(this.model.dictionary, reading), 1 / 2);
    else if (reading.kind === 'drop') this.drops.add(reading, ANYTHING);
    else if (reading.kind === 'look') this.looks.add(reading);
    else this.insulation.add(reading);
  }

  result(): Posterior {
    this.averageGains();
    const pairs = this.pairs(this.table([]));
    return new Posterior(this.model, this.table(pairs), this.insulation, this.looks.others());
  }

  private averageGains(): void {
    if (!this.meterMeanStale) return;
    const { meterMean, meterLog } = this;
    for (let k = 0; k < meterMean.length; k++) meterMean[k] = overGains(meterLog, k, GAIN_COUNT);
    this.meterMeanStale = false;
  }

  private addMeter(reading: MeterReading): void {
    this.meters.push(reading);
    const likelihoods = meterLikelihoods(this.model.dictionary, reading);
    const { meterLog, shares } = this;
    const cases = SURFACE_COUNT * GAIN_COUNT;
    const together = new Float64Array(cases);
    for (let k = 0, at = 0; k < shares.length; k++) {
      for (let c = 0; c < cases; c++, at++) {
        together[c]! += shares[k]! * likelihoods[at]!;
        meterLog[at]! += Math.log(likelihoods[at]!);
      }
    }
    this.meterMeanStale = true;
    for (let c = 0; c < cases; c++)
      this.noneMeterLog[c]! += Math.log((1 - ANYTHING) * together[c]! + ANYTHING);
  }

  /** @param anything chance of the reading when it may be anything */
  private addStrip(likelihoods: Float64Array, anything: number): void {
    this.strips.push(likelihoods.map((likelihood) => Math.log(likelihood / likelihoods[0]!)));
    let together = 0;
    for (let k = 0; k < likelihoods.length; k++) {
      together += this.shares[k]! * likelihoods[k]!;
      this.stripLog[k]! += Math.log(likelihoods[k]!);
    }
    this.noneStripLog += Math.log((1 - ANYTHING) * together + ANYTHING * anything);
  }

  private table(pairs: readonly (PairCase & CaseWeight)[]): CaseTable {
    const { suspects, priors } = this.model;
    const table = new CaseTable(suspects.count, pairs);
    const drops = this.drops.means();
    for (let k = 0; k < suspects.count; k++) {
      table.set(k, this.single(k, this.oddsLog[k]! + this.stripLog[k]! + drops[k]!));
    }
    const none = Math.log(priors.noneOfThese) + this.noneStripLog + this.drops.ofNone();
    table.set(table.none, {
      clean: none + overGains(this.noneMeterLog, 0, GAIN_COUNT),
      dirty: none + overGains(this.noneMeterLog, 1, GAIN_COUNT),
      look: 0,
      cutOff: [-1, -1],
      faults: 1,
    });
    pairs.forEach((pair, k) => {
      table.set(table.none + 1 + k, pair);
    });
    return table;
  }

  private single(k: number, log: number): CaseWeight {
    return {
      clean: log + this.meterMean[2 * k]!,
      dirty: log + this.meterMean[2 * k + 1]!,
      look: this.looks.ofSuspect(k),
      cutOff: [this.cutOff[k]!, -1],
      faults: k === 0 ? 0 : 1,
    };
  }

  /** Pairs of what stands out among the singles with a second fault anywhere. */
  private pairs(singles: CaseTable): (PairCase & CaseWeight)[] {
    if (this.meters.length + this.strips.length + this.drops.readings.length === 0) return [];
    const firsts = this.firsts(singles);
    const found = firsts.flatMap((first, rank) => {
      const earlier = firsts.slice(0, rank).map(({ suspect }) => this.places[suspect]!);
      // A pair of two that both stand out is thought of once.
      const fresh = (second: Second) =>
        !earlier.some(({ block, place }) => block.kind === second.block.kind && place === second.place);
      return this.pairsOf(first, this.pairingOf(first.suspect, 'any', this.seconds), fresh);
    });
    return this.baffles(singles) ? [...found, ...this.partedPairs(firsts)] : found;
  }

  private pairsOf(
    first: First,
    pairing: Pairing,
    fresh: (second: Second) => boolean,
  ): (PairCase & CaseWeight)[] {
    pairing.weigh(this.meters, this.drops.readings);
    return pairing.seconds.flatMap((second, k) => (fresh(second) ? [this.pair(first, pairing, k)] : []));
  }

  /** Two open coils part the winding in two, which neither does alone: neither stands out for the other to join. */
  private partedPairs(firsts: readonly First[]): (PairCase & CaseWeight)[] {
    const { suspects, design } = this.model;
    const open = suspects.blocks.find(({ kind }) => kind === 'openCoil')!;
    const taken = new Set(firsts.map(({ suspect }) => suspect));
    return Array.from({ length: design.bars }, (_, coil) => suspectAt(open, coil, 0)).flatMap((suspect) => {
      if (taken.has(suspect)) return [];
      const later = this.seconds.filter(
        ({ block, nearest }) => block.kind === 'openCoil' && nearest > suspect && !taken.has(nearest),
      );
      return this.pairsOf({ suspect, breadth: 1 }, this.pairingOf(suspect, 'open', later), () => true);
    });
  }

  /** None of the single suspects explains what was read as well as "none of these" does. */
  private baffles({ clean, dirty, none, singles }: CaseTable): boolean {
    let best = -Infinity;
    for (let k = 0; k < singles; k++) best = Math.max(best, clean[k]!, dirty[k]!);
    return Math.max(clean[none]!, dirty[none]!) > best;
  }

  /** What stands out among the singles, by what ammeter, strip and drops have shown. */
  private firsts(singles: CaseTable): First[] {
    const { suspects, design } = this.model;
    const masses = massesOf(singles, suspects.count);
    const found: (First & { readonly mass: number })[] = [];
    for (const block of suspects.blocks) {
      for (let place = 0; place < design.bars; place++) {
        const from = suspectAt(block, place, 0);
        const own = masses.subarray(from, from + block.severities.length);
        const mass = own.reduce((sum, one) => sum + one, 0);
        const most = own.reduce((best, one, k) => (one > own[best]! ? k : best), 0);
        if (mass >= FIRST_LEAST) found.push({ suspect: from + most, breadth: mass / own[most]!, mass });
      }
    }
    return found.sort((p, q) => q.mass - p.mass || p.suspect - q.suspect).slice(0, FIRSTS);
  }

  private pairingOf(suspect: number, which: string, seconds: readonly Second[]): Pairing {
    const key = `${which} ${suspect}`;
    const known = this.pairings.get(key);
    if (known !== undefined) return known;
    if (this.pairings.size >= PAIRINGS_REMEMBERED)
      this.pairings.delete(this.pairings.keys().next().value as string);
    const fresh = new Pairing(this.model.dictionary, suspect, seconds);
    this.pairings.set(key, fresh);
    return fresh;
  }

  private pair(first: First, { seconds, log: logs, dropLog }: Pairing, k: number): PairCase & CaseWeight {
    const { suspect, breadth } = first;
    const second = seconds[k]!;
    const { nearest } = second;
    const odds = this.oddsLog[suspect]! + Math.log(breadth * second.odds);
    const log = odds + this.pairStripLog(suspect, nearest) + overDrops(dropLog, k);
    return {
      suspect,
      second,
      clean: log + overGains(logs, 2 * k, GAIN_COUNT),
      dirty: log + overGains(logs, 2 * k + 1, GAIN_COUNT),
      look: this.looks.ofSuspect(suspect) + this.looks.ofSecond(second),
      cutOff: [this.cutOff[suspect]!, cutOffBar(second)],
      faults: 2,
    };
  }

  /** The strip feels the stronger of two faults; they seldom lie under it together. */
  private pairStripLog(suspect: number, other: number): number {
    let sum = this.stripLog[0]!;
    for (const better of this.strips) {
      const one = better[suspect]!;
      const two = better[other]!;
      sum += Math.abs(one) >= Math.abs(two) ? one : two;
    }
    return sum;
  }
}

/** Shares of the first cases among themselves. */
function massesOf({ clean, dirty }: CaseTable, count: number): Float64Array {
  let most = -Infinity;
  for (let k = 0; k < count; k++) most = Math.max(most, clean[k]!, dirty[k]!);
  const masses = new Float64Array(count);
  let total = 0;
  for (let k = 0; k < count; k++) {
    masses[k] = Math.exp(clean[k]! - most) + Math.exp(dirty[k]! - most);
    total += masses[k]!;
  }
  return masses.map((mass) => mass / total);
}

/** The bar a fault cuts off from the winding, or -1. */
function cutOffBar(at: SuspectPlace | null): number {
  if (at === null) return -1;
  const { kind, severities } = at.block;
  const cuts = kind === 'jointBar' || kind === 'jointBothEnds';
  return cuts && severities[at.severity]!.ohm === 'open' ? at.place : -1;
}
