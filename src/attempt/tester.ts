import type { PartKind } from '../bench/action.ts';
import type { TesterView } from '../bench/observation.ts';
import type { Place } from '../bench/places.ts';
import { acrossPart, type BenchState } from '../bench/state.ts';
import { resistanceBetween } from '../engine/circuit/resistors.ts';
import {
  displayedOhm,
  leftVolt,
  type Specimen,
  seeMegohms,
  type TestVolt,
  terminalVolt,
  testerAtRest,
  WINDING_CAPACITANCE,
} from '../engine/instruments/insulationTester.ts';
import { type Lying, nodeOf, resistorsOf } from './paths.ts';

/** The insulation tester's circuit at one moment. */
export interface TesterCircuit {
  /** What hangs between its leads. */
  readonly specimen: Specimen;
  /** Since when the button has been down on this specimen, simulated ms; null: it is up. */
  readonly sinceMs: number | null;
  /** Voltage left on a part and since when, or null. */
  readonly left: { readonly volt: number; readonly sinceMs: number } | null;
}

/** The leads in the air: nothing but their own few picofarads. */
const IN_THE_AIR: Specimen = { ohm: null, farad: 20e-12 };
export const TESTER_IDLE: TesterCircuit = { specimen: IN_THE_AIR, sinceMs: null, left: null };

/** Voltage between the leads from which the warning light is on, V: the usual limit of a harmless direct voltage is higher. */
const WARNS_ABOVE_V = 50;

/** The circuit after bench or hands have changed. */
export function testerAfter(before: TesterCircuit, lying: Lying, atMs: number): TesterCircuit {
  const { state } = lying;
  if (state.tester.at === 'absent') return TESTER_IDLE;
  const specimen = specimenOf(lying);
  if (!state.tester.pressed) {
    const left = before.sinceMs === null ? before.left : chargeLeft(before.specimen, state.tester.volt, atMs);
    return { specimen, sinceMs: null, left: state.memory.charged === null ? null : left };
  }
  const same = before.sinceMs !== null && sameSpecimen(specimen, before.specimen);
  return { specimen, sinceMs: same ? before.sinceMs : atMs, left: null };
}

/** An armature that cools under the clips is still the same specimen: its resistance creeps, and nothing charges anew. */
function sameSpecimen(a: Specimen, b: Specimen): boolean {
  if (a.farad !== b.farad) return false;
  if (a.ohm === null || b.ohm === null || a.ohm === 0 || b.ohm === 0) return a.ohm === b.ohm;
  return Math.abs(a.ohm / b.ohm - 1) < CREEP;
}
const CREEP = 0.01;

/** Charged within milliseconds of the button going down, so what is left is what stood between the terminals. */
function chargeLeft({ ohm, farad }: Specimen, volt: TestVolt, atMs: number): TesterCircuit['left'] {
  return farad < WINDING_CAPACITANCE ? null : { volt: terminalVolt(volt, ohm), sinceMs: atMs };
}

function specimenOf(lying: Lying): Specimen {
  const { leads } = lying.state;
  if (leads['tester.1'].touches === 'tip:tester.2' || leads['tester.2'].touches === 'tip:tester.1') {
    return { ohm: 0, farad: IN_THE_AIR.farad };
  }
  const part = acrossPart(leads, 'tester');
  if (part === null) return IN_THE_AIR;
  const ohm = insulationOhm(lying, part, leads['tester.1'].touches!, leads['tester.2'].touches!);
  return { ohm, farad: WINDING_CAPACITANCE };
}

/** Leakage at the voltage that stands on it: weak insulation holds until that is above its limit. */
function insulationOhm(lying: Lying, part: PartKind, one: Place, other: Place): number | null {
  const at = (peakV: number) =>
    resistanceBetween(resistorsOf(lying, part, peakV), nodeOf(one), nodeOf(other));
  const holds = at(0);
  return at(terminalVolt(lying.state.tester.volt, holds));
}

/** What the display shows, or null while the button is up. */
export function testerDisplay({ specimen, sinceMs }: TesterCircuit, volt: TestVolt, atMs: number) {
  return sinceMs === null ? null : seeMegohms(displayedOhm(specimen, volt, atMs - sinceMs));
}

/** What eyes get from the tester. */
export function seeTester(
  circuit: TesterCircuit,
  { tester, leads, memory }: BenchState,
  atMs: number,
): TesterView {
  const shown = testerDisplay(circuit, tester.volt, atMs);
  return {
    ...tester,
    megohms: shown?.megohms ?? null,
    over: shown?.over ?? false,
    discharged: memory.charged === null,
    charged: betweenLeads(circuit, tester.volt, acrossPart(leads, 'tester') !== null, atMs) > WARNS_ABOVE_V,
  };
}

function betweenLeads(
  { specimen, sinceMs, left }: TesterCircuit,
  volt: TestVolt,
  onPart: boolean,
  atMs: number,
): number {
  if (sinceMs !== null) return terminalVolt(volt, specimen.ohm);
  return left !== null && onPart ? leftVolt(specimen, left.volt, atMs - left.sinceMs) : 0;
}

/** Whether an eye could find something new at the tester soon. */
export function testerStirs(
  { specimen, sinceMs, left }: TesterCircuit,
  { tester }: BenchState,
  atMs: number,
): boolean {
  if (sinceMs !== null) return !testerAtRest(specimen, tester.volt, atMs - sinceMs);
  return left !== null && leftVolt(specimen, left.volt, atMs - left.sinceMs) > WARNS_ABOVE_V;
}
