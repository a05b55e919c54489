import { potentials, type Resistor, resistanceBetween } from '../circuit/resistors.ts';

/**
 * A field frame as a network of resistors: field coils from the motor terminal to two field brushes, insulated from
 * the case. Steady resistances at 20 C, ohm: the lamp and the insulation tester see nothing else.
 */

/** What a probe can reach. */
export type FieldNode = 'field:terminal' | 'field:brush1' | 'field:brush2' | 'field:case';
export type FieldBrush = 1 | 2;

export interface FieldCoil {
  /** Nodes at its ends: a `FieldNode`, a brush end `end:1`, `end:2`, or any name of an inner joint. */
  readonly from: string;
  readonly to: string;
  readonly ohm: number;
}

export interface FieldFrameDesign {
  readonly id: string;
  readonly name: string;
  /** In the order in which faults count them. */
  readonly coils: readonly FieldCoil[];
  /** Plain strips that join coil ends or lead on to a brush. */
  readonly links: readonly Resistor[];
  /** Joint and pigtail from the coil end `end:n` to the brush, each, ohm. */
  readonly brushJointOhm: number;
  /** Sound insulation of one coil to the case, ohm. */
  readonly insulationOhm: number;
}

/** Faults of a field frame: each changes resistances or which branches there are. Coils count from 0. */
export type FieldFrameFault =
  | { readonly kind: 'openCoil'; readonly coil: number }
  | { readonly kind: 'brushJoint'; readonly brush: FieldBrush; readonly ohm: number | 'open' }
  /** `fraction` of the coil from its `from` end, 0..1, at which it touches the case. */
  | { readonly kind: 'groundedCoil'; readonly coil: number; readonly fraction: number; readonly ohm: number }
  /** Leakage to the case; a carbonised path remains above `breakdownV` (peak), never when null. */
  | {
      readonly kind: 'weakInsulation';
      readonly coil: number;
      readonly ohm: number;
      readonly breakdownV: number | null;
    }
  /** A share 0..1 of the coil's turns bridged by a contact of `ohm`: no lamp shows it. */
  | { readonly kind: 'shortedTurns'; readonly coil: number; readonly share: number; readonly ohm: number };

export type FieldFrameFaultKind = FieldFrameFault['kind'];

export interface FieldFrameHow {
  /** The two field brushes lie against one another: one good branch then hides the other. */
  readonly brushesTouching: boolean;
  /** Peak voltage of the test between winding and case, V; decides whether weak insulation breaks down. */
  readonly peakV: number;
}

/** Two brushes lying against one another, ohm; what is left of an insulation that has broken down, ohm. Estimates. */
const TOUCHING_OHM = 20e-3;
export const BROKEN_DOWN_OHM = 200;

/** Resistance between two places of the frame, ohm; null where nothing joins them. */
export function fieldFrameResistance(
  design: FieldFrameDesign,
  faults: readonly FieldFrameFault[],
  a: FieldNode,
  b: FieldNode,
  how: FieldFrameHow,
): number | null {
  return resistanceBetween(fieldFrameResistors(design, faults, how), a, b);
}

/**
 * Voltage across each coil, from its `from` end to its `to` end, with a steady current fed in at the motor terminal
 * and out at one brush, V; null for a coil that cannot be fed. Empty when the feed finds no way.
 */
export function fieldCoilDrops(
  design: FieldFrameDesign,
  faults: readonly FieldFrameFault[],
  brush: FieldBrush,
  currentA: number,
  how: FieldFrameHow,
): readonly (number | null)[] {
  const resistors = fieldFrameResistors(design, faults, how);
  const at = potentials(resistors, 'field:terminal', `field:brush${brush}`, currentA);
  if (at === null) return [];
  return design.coils.map(({ from, to }) => {
    const high = at.get(from);
    const low = at.get(to);
    return high === undefined || low === undefined ? null : high - low;
  });
}

/** The frame with its faults applied, as resistors. */
export function fieldFrameResistors(
  design: FieldFrameDesign,
  faults: readonly FieldFrameFault[],
  how: FieldFrameHow,
): readonly Resistor[] {
  const list = design.coils.flatMap((coil, i) => [
    ...coilResistors(coil, i, faults),
    ...insulation(design, coil, i, faults, how),
  ]);
  list.push(...design.links, ...brushJoints(design, faults));
  if (how.brushesTouching) list.push({ a: 'field:brush1', b: 'field:brush2', ohm: TOUCHING_OHM });
  return list;
}

/** A coil in one piece, or from tap to tap where it touches the case; an open coil is broken at its `to` end. */
function coilResistors(coil: FieldCoil, i: number, faults: readonly FieldFrameFault[]): Resistor[] {
  const ohm = coil.ohm * remainingShare(coil, i, faults);
  const open = faults.some((f) => f.kind === 'openCoil' && f.coil === i);
  const grounds = faults.filter((f) => f.kind === 'groundedCoil').filter((f) => f.coil === i);
  const list: Resistor[] = grounds.map((f, k) => ({ a: tapName(i, k), b: 'field:case', ohm: f.ohm }));
  const stops = grounds.map((f, k) => ({ at: f.fraction, node: tapName(i, k) }));
  stops.sort((p, q) => p.at - q.at);
  let here = { at: 0, node: coil.from };
  for (const stop of [...stops, { at: 1, node: open ? `loose:${i}` : coil.to }]) {
    list.push({ a: here.node, b: stop.node, ohm: Math.max(ohm * (stop.at - here.at), LEAST_OHM) });
    here = stop;
  }
  return list;
}
/** A piece of no length still needs a resistance. */
const LEAST_OHM = 1e-9;

function tapName(coil: number, ground: number): string {
  return `ground:${coil}.${ground}`;
}

/** What shorted turns leave of a coil's resistance, as a share. */
function remainingShare(coil: FieldCoil, i: number, faults: readonly FieldFrameFault[]): number {
  return faults.reduce((left, f) => {
    if (f.kind !== 'shortedTurns' || f.coil !== i) return left;
    const bridged = f.share * coil.ohm;
    return left - f.share + (bridged * f.ohm) / (bridged + f.ohm) / coil.ohm;
  }, 1);
}

/** Leakage stands at the coil's first end: it is some million times the coil's own resistance. */
function insulation(
  design: FieldFrameDesign,
  coil: FieldCoil,
  i: number,
  faults: readonly FieldFrameFault[],
  how: FieldFrameHow,
): Resistor[] {
  const sound: Resistor = { a: coil.from, b: 'field:case', ohm: design.insulationOhm };
  const weak = faults.flatMap((f) =>
    f.kind === 'weakInsulation' && f.coil === i
      ? [{ a: coil.from, b: 'field:case', ohm: leakageOhm(f, how.peakV) }]
      : [],
  );
  return [sound, ...weak];
}

/** Resistance of a weak insulation at a test voltage (peak), ohm. */
export function leakageOhm(
  weak: { readonly ohm: number; readonly breakdownV: number | null },
  peakV: number,
): number {
  const broken = weak.breakdownV !== null && peakV > weak.breakdownV;
  return broken ? Math.min(weak.ohm, BROKEN_DOWN_OHM) : weak.ohm;
}

function brushJoints(design: FieldFrameDesign, faults: readonly FieldFrameFault[]): Resistor[] {
  return ([1, 2] as const).flatMap((brush) => {
    const bad = faults.flatMap((f) => (f.kind === 'brushJoint' && f.brush === brush ? [f.ohm] : []));
    if (bad.includes('open')) return [];
    const extra = bad.reduce((sum: number, ohm) => sum + (ohm === 'open' ? 0 : ohm), 0);
    return [{ a: `end:${brush}`, b: `field:brush${brush}`, ohm: design.brushJointOhm + extra }];
  });
}
