import type { PartKind } from '../bench/action.ts';
import { barOf, type Place } from '../bench/places.ts';
import type { BenchState } from '../bench/state.ts';
import type { Tips } from '../bench/tips.ts';
import { type Resistor, resistanceBetween } from '../engine/circuit/resistors.ts';
import { armatureResistors } from '../engine/instruments/armatureDc.ts';
import type { Impedance } from '../engine/instruments/lamp.ts';
import { ROOM_C } from '../engine/instruments/thermal.ts';
import { brushPlateResistors, type PlateHolder } from '../engine/parts/brushPlate.ts';
import { fieldFrameResistors } from '../engine/parts/fieldFrame.ts';
import type { Condition } from './condition.ts';
import type { Metal } from './contacts.ts';
import type { PartOnBench } from './part.ts';

/** What lies between two pieces of metal: the parts as networks, with what hands do to them. */

/** Parts as they lie at one moment. */
export interface Lying {
  readonly part: PartOnBench;
  readonly condition: Condition;
  readonly state: BenchState;
  /** Rise of each coil of the armature above the room, K. */
  readonly coilRiseK: readonly number[];
}

/** The same metal goes by one name: the core is pressed on to the shaft, a riser belongs to its bar. */
export function nodeOf(place: Place): string {
  const bar = barOf(place);
  if (bar !== null) return `${bar}`;
  return place === 'shaft' ? 'core' : place;
}

/** A part as resistors for a steady voltage. @param peakV voltage of the test, V; weak insulation may give way to it */
export function resistorsOf(
  { part, condition, state, coilRiseK }: Lying,
  kind: PartKind,
  peakV: number,
): readonly Resistor[] {
  switch (kind) {
    case 'armature':
      return armatureResistors(part.design, condition.armature, { peakV, tempC: ROOM_C + mean(coilRiseK) });
    case 'fieldFrame':
      return fieldFrameResistors(part.frame, condition.fieldFrame, {
        brushesTouching: !state.brushesApart,
        peakV,
      });
    case 'brushPlate':
      return brushPlateResistors(part.plate, condition.brushPlate, {
        pressed: pressedHolder(state.leads),
        peakV,
      });
  }
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** What a lamp at mains voltage finds between two pieces of metal, or null where nothing joins them. */
export function acPath(lying: Lying, a: Metal, b: Metal): Impedance | null {
  const { part, condition } = lying;
  const { volt, hz } = part.mains;
  const peakV = Math.SQRT2 * volt;
  if (isArmatureMetal(a) && isArmatureMetal(b)) return part.solver.path(condition.armature, a, b, hz, peakV);
  const kind = matPartOf(a);
  if (kind === null || kind !== matPartOf(b)) return null;
  const ohm = resistanceBetween(resistorsOf(lying, kind, peakV), `${a}`, `${b}`);
  return ohm === null ? null : { re: ohm, im: 0 };
}

function isArmatureMetal(metal: Metal): metal is number | 'core' {
  return typeof metal === 'number' || metal === 'core';
}

function matPartOf(metal: Metal): 'fieldFrame' | 'brushPlate' | null {
  if (typeof metal === 'number') return null;
  if (metal.startsWith('field:')) return 'fieldFrame';
  return metal.startsWith('plate:') ? 'brushPlate' : null;
}

/** The holder someone leans on with a probe, or null. */
function pressedHolder(leads: Tips): PlateHolder | null {
  const pressed = Object.values(leads).find(
    ({ leaning, touches }) => leaning && touches?.startsWith('plate:'),
  );
  const holder = pressed?.touches ?? null;
  return holder === null || holder === 'plate:metal' ? null : (holder as PlateHolder);
}
