import type { BenchState } from '../bench/state.ts';
import { emptyCradle } from '../engine/armatureBench.ts';
import type { Drive, Excitation, MeterTap, OperatingPoint } from '../engine/drive.ts';
import { BENCH_GROWLER } from '../engine/growler.ts';
import type { LampCircuit } from '../engine/instruments/lamp.ts';
import { feel, STILL, type StripFeel } from '../engine/instruments/stripMotion.ts';
import { type Contacts, lampTipsTogether, metalUnder, meterTap } from './contacts.ts';
import type { PartOnBench } from './part.ts';

/** What drives the circuits: nothing, an empty growler, or growler and armature together. */
export type Source =
  | { readonly kind: 'dead' }
  | { readonly kind: 'empty'; readonly excitation: Excitation; readonly windingC: number }
  | { readonly kind: 'loaded'; readonly drive: Drive; readonly point: OperatingPoint };

/** What currents and forces there are since bench, hands or winding last changed. */
export interface Electrics {
  readonly source: Source;
  /** The growler, or null when it carries nothing. */
  readonly growler: { readonly lossW: number; readonly ampereTurns: number; readonly fluxWb: number } | null;
  readonly meterA: number;
  /** Loss in each coil of the armature, W, or null when there is none. */
  readonly coilW: Float64Array | null;
  readonly lamp: LampCircuit;
  readonly strip: StripFeel;
}

const LAMP_DEAD: LampCircuit = { volt: 0, path: null };
export const DEAD: Electrics = {
  source: { kind: 'dead' },
  growler: null,
  meterA: 0,
  coilW: null,
  lamp: LAMP_DEAD,
  strip: STILL,
};

/**
 * Everything the circuits do with the bench as it stands. A solution is kept for as long as nothing it depends on has
 * changed; the winding counts as changed by `heat` only.
 */
export function solveElectrics(
  part: PartOnBench,
  state: BenchState,
  contacts: Contacts,
  windingC: number,
  last: Electrics,
): Electrics {
  if (state.supply !== 'on' || state.selector === 'off') return DEAD;
  const lamp = state.selector === 'low' ? lampCircuit(part, state) : LAMP_DEAD;
  if (state.cradle === 'empty') return { ...unloaded(part, state.selector, windingC), lamp };
  const drive = driveOf(part, state, state.selector, meterTap(state, contacts, part.design.bars), windingC);
  const kept = last.source.kind === 'loaded' && sameDrive(last.source.drive, drive) ? last : null;
  const driven = kept ?? loaded(part, drive);
  return { ...driven, lamp, strip: stripFeel(part, state, driven.source) };
}

/** How far the winding has drifted from the temperature the circuits were solved for, K. */
export function driftK({ source }: Electrics, windingC: number): number {
  if (source.kind === 'dead') return 0;
  return Math.abs(windingC - (source.kind === 'empty' ? source.windingC : source.drive.windingC));
}

type Driven = Pick<Electrics, 'source' | 'growler' | 'meterA' | 'coilW'>;

function driveOf(
  part: PartOnBench,
  state: BenchState,
  excitation: Excitation,
  meter: MeterTap | null,
  windingC: number,
): Drive {
  const rotationRad = (state.rotationDeg * Math.PI) / 180;
  return { mains: part.mains, excitation, rotationRad, windingC, meter };
}

function sameDrive(a: Drive, b: Drive): boolean {
  return (
    a.excitation === b.excitation &&
    a.rotationRad === b.rotationRad &&
    a.windingC === b.windingC &&
    a.meter?.barA === b.meter?.barA &&
    a.meter?.barB === b.meter?.barB &&
    a.meter?.loopOhm === b.meter?.loopOhm
  );
}

function loaded(part: PartOnBench, drive: Drive): Driven {
  const point = part.solver.solve(part.faults, drive);
  return {
    source: { kind: 'loaded', drive, point },
    growler: growlerOf(part, drive.excitation, point),
    meterA: point.meterA,
    coilW: point.coilLossW(),
  };
}

function unloaded(
  part: PartOnBench,
  excitation: Excitation,
  windingC: number,
): Driven & { strip: StripFeel } {
  const empty = emptyCradle(part.mains, excitation, windingC);
  return {
    source: { kind: 'empty', excitation, windingC },
    growler: growlerOf(part, excitation, empty),
    meterA: 0,
    coilW: null,
    strip: STILL,
  };
}

function growlerOf(
  part: PartOnBench,
  excitation: Excitation,
  { growlerA, growlerW, fluxWb }: Pick<OperatingPoint, 'growlerA' | 'growlerW' | 'fluxWb'>,
): Electrics['growler'] {
  const { turns } = BENCH_GROWLER.windings[part.mainsId][excitation];
  return { lossW: growlerW, ampereTurns: growlerA * turns, fluxWb };
}

function stripFeel(part: PartOnBench, { strip }: BenchState, source: Source): StripFeel {
  if (source.kind !== 'loaded' || strip.angleDeg === null || strip.heightMm === null) return STILL;
  const gapM = strip.heightMm / 1000;
  return feel(source.point.strip(strip.angleDeg, gapM), gapM, part.mains.hz);
}

/**
 * The lamp between the two metals its tips are on. The few volts the growler itself puts on the bars on LOW are left
 * out: they are lost beside mains voltage.
 */
function lampCircuit(part: PartOnBench, state: BenchState): LampCircuit {
  const { volt, hz } = part.mains;
  const direct: LampCircuit = { volt, path: { re: 0, im: 0 } };
  if (lampTipsTogether(state.leads)) return direct;
  const a = metalUnder(state.leads, 'lamp.1');
  const b = metalUnder(state.leads, 'lamp.2');
  if (a === null || b === null) return { volt, path: null };
  if (a === b) return direct;
  if (a === 'ammeter' || b === 'ammeter') return { volt, path: null };
  return { volt, path: part.solver.path(part.faults, a, b, hz, Math.SQRT2 * volt) };
}
