import type { ArmatureDesign } from '../../engine/parts/armature.ts';

/**
 * How often each fault comes to the bench before anything has been read, by the kind of machine the part is from.
 * The figures are ours: common practice of the trade names which faults are common, no source counts them. Nothing
 * here may depend on what is hidden in the job at hand.
 */

/** Kinds of fault of winding and commutator that ammeter and strip can tell of. */
export const WINDING_KINDS = [
  'openCoil',
  'jointBar',
  'jointOneEnd',
  'jointBothEnds',
  'bridge',
  'turnShort',
  'coilShort',
  'reversed',
] as const;
export type WindingKind = (typeof WINDING_KINDS)[number];

/** Kinds that one cause brings about: heat that throws solder, metal dust or a burnt winding, a wrong hand. */
const SORTS: Readonly<Record<WindingKind, 'joint' | 'short' | 'open' | 'reversed'>> = {
  openCoil: 'open',
  jointBar: 'joint',
  jointOneEnd: 'joint',
  jointBothEnds: 'joint',
  bridge: 'short',
  turnShort: 'short',
  coilShort: 'short',
  reversed: 'reversed',
};

export function isAlike(one: WindingKind, other: WindingKind): boolean {
  return SORTS[one] === SORTS[other];
}

/** Kinds of fault of the insulation to the core. */
export const INSULATION_KINDS = ['groundedBar', 'groundedCoil', 'weak', 'weakBreaksDown'] as const;
export type InsulationKind = (typeof INSULATION_KINDS)[number];

export type JobFamily = 'starter' | 'dynamo';

export interface Priors {
  /** Odds of one fault of this kind somewhere on the part, against a winding without fault (1). */
  readonly winding: Readonly<Record<WindingKind, number>>;
  /** Odds against insulation without fault (1). */
  readonly insulation: Readonly<Record<InsulationKind, number>>;
  /** Odds of a dirty commutator against a clean one (1). */
  readonly dirty: number;
  /** Odds of a winding that is none of the things listed, against one without fault. */
  readonly noneOfThese: number;
  /**
   * A part with several things wrong (winding, insulation, surface, a second winding fault of another sort) is this
   * much rarer for every one beyond the first than chance alone would have it: one fault usually explains the complaint.
   */
  readonly another: number;
  /**
   * The same for every further fault of a sort that is there already: an overheated commutator throws the solder of
   * several joints, dust lies between more bars than two, a flooded winding is grounded in more places than one.
   */
  readonly alike: number;
}

/** How much rarer winding faults of some kinds are together than chance alone would have it. */
export function rarityOf({ another, alike }: Priors, kinds: readonly WindingKind[]): number {
  const causes = kinds.filter((kind, n) => !kinds.slice(0, n).some((other) => isAlike(kind, other))).length;
  return kinds.length === 0 ? 1 : another ** (causes - 1) * alike ** (kinds.length - causes);
}

export const PRIORS: Readonly<Record<JobFamily, Priors>> = {
  /** Heavy strip in soldered risers: joints and bridges first. */
  starter: {
    winding: {
      openCoil: 0.18,
      jointBar: 0.7,
      jointOneEnd: 0.25,
      jointBothEnds: 0.08,
      bridge: 0.6,
      turnShort: 0.12,
      coilShort: 0.15,
      reversed: 0.05,
    },
    insulation: { groundedBar: 0.12, groundedCoil: 0.2, weak: 0.1, weakBreaksDown: 0.04 },
    dirty: 0.25,
    noneOfThese: 0.08,
    another: 0.25,
    alike: 0.5,
  },
  /** Many turns of fine wire: breaks, turns touching, grounds. */
  dynamo: {
    winding: {
      openCoil: 0.45,
      jointBar: 0.35,
      jointOneEnd: 0.25,
      jointBothEnds: 0.06,
      bridge: 0.4,
      turnShort: 0.35,
      coilShort: 0.2,
      reversed: 0.05,
    },
    insulation: { groundedBar: 0.1, groundedCoil: 0.3, weak: 0.12, weakBreaksDown: 0.05 },
    dirty: 0.3,
    noneOfThese: 0.08,
    another: 0.25,
    alike: 0.5,
  },
};

/** A machine whose coils have a turn or two of strip starts an engine; one with many turns of wire charges a battery. */
export function familyOf(design: ArmatureDesign): JobFamily {
  return design.turns <= 2 ? 'starter' : 'dynamo';
}

/** One severity of a fault: its resistance and how likely it is among those of its kind. */
export interface Severity {
  readonly ohm: number | 'open';
  readonly share: number;
}

/** Evenly spread on the logarithm from `least` to `most`, neighbours a factor of about `factor` apart. */
function evenly(least: number, most: number, factor: number, share: number): Severity[] {
  const steps = Math.max(1, Math.round(Math.log(most / least) / Math.log(factor)));
  return Array.from({ length: steps + 1 }, (_, i) => ({
    ohm: least * (most / least) ** (i / steps),
    share: share / (steps + 1),
  }));
}

const OPEN: Severity = { ohm: 'open', share: 1 };
/** A joint that has let go altogether is a good deal of all bad joints. */
const joint = (factor: number): Severity[] => [
  ...evenly(1e-3, 0.5, factor, 0.7),
  { ohm: 'open', share: 0.3 },
];

/**
 * How hard a fault may be, by kind: resistances of joints 1 to 500 mohm and open, of bridges 0.1 mohm of copper to
 * 10 ohm of carbon. Between two neighbours on a list lies one step of what readings can tell apart.
 */
export const SEVERITIES: Readonly<Record<WindingKind, readonly Severity[]>> = {
  openCoil: [OPEN],
  jointBar: joint(1.35),
  jointOneEnd: joint(1.35),
  jointBothEnds: joint(3),
  bridge: evenly(1e-4, 10, 1.6, 1),
  turnShort: evenly(2e-4, 0.1, 1.8, 1),
  coilShort: evenly(2e-4, 0.1, 1.8, 1),
  reversed: [OPEN],
};

/** Below this a bridge is thought of as copper, above it as carbon, ohm. Only the lens can tell. */
export const COPPER_UP_TO_OHM = 0.02;

/** Leakage of weak insulation, ohm: anything from least to most, evenly likely on the logarithm. */
export const WEAK_OHM = { least: 1e4, most: 5e6 } as const;

/** Peak voltages at which insulation that breaks down may do so, V, evenly likely. */
export const BREAKDOWN_V: readonly number[] = [100, 220, 300, 430];
