import type { Place } from '../../../bench/places.ts';
import type { TestVolt } from '../../../engine/instruments/insulationTester.ts';
import type { LookReading, Source } from '../reading.ts';

/** What hands did meanwhile. */
interface Meanwhile {
  readonly entry: number;
  readonly places: readonly [Place, Place];
  readonly brushesApart: boolean;
  /** Place that somebody leaned on, or null. */
  readonly leanedOn: Place | null;
}

/** One settled result of the lamp; a dark one only between two proofs. */
export interface MatLamp extends Meanwhile {
  readonly kind: 'lamp';
  readonly lit: boolean;
}

export interface MatMegohms extends Meanwhile {
  readonly kind: 'megohm';
  readonly volt: TestVolt;
  readonly megohms: number | 'over';
}

export interface MatDrop extends Meanwhile {
  readonly kind: 'drop';
  readonly feed: readonly [Place, Place];
  readonly millivolts: number;
}

export type MatReading = MatLamp | MatMegohms | MatDrop;

/** What a reading asks of the part: all of it but the answer. */
export type MatQuestion =
  | Omit<MatLamp, 'entry' | 'lit'>
  | Omit<MatMegohms, 'entry' | 'megohms'>
  | Omit<MatDrop, 'entry' | 'millivolts'>;

/** What would be read of a part in some state, slips apart. */
export type MatShown =
  | { readonly kind: 'lamp'; readonly lit: boolean }
  | { readonly kind: 'megohm'; readonly megohms: number; readonly over: boolean }
  /** `blur`: spread of what severities between the listed ones would show about it, mV. */
  | { readonly kind: 'drop'; readonly millivolts: number; readonly blur?: number };

/** What the lens showed by place, where it was looked. */
export type MatLooks = ReadonlyMap<Place, LookReading>;

export interface MatEvidence {
  readonly readings: readonly MatReading[];
  readonly looks: MatLooks;
  readonly from: Source;
}

/** Two readings with one key ask the same thing: the second adds nothing. */
export function keyOf(reading: MatQuestion): string {
  const { kind, places, brushesApart, leanedOn } = reading;
  const more = kind === 'drop' ? reading.feed.join() : kind === 'megohm' ? reading.volt : '';
  return `${kind} ${[...places].sort().join()} ${brushesApart} ${leanedOn} ${more}`;
}
