import { addLogs } from './altered.ts';
import { Adrift, slackOfNeedle } from './beyond.ts';
import type { Dictionary } from './dictionary.ts';
import { overGains } from './gains.ts';
import { meterLikelihoods } from './meter.ts';
import { CASES, soundNeedle } from './needles.ts';
import type { MeterReading } from './reading.ts';

const HOPELESS = 60;

/** Weighs readings of the ammeter for every suspect, as logarithms. */
export class MeterScale {
  readonly readings: MeterReading[] = [];
  /** By suspect and case, strictly, and where some readings may have nothing to do with the suspect. */
  readonly log: Float64Array;
  readonly loose: Float64Array;
  readonly adrift = new Adrift();
  private readonly dictionary: Dictionary;
  /** The strict ones with the instrument's errors averaged, by suspect and surface. */
  private readonly means: Float64Array;
  private stale = false;

  constructor(dictionary: Dictionary) {
    const { count } = dictionary.suspects;
    this.dictionary = dictionary;
    this.log = new Float64Array(count * CASES);
    this.loose = new Float64Array(count * CASES);
    this.means = new Float64Array(2 * count);
  }

  add(reading: MeterReading): void {
    const { dictionary } = this;
    this.readings.push(reading);
    addLogs(meterLikelihoods(dictionary, reading), slackOfNeedle(reading), this.log, this.loose);
    const table = dictionary.needles(reading, dictionary.standing(reading.rotationDeg));
    this.adrift.add(reading, soundNeedle(table));
    this.stale = true;
  }

  /** Logarithm of the likelihood by suspect and surface: clean, dirty, clean ... */
  mean(): Float64Array {
    if (this.stale) this.average();
    this.stale = false;
    return this.means;
  }

  /** What lies hopelessly far below the best is not averaged: its highest will do. */
  private average(): void {
    const { means, log } = this;
    let best = -Infinity;
    for (let k = 0; k < means.length; k++) {
      means[k] = highest(log, k);
      if (means[k]! > best) best = means[k]!;
    }
    for (let k = 0; k < means.length; k++)
      if (means[k]! > best - HOPELESS) means[k] = overGains(log, k, GAIN_COUNT);
  }
}

const GAIN_COUNT = CASES / 2;

/** Logarithm of the mean likelihood over the instrument's errors, for one line and surface. */
export function overCases(logs: Float64Array, k: number, surface: number): number {
  return overGains(logs, 2 * k + surface, GAIN_COUNT);
}

function highest(log: Float64Array, k: number): number {
  let most = -Infinity;
  for (let at = k * GAIN_COUNT, end = at + GAIN_COUNT; at < end; at++) if (log[at]! > most) most = log[at]!;
  return most;
}
