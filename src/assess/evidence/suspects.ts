import type { ArmatureDesign } from '../../engine/parts/armature.ts';
import type { ArmatureFault } from '../../engine/parts/armatureFault.ts';
import { coilPlaces } from '../../engine/parts/winding.ts';
import {
  COPPER_UP_TO_OHM,
  type Priors,
  SEVERITIES,
  type Severity,
  WINDING_KINDS,
  type WindingKind,
} from './priors.ts';

/**
 * Every single fault of winding and commutator the part could have: kind, place and severity on a grid. Suspect 0 is
 * the winding without fault. The list follows from the part type alone.
 */
export interface SuspectBlock {
  readonly kind: WindingKind;
  /** Turns shorted for `turnShort`; which of the coils below for `coilShort`; else 0. */
  readonly variant: number;
  readonly severities: readonly Severity[];
  /** Number of the first suspect of the block. */
  readonly first: number;
}

export interface Suspects {
  readonly design: ArmatureDesign;
  readonly blocks: readonly SuspectBlock[];
  readonly count: number;
  /** Probability of each suspect among all, before anything is read. Length count; suspect 0 has weight 1. */
  readonly odds: Float64Array;
}

/** Number of a suspect: block by block, place by place, severity by severity. */
export function suspectAt(block: SuspectBlock, place: number, severity: number): number {
  return block.first + place * block.severities.length + severity;
}

/** Where a suspect stands in the list; null for suspect 0. */
export interface SuspectPlace {
  readonly block: SuspectBlock;
  /** Bar or coil. */
  readonly place: number;
  readonly severity: number;
}

export function locate({ blocks, design }: Suspects, suspect: number): SuspectPlace | null {
  if (suspect === 0) return null;
  const block = blocks.findLast(({ first }) => first <= suspect)!;
  const within = suspect - block.first;
  const place = Math.floor(within / block.severities.length);
  if (place >= design.bars) return null;
  return { block, place, severity: within % block.severities.length };
}

/** @param priors odds by kind; shared evenly over places, by its share over severities */
export function listSuspects(design: ArmatureDesign, priors: Priors): Suspects {
  const blocks: SuspectBlock[] = [];
  const weights: number[] = [1];
  for (const kind of WINDING_KINDS) {
    const variants = variantsOf(kind, design);
    for (const variant of variants) {
      const severities = SEVERITIES[kind];
      blocks.push({ kind, variant, severities, first: weights.length });
      const each = priors.winding[kind] / variants.length / design.bars;
      for (let place = 0; place < design.bars; place++) {
        const possible = kind !== 'coilShort' || coilsBelow(design, place).length > 0;
        for (const { share } of severities) weights.push(possible ? each * share : 0);
      }
    }
  }
  return { design, blocks, count: weights.length, odds: Float64Array.from(weights) };
}

function variantsOf(kind: WindingKind, design: ArmatureDesign): number[] {
  if (kind === 'turnShort') return Array.from({ length: design.turns }, (_, i) => i + 1);
  if (kind === 'coilShort') return Array.from({ length: design.coilsPerSlot }, (_, i) => i);
  return [0];
}

/** Coils whose lower side lies under the upper side of another; none where a dummy coil fills the slot. */
function coilsBelow(design: ArmatureDesign, topCoil: number): number[] {
  const places = coilPlaces(design);
  const slot = places[topCoil]!.topSlot;
  return places.flatMap((place, coil) => (place.bottomSlot === slot ? [coil] : []));
}

/**
 * The nth of the coils below, in turning order, so that the nth of the next slot is the same place a slot further on.
 * Where none lies below, one beside stands for it: a suspect of no odds.
 */
export function coilBelow(design: ArmatureDesign, topCoil: number, nth: number): number {
  const below = coilsBelow(design, topCoil);
  if (below.length === 0) return coilBelow(design, (topCoil + 1) % design.bars, nth);
  const slot = coilPlaces(design)[topCoil]!.topSlot;
  const from =
    (((slot - design.spanSlots + design.slots) % design.slots) * design.coilsPerSlot) % design.bars;
  const order = (coil: number) => (coil - from + 2 * design.bars) % design.bars;
  const sorted = below.sort((a, b) => order(a) - order(b));
  return sorted[nth % sorted.length]!;
}

/** The fault a suspect stands for, as data the engine takes. */
export function faultOf(
  design: ArmatureDesign,
  { kind, variant, severities }: Pick<SuspectBlock, 'kind' | 'variant' | 'severities'>,
  place: number,
  severity: number,
): ArmatureFault {
  const { ohm } = severities[severity]!;
  const value = ohm === 'open' ? 0 : ohm;
  switch (kind) {
    case 'openCoil':
      return { kind: 'openCoil', coil: place };
    case 'jointBar':
      return { kind: 'riserJoint', bar: place, form: 'bar', ohm };
    case 'jointOneEnd':
      return { kind: 'riserJoint', bar: place, form: 'oneEnd', ohm };
    case 'jointBothEnds':
      return { kind: 'riserJoint', bar: place, form: 'bothEnds', ohm };
    case 'bridge': {
      const by = value <= COPPER_UP_TO_OHM ? 'copper' : 'carbon';
      return { kind: 'bridgedBars', bar: place, ohm: value, by };
    }
    case 'turnShort':
      return { kind: 'turnShort', coil: place, turns: variant, ohm: value };
    case 'coilShort':
      return {
        kind: 'coilShort',
        topCoil: place,
        bottomCoil: coilBelow(design, place, variant),
        ohm: value,
      };
    case 'reversed':
      return { kind: 'reversedCoil', coil: place };
  }
}

/** Which of some severities comes nearest on the logarithm; open only to open where open is listed. */
export function nearestSeverity(severities: readonly Severity[], ohm: number | 'open'): number {
  const logOf = (one: number | 'open') => (one === 'open' ? Infinity : Math.log(one));
  const away = severities.map((one) => {
    if (one.ohm === ohm) return 0;
    const apart = Math.abs(logOf(one.ohm) - logOf(ohm));
    return Number.isFinite(apart) ? apart : 1e3 - (one.ohm === 'open' ? 0 : Math.log(one.ohm));
  });
  return away.indexOf(Math.min(...away));
}

/** The suspect that comes nearest to a fault of winding or commutator; null for any other fault. */
export function nearestSuspect(suspects: Suspects, fault: ArmatureFault): number | null {
  const site = siteOf(suspects.design, fault);
  if (site === null) return null;
  const block = suspects.blocks.find(({ kind, variant }) => kind === site.kind && variant === site.variant);
  return block === undefined
    ? null
    : suspectAt(block, site.place, nearestSeverity(block.severities, site.ohm));
}

interface FaultSite {
  readonly kind: WindingKind;
  readonly variant: number;
  readonly place: number;
  readonly ohm: number | 'open';
}

const JOINTS = { bar: 'jointBar', oneEnd: 'jointOneEnd', bothEnds: 'jointBothEnds' } as const;

function siteOf(design: ArmatureDesign, fault: ArmatureFault): FaultSite | null {
  const variant = 0;
  switch (fault.kind) {
    case 'openCoil':
      return { kind: 'openCoil', variant, place: fault.coil, ohm: 'open' };
    case 'riserJoint':
      return { kind: JOINTS[fault.form], variant, place: fault.bar, ohm: fault.ohm };
    case 'bridgedBars':
      return { kind: 'bridge', variant, place: fault.bar, ohm: fault.ohm };
    case 'turnShort':
      return { kind: 'turnShort', variant: fault.turns, place: fault.coil, ohm: fault.ohm };
    case 'coilShort': {
      const below = Array.from({ length: design.coilsPerSlot }, (_, nth) =>
        coilBelow(design, fault.topCoil, nth),
      );
      return {
        kind: 'coilShort',
        variant: Math.max(0, below.indexOf(fault.bottomCoil)),
        place: fault.topCoil,
        ohm: fault.ohm,
      };
    }
    case 'reversedCoil':
      return { kind: 'reversed', variant, place: fault.coil, ohm: 'open' };
    default:
      return null;
  }
}
