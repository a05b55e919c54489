import type { Action } from '../bench/action.ts';
import type { Happening } from '../bench/happening.ts';
import type { HumView, LampView, NeedleView, Observation } from '../bench/observation.ts';
import type { Breach, Mode, Outcome } from '../bench/port.ts';
import type { Scenario } from '../scenario/scenario.ts';

/** What eyes and ears had when the action was done: kept so that a replay can be compared with what was shown. */
export interface Sensed {
  readonly supply: Observation['supply'];
  readonly needle: NeedleView;
  readonly lamp: LampView;
  readonly pull: number;
  readonly buzz: number;
  readonly hum: HumView;
  readonly growlerHeat: Observation['growlerHeat'];
  readonly rotationDeg: number;
  /** Left out while the insulation tester's button is up. */
  readonly tester?: { readonly megohms: number; readonly over: boolean };
  /** Left out while the feed of the millivolt-drop test is off. */
  readonly drop?: { readonly feedA: number; readonly millivolts: number | null; readonly over: boolean };
  /** Left out while no gauge is put to a part. */
  readonly gaugeMm?: number;
}

/** What came about by itself, with the rules it broke: worked out again by a replay and compared, never an input. */
export interface Happened {
  readonly atMs: number;
  readonly what: Happening;
  readonly breaches: readonly Breach[];
}

/** One line of the attempt's log. The first entry has n = 0. */
export interface Entry {
  readonly n: number;
  /** Simulated time of the action, ms since the attempt began. */
  readonly atMs: number;
  readonly action: Action;
  readonly outcome: Outcome;
  /** The observation just before the action: what the learner had in front of them when they acted. */
  readonly before: Sensed;
  /** What had come about by itself since the entry before; left out when nothing had. */
  readonly since?: readonly Happened[];
}

export const ATTEMPT_FORMAT = 'slot-and-riser/attempt';
export const ATTEMPT_VERSION = 1;

/** What every new attempt says of itself. */
export const NEW_ATTEMPT = { format: ATTEMPT_FORMAT, version: ATTEMPT_VERSION, points: 'whole' } as const;

/** Longest attempt file accepted, characters; three thousand acts take about two million. */
export const MOST_ATTEMPT_CHARS = 20_000_000;

/** An attempt as it is stored and handed over: the log plus all that a replay needs. */
export interface Attempt {
  readonly format: typeof ATTEMPT_FORMAT;
  readonly version: typeof ATTEMPT_VERSION;
  /** How it is marked: in whole points, or, left out, in tenths as all attempts once were (assess/points.ts). */
  readonly points?: 'whole';
  readonly id: string;
  readonly mode: Mode;
  readonly learner: string;
  /** Wall clock at the start, ISO 8601, for the record only. */
  readonly startedAt: string;
  /** The whole scenario, hidden half included: the file can be replayed by itself. */
  readonly scenario: Scenario;
  readonly entries: readonly Entry[];
  /** Simulated time the record ends at, ms. */
  readonly endMs: number;
}
