import type { RangeA } from '../../bench/action.ts';
import type { Clue } from '../../bench/observation.ts';
import type { Place } from '../../bench/places.ts';
import type { Excitation } from '../../engine/drive.ts';
import type { TestVolt } from '../../engine/instruments/insulationTester.ts';
import { DROP_END_MV } from '../../engine/instruments/millivoltDrop.ts';

/**
 * One thing learnt at the bench. `entry` is the log entry that brought it about. Readings carry no time: holding a
 * contact longer tells nothing more.
 */
export type Reading =
  | MeterReading
  | LampReading
  | StripReading
  | StripPassReading
  | MegohmReading
  | DropReading
  | LookReading;

/** One settled contact of the ammeter: the needle at rest, or what the learner wrote of it. */
export interface MeterReading {
  readonly kind: 'meter';
  readonly entry: number;
  readonly bars: readonly [number, number];
  readonly rotationDeg: number;
  readonly excitation: Excitation;
  readonly rangeA: RangeA;
  /** Needle as a fraction of full scale, 0..1.03. */
  readonly deflection: number;
  readonly pegged: boolean;
  readonly from: Source;
}

/** One result of the lamp. A dark one is a reading only between two proofs. */
export interface LampReading {
  readonly kind: 'lamp';
  readonly entry: number;
  readonly places: readonly [Place, Place];
  readonly shows: LampShows;
  readonly from: Source;
}

/** One place of the strip, held until felt. */
export interface StripReading {
  readonly kind: 'strip';
  readonly entry: number;
  readonly angleDeg: number;
  /** Clear gap, mm. */
  readonly heightMm: number;
  readonly rotationDeg: number;
  readonly excitation: Excitation;
  /** Pull felt, 0..4. */
  readonly pull: number;
  readonly from: Source;
}

/** Several places of the strip written of in one line: felt somewhere among them, or nowhere. */
export interface StripPassReading {
  readonly kind: 'stripPass';
  readonly entry: number;
  readonly places: readonly StripReading[];
  readonly felt: boolean;
  readonly from: Source;
}

/** One figure of the insulation tester, read when it stood still. */
export interface MegohmReading {
  readonly kind: 'megohm';
  readonly entry: number;
  readonly places: readonly [Place, Place];
  readonly volt: TestVolt;
  readonly megohms: number | 'over';
  readonly from: Source;
}

/** Two bars that a steady current is fed in and out at, and two that its drop is read between. */
export interface DropLaid {
  readonly feed: readonly [number, number];
  readonly bars: readonly [number, number];
}

/** One drop between two bars. */
export interface DropReading extends DropLaid {
  readonly kind: 'drop';
  readonly entry: number;
  /** mV; at the end of the scale it may be anything beyond. */
  readonly millivolts: number;
  readonly from: Source;
}

export function isBeyondScale({ millivolts }: Pick<DropReading, 'millivolts'>): boolean {
  return millivolts >= DROP_END_MV;
}

/** One place under the lens. */
export interface LookReading {
  readonly kind: 'look';
  readonly entry: number;
  readonly place: Place;
  readonly sees: readonly Clue[];
}

/** Whether the value is what the instrument showed or what the learner wrote on the sheet. */
export type Source = 'instrument' | 'sheet';
export type LampShows = 'dark' | 'dim' | 'lit';

/** Brightness from which a lamp is called lit rather than dim. Ours, no source. */
const LIT_GLOW = 5;

export function lampShows(glow: number): LampShows {
  if (glow === 0) return 'dark';
  return glow < LIT_GLOW ? 'dim' : 'lit';
}
