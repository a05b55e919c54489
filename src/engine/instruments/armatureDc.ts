import { type Resistor, resistanceBetween } from '../circuit/resistors.ts';
import { windingTopology } from '../circuit/topology.ts';
import { copperRise } from '../math/constants.ts';
import type { ArmatureDesign } from '../parts/armature.ts';
import type { ArmatureFault } from '../parts/armatureFault.ts';
import { leakageOhm } from '../parts/fieldFrame.ts';
import { ROOM_C } from './thermal.ts';

/** An armature out of the cradle, to a steady current: resistors alone. */

/** Sound insulation of the whole winding and commutator to the core at 20 C, ohm. Invented figure. */
export const SOUND_INSULATION_OHM = 200e6;
const CORE = 'core';

/** A bar by its number, or the core (and with it the shaft). */
export type ArmatureNode = number | 'core';

export interface ArmatureState {
  /** Peak voltage of the test between winding and core, V; decides whether weak insulation breaks down. */
  readonly peakV: number;
  /** Temperature of the armature, degrees C. */
  readonly tempC: number;
}
export const COLD_AND_DEAD: ArmatureState = { peakV: 0, tempC: ROOM_C };

/** Resistance between two bars or a bar and the core, ohm; null where nothing joins them. */
export function armatureResistance(
  a: ArmatureDesign,
  faults: readonly ArmatureFault[],
  from: ArmatureNode,
  to: ArmatureNode,
  state: ArmatureState = COLD_AND_DEAD,
): number | null {
  return resistanceBetween(armatureResistors(a, faults, state), `${from}`, `${to}`);
}

/** The winding with its faults as resistors between the bars `0`, `1`, ..., `core` and inner nodes. */
export function armatureResistors(
  a: ArmatureDesign,
  faults: readonly ArmatureFault[],
  state: ArmatureState = COLD_AND_DEAD,
): readonly Resistor[] {
  const { core, segments } = windingTopology(
    a,
    faults.map((f) => atVoltage(f, state.peakV)),
  );
  const name = (node: number) => (node === core ? CORE : `${node}`);
  const warm = copperRise(state.tempC);
  const winding = segments.map((s) => ({
    a: name(s.from),
    b: name(s.to),
    // Copper warms; bridges and grounds do not follow it.
    ohm: Math.max(s.coil >= 0 ? s.ohm * warm : s.ohm, LEAST_OHM),
  }));
  const share = SOUND_INSULATION_OHM * a.bars * insulationRise(state.tempC);
  const sound = Array.from({ length: a.bars }, (_, bar) => ({ a: `${bar}`, b: CORE, ohm: share }));
  return [...winding, ...sound];
}
/** A piece of no length still needs a resistance. */
const LEAST_OHM = 1e-9;

function atVoltage(fault: ArmatureFault, peakV: number): ArmatureFault {
  return fault.kind === 'weakInsulation' ? { ...fault, ohm: leakageOhm(fault, peakV) } : fault;
}

/**
 * Insulation resistance at a temperature over that at 20 C: halves for every 10 K.
 * @source references A18: quick correction for thermoplastic insulation, stored article on IEEE 43-2013
 */
export function insulationRise(tempC: number): number {
  return 0.5 ** ((tempC - 20) / 10);
}
