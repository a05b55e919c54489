import type { BenchState } from '../bench/state.ts';
import { emptyCradle } from '../engine/armatureBench.ts';
import type { Drive, Excitation, MeterTap, OperatingPoint } from '../engine/drive.ts';
import { BENCH_GROWLER } from '../engine/growler.ts';
import type { LampCircuit } from '../engine/instruments/lamp.ts';
import { feel, STILL, type StripFeel } from '../engine/instruments/stripMotion.ts';
import { ROOM_C } from '../engine/instruments/thermal.ts';
import { type Condition, isBlown, isBroken } from './condition.ts';
import { type Contacts, lampTipsTogether, metalUnder, meterTap } from './contacts.ts';
import type { PartOnBench } from './part.ts';
import { acPath, type Lying } from './paths.ts';

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
export function solveElectrics(lying: Lying, contacts: Contacts, warmth: Warmth, last: Electrics): Electrics {
  const { part, state } = lying;
  if (state.supply !== 'on' || state.selector === 'off') return DEAD;
  const lamp = state.selector === 'low' ? lampCircuit(lying) : LAMP_DEAD;
  if (state.cradle === 'empty') return { ...unloaded(part, state.selector, warmth.windingC), lamp };
  const drive = driveOf(lying, state.selector, tapOf(lying, contacts), warmth);
  const kept = last.source.kind === 'loaded' && sameDrive(last.source.drive, drive) ? last : null;
  const driven = kept ?? loaded(lying, drive);
  return { ...driven, lamp, strip: stripFeel(part, state, driven.source) };
}

/** How warm growler winding and coils of the armature are: degrees C, and K above the room. */
export interface Warmth {
  readonly windingC: number;
  readonly coilRiseK: readonly number[];
}

/** Whether growler winding or a coil has drifted too far from what the circuits were solved for. */
export function hasDrifted({ source }: Electrics, { windingC, coilRiseK }: Warmth): boolean {
  if (source.kind === 'dead') return false;
  if (source.kind === 'empty') return Math.abs(windingC - source.windingC) > DRIFT_K;
  const { drive } = source;
  if (Math.abs(windingC - drive.windingC) > DRIFT_K) return true;
  return coilRiseK.some(
    (rise, coil) => Math.abs(ROOM_C + rise - (drive.coilC?.[coil] ?? ROOM_C)) > COIL_DRIFT_K,
  );
}
/** Drift of the growler winding, and of a coil, after which the circuits are solved again, K. */
const DRIFT_K = 1;
/**
 * Coils count as warmer or cooler from this much on, K. A shorted coil may warm by two kelvin a second: steps this fine
 * move the needle by less than an eye can tell, so that it creeps and does not hop.
 */
const COIL_DRIFT_K = 0.25;

/** A broken lead reads nothing. */
function tapOf({ part, condition, state }: Lying, contacts: Contacts): MeterTap | null {
  return isMeterWhole(condition) ? meterTap(state, contacts, part.design.bars) : null;
}

function isMeterWhole(condition: Condition): boolean {
  return !isBroken(condition, 'ammeter.1') && !isBroken(condition, 'ammeter.2');
}

type Driven = Pick<Electrics, 'source' | 'growler' | 'meterA' | 'coilW'>;

function driveOf(
  { part, state }: Lying,
  excitation: Excitation,
  meter: MeterTap | null,
  { windingC, coilRiseK }: Warmth,
): Drive {
  const rotationRad = (state.rotationDeg * Math.PI) / 180;
  // A winding near room temperature is solved as a cold one: nothing of it could be read off a needle.
  const warm = coilRiseK.some((rise) => rise > COIL_DRIFT_K);
  const coilC = warm
    ? coilRiseK.map((rise) => ROOM_C + Math.round(rise / COIL_DRIFT_K) * COIL_DRIFT_K)
    : undefined;
  return { mains: part.mains, excitation, rotationRad, windingC, meter, coilC };
}

function sameDrive(a: Drive, b: Drive): boolean {
  return (
    a.excitation === b.excitation &&
    a.rotationRad === b.rotationRad &&
    a.windingC === b.windingC &&
    a.meter?.barA === b.meter?.barA &&
    a.meter?.barB === b.meter?.barB &&
    a.meter?.loopOhm === b.meter?.loopOhm &&
    sameWarmth(a.coilC, b.coilC)
  );
}

function sameWarmth(a: Drive['coilC'], b: Drive['coilC']): boolean {
  if (a === undefined || b === undefined) return a === b;
  return Array.from(a).every((celsius, coil) => celsius === b[coil]);
}

function loaded({ part, condition }: Lying, drive: Drive): Driven {
  const point = part.solver.solve(condition.armature, drive);
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
function lampCircuit(lying: Lying): LampCircuit {
  const { volt } = lying.part.mains;
  const { condition, state } = lying;
  const open: LampCircuit = { volt, path: null };
  const direct: LampCircuit = { volt, path: { re: 0, im: 0 } };
  if (isBlown(condition) || isBroken(condition, 'lamp.1') || isBroken(condition, 'lamp.2')) return open;
  if (lampTipsTogether(state.leads)) return direct;
  const meterWhole = isMeterWhole(condition);
  const a = metalUnder(state.leads, 'lamp.1', meterWhole);
  const b = metalUnder(state.leads, 'lamp.2', meterWhole);
  if (a === null || b === null) return open;
  return a === b ? direct : { volt, path: acPath(lying, a, b) };
}
