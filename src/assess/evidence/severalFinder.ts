import { type Base, baseOf, isSameSite, kindsOf, type Member } from './bases.ts';
import { Besides, type Second } from './besides.ts';
import { withinReach } from './beyond.ts';
import { type CaseWeight, FAULTS_MOST, type SeveralCase } from './cases.ts';
import { type DropScale, overDrops } from './dropScale.ts';
import type { LookScale } from './looks.ts';
import { type MeterScale, overCases } from './meters.ts';
import type { EvidenceModel } from './model.ts';
import { CASES } from './needles.ts';
import { isAlike, rarityOf } from './priors.ts';
import type { StripScale } from './strips.ts';
import { type SuspectPlace, suspectAt } from './suspects.ts';

/** Bases remembered with all beside them, so that one that falls back and rises again costs nothing. */
const BASES_REMEMBERED = 80;

/** Logarithms of weights with a clean and with a dirty commutator. */
export interface Surfaced {
  readonly clean: number;
  readonly dirty: number;
}

export const HOPELESS: Surfaced = { clean: -Infinity, dirty: -Infinity };

export function topOf({ clean, dirty }: Surfaced): number {
  return Math.max(clean, dirty);
}

/** Several faults as weighed, strictly and loosely. */
export interface WeighedSeveral extends SeveralCase, CaseWeight {
  readonly loose: Surfaced;
  readonly base: Base;
  readonly second: Second;
}

interface Scales {
  readonly model: EvidenceModel;
  readonly meters: MeterScale;
  readonly drops: DropScale;
  readonly strips: StripScale;
  readonly looks: LookScale;
}

/** Weighs what stands out with one more fault anywhere beside it. */
export class SeveralFinder {
  private readonly scales: Scales;
  private readonly seconds: readonly Second[];
  private readonly cutOffOf: (at: SuspectPlace) => number;
  private readonly known = new Map<string, Besides>();

  constructor(scales: Scales, seconds: readonly Second[], cutOffOf: (at: SuspectPlace) => number) {
    this.scales = scales;
    this.seconds = seconds;
    this.cutOffOf = cutOffOf;
  }

  /** Every base with one more of any kind. */
  pairs(bases: readonly Base[]): WeighedSeveral[] {
    return bases.flatMap((base, rank) => this.beside(base, 'any', this.seconds, bases.slice(0, rank)));
  }

  /**
   * Three and more: where two are believed rather than one, a third that is like one of them is looked for, and so on.
   * About the best set every other is weighed that has all but one of its faults.
   * @param believed weight of the best single
   */
  more(pairs: readonly WeighedSeveral[], believed: number): WeighedSeveral[] {
    const found: WeighedSeveral[] = [];
    let [best, among] = [bestOf(pairs), pairs];
    if (best === null || topOf(best) < believed) return found;
    while (best.suspects.length < FAULTS_MOST) {
      const larger = this.alike(baseOf(this.scales, this.membersOf(best, among)), []);
      found.push(...larger);
      const next = bestOf(larger);
      if (next === null || topOf(next) < topOf(best)) break;
      [best, among] = [next, larger];
    }
    return best.suspects.length > 2 ? [...found, ...this.about(best, among)] : found;
  }

  /** Two open coils part the winding in two, which neither does alone: neither stands out for the other to join. */
  parted(firsts: readonly Base[], firstOf: (suspect: number) => Base): WeighedSeveral[] {
    const { suspects, design } = this.scales.model;
    const open = suspects.blocks.find(({ kind }) => kind === 'openCoil')!;
    const taken = new Set(firsts.flatMap(({ members }) => members.map(({ suspect }) => suspect)));
    return Array.from({ length: design.bars }, (_, coil) => suspectAt(open, coil, 0)).flatMap((suspect) => {
      if (taken.has(suspect)) return [];
      const later = this.seconds.filter(
        ({ block, nearest }) => block.kind === 'openCoil' && nearest > suspect && !taken.has(nearest),
      );
      return this.beside(firstOf(suspect), 'open', later, []);
    });
  }

  /** Sets that have all but one in common with the best of those that have one beside its base. */
  private about(best: WeighedSeveral, among: readonly WeighedSeveral[]): WeighedSeveral[] {
    const members = this.membersOf(best, among);
    const bases = members.slice(0, -1).map((left) =>
      baseOf(
        this.scales,
        members.filter((member) => member !== left),
      ),
    );
    return bases.flatMap((base, n) => this.alike(base, [best.base, ...bases.slice(0, n)]));
  }

  private alike(base: Base, earlier: readonly Base[]): WeighedSeveral[] {
    const kinds = kindsOf(base);
    const alike = this.seconds.filter(({ block }) => kinds.some((kind) => isAlike(kind, block.kind)));
    return this.beside(base, 'alike', alike, earlier);
  }

  /** The faults of a set, the last with what its other severities weigh. */
  private membersOf({ base, second, ...own }: WeighedSeveral, among: readonly WeighedSeveral[]): Member[] {
    const weights = among.filter((one) => one.base === base && isSameSite(one.second, second)).map(topOf);
    const breadth = weights.reduce((sum, log) => sum + Math.exp(log - topOf(own)), 0);
    const oddsLog = Math.log(second.odds * breadth);
    const look = this.scales.looks.ofSecond(second);
    const last = { suspect: second.nearest, at: second, oddsLog, cutOff: this.cutOffOf(second), look };
    return [...base.members, last];
  }

  /** @param earlier bases whose sets are not to be thought of twice */
  private beside(
    base: Base,
    which: string,
    candidates: readonly Second[],
    earlier: readonly Base[],
  ): WeighedSeveral[] {
    const { meters, drops, strips, looks } = this.scales;
    const { seconds, scale } = this.besidesOf(base, which, candidates);
    scale.weigh(meters.readings, drops.readings);
    const felt = base.felt();
    const tops = withinReach(scale.loose, CASES, () => base.oddsLog);
    const look = base.members.reduce((sum, member) => sum + member.look, 0);
    const kinds = kindsOf(base);
    return seconds.flatMap((second, k): WeighedSeveral[] => {
      if (earlier.some((other) => isWithin(other, base, second))) return [];
      const { log, loose } = strips.ofPair(felt, second.nearest);
      const rarity = Math.log(rarityOf(this.scales.model.priors, [...kinds, second.block.kind]));
      const odds = base.oddsLog + Math.log(second.odds) + rarity;
      const strict = odds + log + overDrops(scale.dropLog, k);
      const near = tops[k] === 1;
      return [
        {
          base,
          second,
          suspects: [...base.members.map(({ suspect }) => suspect), second.nearest],
          clean: strict + overCases(scale.log, k, 0),
          dirty: strict + overCases(scale.log, k, 1),
          loose: near ? surfaced(odds + loose + overDrops(scale.dropLoose, k), scale.loose, k) : HOPELESS,
          look: look + looks.ofSecond(second),
          cutOff: [...base.members.map(({ cutOff }) => cutOff), this.cutOffOf(second)].filter(
            (bar) => bar >= 0,
          ),
          faulty: true,
          grounded: base.grounded,
        },
      ];
    });
  }

  private besidesOf(base: Base, which: string, seconds: readonly Second[]): Besides {
    const key = `${which} ${base.key}`;
    const known = this.known.get(key);
    if (known !== undefined) return known;
    if (this.known.size >= BASES_REMEMBERED) this.known.delete(this.known.keys().next().value as string);
    const fresh = new Besides(this.scales.model.dictionary, base.standing(), seconds);
    this.known.set(key, fresh);
    return fresh;
  }
}

/** Whether all of one base is found in another with one more beside it. */
function isWithin(one: Base, other: Base, second: SuspectPlace): boolean {
  return (
    one.members.length > 0 &&
    one.members.every(
      ({ at }) => isSameSite(at, second) || other.members.some((member) => isSameSite(member.at, at)),
    )
  );
}

/** The best of the winding alone. */
function bestOf(several: readonly WeighedSeveral[]): WeighedSeveral | null {
  const own = several.filter(({ grounded }) => !grounded);
  return own.reduce<WeighedSeveral | null>(
    (best, one) => (best === null || topOf(one) > topOf(best) ? one : best),
    null,
  );
}

function surfaced(log: number, logs: Float64Array, k: number): Surfaced {
  return { clean: log + overCases(logs, k, 0), dirty: log + overCases(logs, k, 1) };
}
