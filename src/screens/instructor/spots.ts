import type { Fault, PartType } from './desk.ts';

/** Rings of the open part, from the inside out, in which a fault can live. */
export const RINGS = ['surface', 'bar', 'gap', 'riser', 'slot', 'coil', 'core'] as const;
export type Ring = (typeof RINGS)[number];

/** One place a fault can live; `n` counts from 0 round its ring. */
export interface Spot {
  readonly ring: Ring;
  readonly n: number;
}

export function spotsIn(ring: Ring, { view }: PartType): number {
  if (ring === 'surface' || ring === 'core') return 1;
  return ring === 'slot' ? view.slots : view.bars;
}

export const sameSpot = (a: Spot, b: Spot) => a.ring === b.ring && a.n === b.n;

export type FaultKind = Fault['kind'];
const KINDS_AT: Readonly<Record<Ring, readonly FaultKind[]>> = {
  surface: ['dirtyCommutator'],
  bar: ['groundedBar'],
  gap: ['bridgedBars'],
  riser: ['riserJoint'],
  coil: ['openCoil', 'turnShort', 'groundedCoil', 'reversedCoil'],
  slot: ['coilShort'],
  core: ['weakInsulation'],
};

/** Kinds of fault that fit a place on this part: nothing lies above one another in the slot of a dummy coil. */
export function kindsAt(spot: Spot, part: PartType): readonly FaultKind[] {
  if (spot.ring === 'slot' && touchingIn(spot.n, part).length === 0) return [];
  return KINDS_AT[spot.ring];
}

/** Pairs of coils that lie above one another in a slot. */
export function touchingIn(slot: number, { coils }: PartType): { topCoil: number; bottomCoil: number }[] {
  const lying = (side: 'topSlot' | 'bottomSlot') =>
    coils.flatMap((coil, n) => (coil[side] === slot ? [n] : []));
  return lying('topSlot').flatMap((topCoil) =>
    lying('bottomSlot').map((bottomCoil) => ({ topCoil, bottomCoil })),
  );
}

export function spotOf(fault: Fault, { coils }: PartType): Spot {
  switch (fault.kind) {
    case 'dirtyCommutator':
      return { ring: 'surface', n: 0 };
    case 'weakInsulation':
      return { ring: 'core', n: 0 };
    case 'groundedBar':
      return { ring: 'bar', n: fault.bar };
    case 'bridgedBars':
      return { ring: 'gap', n: fault.bar };
    case 'riserJoint':
      return { ring: 'riser', n: fault.bar };
    case 'coilShort':
      return { ring: 'slot', n: coils[fault.topCoil]?.topSlot ?? 0 };
    default:
      return { ring: 'coil', n: fault.coil };
  }
}

/** A fault of a kind at a place, plain to be seen: the severities can be changed from there. */
export function newFault(kind: FaultKind, { n }: Spot, part: PartType): Fault {
  const heavy = part.turns === 1;
  switch (kind) {
    case 'dirtyCommutator':
      return { kind };
    case 'weakInsulation':
      return { kind, ohm: 200e3, breakdownV: 100 };
    case 'groundedBar':
      return { kind, bar: n, ohm: 2 };
    case 'groundedCoil':
      return { kind, coil: n, fraction: 0.5, ohm: 2 };
    case 'bridgedBars':
      return { kind, bar: n, ohm: heavy ? 3e-4 : 2e-3, by: 'copper' };
    case 'riserJoint':
      return { kind, bar: n, form: 'bar', ohm: 'open' };
    case 'turnShort':
      return { kind, coil: n, turns: heavy ? 1 : Math.min(5, part.turns), ohm: heavy ? 3e-4 : 1e-3 };
    case 'coilShort':
      return { kind, ...touchingIn(n, part)[0]!, ohm: 1e-3 };
    case 'openCoil':
    case 'reversedCoil':
      return { kind, coil: n };
  }
}

/** Range of a severity that can be chosen here, ohm: from a hard contact to one that hardly shows. */
export const OHM_RANGE: Readonly<Partial<Record<FaultKind, readonly [least: number, most: number]>>> = {
  groundedBar: [0.1, 5000],
  groundedCoil: [0.1, 5000],
  bridgedBars: [1e-4, 10],
  riserJoint: [1e-3, 10],
  turnShort: [1e-4, 0.1],
  coilShort: [1e-4, 0.1],
  weakInsulation: [1e4, 5e6],
};
