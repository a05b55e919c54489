import { type Base, baseOf } from './bases.ts';
import { listSeconds } from './besides.ts';
import { logSum, withinReach } from './beyond.ts';
import { CaseTable } from './cases.ts';
import { DropScale, overDrops } from './dropScale.ts';
import { Grounds } from './grounds.ts';
import { InsulationScale } from './insulation.ts';
import { LookScale } from './looks.ts';
import { MeterScale, overCases } from './meters.ts';
import type { EvidenceModel } from './model.ts';
import { CASES } from './needles.ts';
import { Posterior } from './posterior.ts';
import type { Reading, StripPassReading, StripReading } from './reading.ts';
import { HOPELESS, SeveralFinder, type Surfaced, topOf, type WeighedSeveral } from './severalFinder.ts';
import { PULLS } from './strip.ts';
import { StripScale } from './strips.ts';
import { locate, type SuspectPlace, suspectAt } from './suspects.ts';

/** Places whose suspects are thought of as the first of two faults, and how much they must weigh among the singles. */
const FIRSTS = 3;
const FIRST_LEAST = 0.01;
/** Two grounds that are thought of with a second fault, and that the strip is worked out for. */
const GROUND_FIRSTS = 2;
const GROUNDS_FELT = 8;
/** A ground less likely than this, as the lamp has it, is not thought of twice. */
const GROUND_LEAST = 1e-3;
const NOTHING_STANDS_OUT = 0.5;
/** Of something unlisted any pull is as likely as of the suspects together, or it may be anything. */
const ANYTHING = 0.1;

/** "None of these" within eight to one of the best single: none of them explains well what was read. */
const BAFFLING = Math.log(8);

/** Weights of all single suspects, as logarithms by surface. */
interface Singles {
  readonly clean: Float64Array;
  readonly dirty: Float64Array;
  /** All of them together where some readings may have nothing to do with the suspect. */
  readonly looseLog: number;
  /** The best of them with nothing unlisted beside it. */
  readonly best: number;
}

/** Two grounds: which of them stand out, and all of them together. */
interface GroundCases extends Surfaced {
  readonly firsts: readonly Base[];
}

const NO_GROUNDS: GroundCases = { ...HOPELESS, firsts: [] };

/**
 * Weighs readings one after another. What it says depends on which readings there were, not on their order: every
 * reading multiplies each suspect's probability by how well the suspect predicts it.
 */
export class Weigher {
  readonly model: EvidenceModel;
  readonly meters: MeterScale;
  readonly strips: StripScale;
  private unlistedStripLog = 0;
  readonly drops: DropScale;
  private readonly insulation: InsulationScale;
  readonly looks: LookScale;
  private readonly finder: SeveralFinder;
  private readonly grounds: Grounds;
  /** Share of each suspect among all before anything is read. */
  private readonly shares: Float64Array;
  private readonly totalLog: number;
  private readonly besideLog: number;
  private readonly oddsLog: Float64Array;
  private readonly places: readonly (SuspectPlace | null)[];
  /** Bar each suspect cuts off, or -1. */
  private readonly cutOff: Int16Array;

  constructor(model: EvidenceModel) {
    const { suspects, insulation, design, priors, dictionary } = model;
    this.model = model;
    this.meters = new MeterScale(dictionary);
    this.strips = new StripScale(dictionary);
    this.insulation = new InsulationScale(insulation, design.bars);
    this.grounds = new Grounds(dictionary, priors);
    const seconds = listSeconds(suspects, priors.winding);
    this.places = Array.from({ length: suspects.count }, (_, k) => locate(suspects, k));
    this.looks = new LookScale(model, this.places, seconds);
    this.cutOff = Int16Array.from(this.places, cutOffBar);
    this.oddsLog = suspects.odds.map(Math.log);
    const total = suspects.odds.reduce((sum, odds) => sum + odds, 0);
    this.shares = suspects.odds.map((odds) => odds / total);
    this.drops = new DropScale(model.drops, this.shares);
    this.finder = new SeveralFinder(this, seconds, cutOffBar);
    this.totalLog = Math.log(total);
    // What explains most of the readings may be there with something unlisted beside it.
    this.besideLog = Math.log(priors.noneOfThese * priors.another);
  }

  add(reading: Reading): void {
    if (reading.kind === 'meter') this.meters.add(reading);
    else if (reading.kind === 'strip' || reading.kind === 'stripPass') this.addStrip(reading);
    else if (reading.kind === 'drop') this.drops.add(reading, ANYTHING);
    else if (reading.kind === 'look') this.looks.add(reading);
    else this.insulation.add(reading);
  }

  result(): Posterior {
    const singles = this.singles();
    const masses = massesOf(singles);
    const grounds = this.groundCases(singles, masses[0]!);
    const several = this.several(singles, masses, grounds);
    return new Posterior(
      this.model,
      this.table(singles, several, grounds),
      this.insulation,
      this.looks.others(),
    );
  }

  private addStrip(reading: StripReading | StripPassReading): void {
    const likelihoods = this.strips.add(reading);
    const anything = reading.kind === 'strip' ? 1 / PULLS : 1 / 2;
    const together = likelihoods.reduce((sum, likelihood, k) => sum + this.shares[k]! * likelihood, 0);
    this.unlistedStripLog += Math.log((1 - ANYTHING) * together + ANYTHING * anything);
  }

  private singles(): Singles {
    const { meters, drops, strips, oddsLog } = this;
    const means = meters.mean();
    const dropped = drops.means();
    const others = oddsLog.map((odds, k) => odds + strips.log[k]! + dropped[k]!);
    const clean = others.map((log, k) => log + means[2 * k]!);
    const dirty = others.map((log, k) => log + means[2 * k + 1]!);
    const near = withinReach(meters.loose, CASES, (k) => oddsLog[k]! + strips.loose[k]!);
    const best = mostOf({ clean, dirty });
    const loose: number[] = [];
    near.forEach((is, k) => {
      if (is === 0) return;
      const log = oddsLog[k]! + strips.loose[k]! + drops.looseOf(k);
      const of = (surface: number) => log + overCases(meters.loose, k, surface);
      const [one, other] = [of(0), of(1)];
      loose.push(one, other);
      if (k === 0) return;
      clean[k] = logSum([clean[k]!, this.besideLog + one]);
      dirty[k] = logSum([dirty[k]!, this.besideLog + other]);
    });
    return { clean, dirty, looseLog: logSum(loose), best };
  }

  private raised(several: WeighedSeveral): WeighedSeveral {
    const { loose } = several;
    if (loose === HOPELESS) return several;
    const clean = logSum([several.clean, this.besideLog + loose.clean]);
    return { ...several, clean, dirty: logSum([several.dirty, this.besideLog + loose.dirty]) };
  }

  /**
   * Something that is none of the suspects: it looks like one of them in most readings, or puts all of them off. What
   * it does may scatter the readings or not: they tell nothing of the surface then.
   */
  private none(singlesLog: number, several: readonly WeighedSeveral[]): number {
    const { noneOfThese } = this.model.priors;
    const more = several.flatMap(({ loose }) => (loose === HOPELESS ? [] : [loose.clean, loose.dirty]));
    const either = logSum([singlesLog, logSum(more)]);
    const alike = either - this.totalLog - Math.LN2;
    const adrift = this.meters.adrift.log() + this.unlistedStripLog + this.drops.ofNone();
    return Math.log(noneOfThese / 2) + logSum([alike, adrift]);
  }

  private table(singles: Singles, several: readonly WeighedSeveral[], grounds: GroundCases): CaseTable {
    const table = new CaseTable(this.shares.length, several);
    table.setSingles({ ...singles, cutOff: this.cutOff, look: (k) => this.looks.ofSuspect(k) });
    const none = this.none(singles.looseLog, several);
    const { clean, dirty } = grounds;
    const other = { look: 0, cutOff: [] } as const;
    table.set(table.none, { clean: none, dirty: none, ...other, faulty: true, grounded: false });
    several.forEach((one, k) => {
      table.set(table.none + 1 + k, this.raised(one));
    });
    table.set(table.grounds, { clean, dirty, ...other, faulty: false, grounded: true });
    return table;
  }

  /** What stands out among the singles with a second fault anywhere, and more of a sort where two are believed. */
  private several(singles: Singles, masses: Float64Array, grounds: GroundCases): WeighedSeveral[] {
    if (this.meters.readings.length + this.strips.count + this.drops.readings.length === 0) return [];
    const firsts = this.firsts(masses);
    const found = this.finder.pairs([...firsts, ...grounds.firsts]);
    const baffled = this.none(singles.looseLog, []) > singles.best - BAFFLING;
    const parted = baffled ? this.finder.parted(firsts, (suspect) => this.first(suspect, 1)) : [];
    const pairs = [...found, ...parted];
    return [...pairs, ...this.finder.more(pairs, singles.best)];
  }

  /** What stands out among the singles, by what ammeter and strip have shown. */
  private firsts(masses: Float64Array): Base[] {
    const { suspects, design } = this.model;
    const found: { readonly suspect: number; readonly breadth: number; readonly mass: number }[] = [];
    for (const block of suspects.blocks) {
      for (let place = 0; place < design.bars; place++) {
        const from = suspectAt(block, place, 0);
        const own = masses.subarray(from, from + block.severities.length);
        const mass = own.reduce((sum, one) => sum + one, 0);
        const most = own.reduce((best, one, k) => (one > own[best]! ? k : best), 0);
        if (mass >= FIRST_LEAST) found.push({ suspect: from + most, breadth: mass / own[most]!, mass });
      }
    }
    return found
      .sort((p, q) => q.mass - p.mass || p.suspect - q.suspect)
      .slice(0, FIRSTS)
      .map(({ suspect, breadth }) => this.first(suspect, breadth));
  }

  /** @param breadth how much it weighs with its other severities against itself alone */
  private first(suspect: number, breadth: number): Base {
    const oddsLog = this.oddsLog[suspect]! + Math.log(breadth);
    const at = this.places[suspect]!;
    const look = this.looks.ofSuspect(suspect);
    return baseOf(this, [{ suspect, at, oddsLog, cutOff: this.cutOff[suspect]!, look }]);
  }

  /** Chance of a ground as the lamp has it, nothing else considered. */
  private groundChance(): number {
    const { insulation } = this.model;
    const weights = Float64Array.from(insulation, ({ odds }, i) => Math.log(odds) + this.insulation.log[i]!);
    const grounds = weights.filter((_, i) => insulation[i]!.kind.startsWith('grounded'));
    return Math.exp(logSum(grounds) - logSum(weights));
  }

  /**
   * Two grounds among the singles: nothing is said of them by the strip alone, nor while nothing stands out.
   * @param sound share of the winding without fault among the singles
   */
  private groundCases(singles: Singles, sound: number): GroundCases {
    const { grounds, meters, strips } = this;
    const chance = this.groundChance();
    if (meters.readings.length === 0 || chance < GROUND_LEAST || sound > NOTHING_STANDS_OUT)
      return NO_GROUNDS;
    grounds.weigh(meters.readings, this.drops.readings);
    const near = withinReach(grounds.scale.log, CASES, () => grounds.oddsLog);
    const all = [...near.keys()].filter((nth) => near[nth] === 1);
    const metered = all.map((nth) => {
      const log = grounds.oddsLog + overDrops(grounds.scale.dropLog, nth);
      const of = (surface: number) => log + overCases(grounds.scale.log, nth, surface);
      return { nth, clean: of(0), dirty: of(1) };
    });
    const best = metered.sort((p, q) => topOf(q) - topOf(p)).slice(0, GROUNDS_FELT);
    const felt = best.map(({ nth, clean, dirty }) => {
      const { better } = grounds.felt(nth, strips);
      const strip = Array.from(better).reduce((sum, one) => sum + one, strips.log[0]!);
      return { nth, clean: clean + strip, dirty: dirty + strip };
    });
    const rare = Math.log(chance);
    const least = Math.log(FIRST_LEAST) + mostOf(singles);
    const firsts = felt
      .filter((one) => topOf(one) + rare > least)
      .sort((p, q) => topOf(q) - topOf(p))
      .slice(0, GROUND_FIRSTS)
      .map(({ nth }) => this.groundFirst(nth));
    const sum = (surface: keyof Surfaced) => logSum(felt.map((one) => one[surface]));
    return { clean: sum('clean'), dirty: sum('dirty'), firsts };
  }

  private groundFirst(nth: number): Base {
    const { grounds, strips } = this;
    return {
      key: `grounds ${nth}`,
      members: [],
      oddsLog: grounds.oddsLog,
      grounded: true,
      standing: () => grounds.standing(nth),
      felt: () => grounds.felt(nth, strips),
    };
  }
}

function mostOf({ clean, dirty }: Pick<Singles, 'clean' | 'dirty'>): number {
  let most = -Infinity;
  for (let k = 0; k < clean.length; k++) most = Math.max(most, clean[k]!, dirty[k]!);
  return most;
}

/** Shares of the singles among themselves. */
function massesOf(singles: Singles): Float64Array {
  const { clean, dirty } = singles;
  const most = mostOf(singles);
  let total = 0;
  const masses = clean.map((log, k) => {
    const mass = Math.exp(log - most) + Math.exp(dirty[k]! - most);
    total += mass;
    return mass;
  });
  return masses.map((mass) => mass / total);
}

/** The bar a fault cuts off from the winding, or -1. */
function cutOffBar(at: SuspectPlace | null): number {
  if (at === null) return -1;
  const { kind, severities } = at.block;
  const cuts = kind === 'jointBar' || kind === 'jointBothEnds';
  return cuts && severities[at.severity]!.ohm === 'open' ? at.place : -1;
}
