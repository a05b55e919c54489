import type { AlterableWinding, Standing } from './altered.ts';
import { withinReach } from './beyond.ts';
import type { CaseWeight, PairCase } from './cases.ts';
import { type DropScale, overDrops } from './dropScale.ts';
import type { LookScale } from './looks.ts';
import { type MeterScale, overCases } from './meters.ts';
import type { EvidenceModel } from './model.ts';
import { CASES } from './needles.ts';
import { Pairing, type Second, standingOf } from './pairs.ts';
import type { Against, StripScale } from './strips.ts';
import { type SuspectPlace, suspectAt } from './suspects.ts';

/** Pairings remembered, so that a suspect that falls back and rises again costs nothing. */
const PAIRINGS_REMEMBERED = 80;

/** Logarithms of weights with a clean and with a dirty commutator. */
export interface Surfaced {
  readonly clean: number;
  readonly dirty: number;
}

export const HOPELESS: Surfaced = { clean: -Infinity, dirty: -Infinity };

/** Two faults as weighed, strictly and loosely. */
export interface WeighedPair extends PairCase, CaseWeight {
  readonly loose: Surfaced;
}

/** A fault that may have a second one beside it. */
export interface First {
  /** Names its pairings. */
  readonly key: string;
  readonly suspect: number;
  readonly at: SuspectPlace | null;
  /** Logarithm of its odds with its other severities. */
  readonly oddsLog: number;
  readonly cutOff: number;
  readonly look: number;
  readonly grounded: boolean;
  standing(): AlterableWinding & Standing;
  felt(): Against;
}

/** Weighs first faults with a second one anywhere beside them. */
export class PairFinder {
  private readonly model: EvidenceModel;
  private readonly seconds: readonly Second[];
  private readonly meters: MeterScale;
  private readonly drops: DropScale;
  private readonly strips: StripScale;
  private readonly looks: LookScale;
  private readonly cutOffOf: (at: SuspectPlace) => number;
  private readonly pairings = new Map<string, Pairing>();

  constructor(
    model: EvidenceModel,
    seconds: readonly Second[],
    scales: {
      readonly meters: MeterScale;
      readonly drops: DropScale;
      readonly strips: StripScale;
      readonly looks: LookScale;
    },
    cutOffOf: (at: SuspectPlace) => number,
  ) {
    this.model = model;
    this.seconds = seconds;
    this.meters = scales.meters;
    this.drops = scales.drops;
    this.strips = scales.strips;
    this.looks = scales.looks;
    this.cutOffOf = cutOffOf;
  }

  /** Every first with a second of any kind; a pair of two firsts is thought of once. */
  pairs(firsts: readonly First[]): WeighedPair[] {
    return firsts.flatMap((first, rank) => {
      const earlier = firsts.slice(0, rank).flatMap(({ at }) => (at === null ? [] : [at]));
      const fresh = (second: Second) =>
        !earlier.some(({ block, place }) => block.kind === second.block.kind && place === second.place);
      return this.pairsOf(first, this.pairingOf(first, 'any', this.seconds), fresh);
    });
  }

  /** Two open coils part the winding in two, which neither does alone: neither stands out for the other to join. */
  parted(firsts: readonly First[], firstOf: (suspect: number) => First): WeighedPair[] {
    const { suspects, design } = this.model;
    const open = suspects.blocks.find(({ kind }) => kind === 'openCoil')!;
    const taken = new Set(firsts.map(({ suspect }) => suspect));
    return Array.from({ length: design.bars }, (_, coil) => suspectAt(open, coil, 0)).flatMap((suspect) => {
      if (taken.has(suspect)) return [];
      const later = this.seconds.filter(
        ({ block, nearest }) => block.kind === 'openCoil' && nearest > suspect && !taken.has(nearest),
      );
      const first = firstOf(suspect);
      return this.pairsOf(first, this.pairingOf(first, 'open', later), () => true);
    });
  }

  private pairsOf(first: First, { seconds, scale }: Pairing, fresh: (second: Second) => boolean) {
    scale.weigh(this.meters.readings, this.drops.readings);
    const felt = first.felt();
    const tops = withinReach(scale.loose, CASES, () => first.oddsLog);
    return seconds.flatMap((second, k): WeighedPair[] => {
      if (!fresh(second)) return [];
      const { log, loose } = this.strips.ofPair(felt, second.nearest);
      const odds = first.oddsLog + Math.log(second.odds);
      const strict = odds + log + overDrops(scale.dropLog, k);
      const near = tops[k] === 1;
      return [
        {
          suspect: first.suspect,
          second,
          clean: strict + overCases(scale.log, k, 0),
          dirty: strict + overCases(scale.log, k, 1),
          loose: near ? surfaced(odds + loose + overDrops(scale.dropLoose, k), scale.loose, k) : HOPELESS,
          look: first.look + this.looks.ofSecond(second),
          cutOff: [first.cutOff, this.cutOffOf(second)],
          faults: 2,
          grounded: first.grounded,
        },
      ];
    });
  }

  private pairingOf(first: First, which: string, seconds: readonly Second[]): Pairing {
    const key = `${which} ${first.key}`;
    const known = this.pairings.get(key);
    if (known !== undefined) return known;
    if (this.pairings.size >= PAIRINGS_REMEMBERED)
      this.pairings.delete(this.pairings.keys().next().value as string);
    const fresh = new Pairing(this.model.dictionary, first.standing(), seconds);
    this.pairings.set(key, fresh);
    return fresh;
  }
}

function surfaced(log: number, logs: Float64Array, k: number): Surfaced {
  return { clean: log + overCases(logs, k, 0), dirty: log + overCases(logs, k, 1) };
}

/** A single suspect as a first. */
export function singleFirst(
  { model, strips, looks }: { model: EvidenceModel; strips: StripScale; looks: LookScale },
  suspect: number,
  at: SuspectPlace,
  oddsLog: number,
  cutOff: number,
): First {
  return {
    key: String(suspect),
    suspect,
    at,
    oddsLog,
    cutOff,
    look: looks.ofSuspect(suspect),
    grounded: false,
    standing: () => standingOf(model.dictionary, suspect),
    felt: () => strips.ofSuspect(suspect),
  };
}
