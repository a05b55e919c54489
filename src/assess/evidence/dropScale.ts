import { DROP_END_MV } from '../../engine/instruments/millivoltDrop.ts';
import { type Slack, slackOf } from './beyond.ts';
import type { DropTable, DropTables } from './drops.ts';
import { overGains } from './gains.ts';
import { type NeedleNominal, normalBelow } from './needles.ts';
import { type DropReading, isBeyondScale, type Source } from './reading.ts';
import { DROP_RANGE_MV, gauss, TOOL_SLIP } from './toolNoise.ts';

/**
 * Errors common to all drops of an attempt, evenly likely, as shares: the meter's own and the feed's, and copper up to
 * twenty kelvins warmer than the room. Ours, no source.
 */
const GAIN_LEAST = -0.04;
export const DROP_GAINS: readonly number[] = Array.from({ length: 13 }, (_, k) => GAIN_LEAST + 0.01 * k);
/** Coils of one part that are sound differ by so much, share. Ours; within what the trade lets pass (references A11). */
export const COIL_SD = 0.01;
/** Spread of the figure itself, mV: a display in steps of a hundredth; whoever writes it may round to a twentieth. */
export const FIGURE_SD: Readonly<Record<Source, number>> = {
  instrument: 0.01 / Math.sqrt(12),
  sheet: 0.05 / Math.sqrt(12),
};
/** Of slips this share lies beyond the scale. */
const SLIP_OVER = 0.05;

const GAIN_COUNT = DROP_GAINS.length;

type Shown = Pick<DropReading, 'millivolts' | 'from'>;

/** Likelihood of a drop for every line of a table with every common error, count × errors: per mV, or of being over. */
export function dropLikelihoods({ millivolts, cells }: DropTable, shown: Shown): Float64Array {
  const { length } = millivolts;
  const out = new Float64Array(length * GAIN_COUNT);
  const figure = FIGURE_SD[shown.from] ** 2;
  for (let k = 0; k < length; k++) {
    const own = figure + cells[k]! * cells[k]!;
    for (let g = 0; g < GAIN_COUNT; g++) {
      const mean = millivolts[k]! * (1 + DROP_GAINS[g]!);
      out[k * GAIN_COUNT + g] = dropLikelihood(shown, mean, Math.sqrt(own + (COIL_SD * mean) ** 2));
    }
  }
  return out;
}

function dropLikelihood({ millivolts, from }: Shown, mean: number, sd: number): number {
  const slip = TOOL_SLIP[from];
  if (!isBeyondScale({ millivolts })) return (1 - slip) * gauss(millivolts - mean, sd) + slip / DROP_RANGE_MV;
  return (1 - slip) * normalBelow((mean - DROP_END_MV) / sd) + slip * SLIP_OVER;
}

/** The same where some readings may have nothing to do with the line. */
export function slackOfDrop(shown: Shown): Slack {
  return slackOf(TOOL_SLIP[shown.from], isBeyondScale(shown) ? SLIP_OVER : 1 / DROP_RANGE_MV);
}

/** Drop and its spread with an exact meter and feed, mV, by line of a table. */
export function nominalDrops({ millivolts, cells }: DropTable): NeedleNominal {
  return {
    needle: Float32Array.from(millivolts),
    spread: Float32Array.from(millivolts, (mv, k) =>
      Math.hypot(FIGURE_SD.instrument, COIL_SD * mv, cells[k]!),
    ),
  };
}

/** Weighs drops one after another for every single suspect, as logarithms. */
export class DropScale {
  readonly readings: DropReading[] = [];
  private readonly tables: DropTables;
  /** Share of each suspect among all before anything is read. */
  private readonly shares: Float64Array;
  private readonly log: Float64Array;
  private readonly loose: Float64Array;
  private readonly noneLog = new Float64Array(GAIN_COUNT);
  private mean: Float64Array | null;

  constructor(tables: DropTables, shares: Float64Array) {
    this.tables = tables;
    this.shares = shares;
    this.log = new Float64Array(shares.length * GAIN_COUNT);
    this.loose = new Float64Array(shares.length * GAIN_COUNT);
    this.mean = new Float64Array(shares.length);
  }

  /** @param anything share of "none of these" of which any drop may be expected */
  add(reading: DropReading, anything: number): void {
    this.readings.push(reading);
    const { table, standing } = this.tables.turnedBack(reading);
    const there = dropLikelihoods(table, reading);
    const numbers = this.tables.dictionary.turnedBackSuspects(standing);
    const { scale, offset } = slackOfDrop(reading);
    const together = new Float64Array(GAIN_COUNT);
    for (let k = 0, at = 0; k < numbers.length; k++) {
      const from = numbers[k]! * GAIN_COUNT;
      for (let g = 0; g < GAIN_COUNT; g++, at++) {
        together[g]! += this.shares[k]! * there[from + g]!;
        this.log[at]! += Math.log(there[from + g]!);
        this.loose[at]! += Math.log(scale * there[from + g]! + offset);
      }
    }
    for (let g = 0; g < GAIN_COUNT; g++)
      this.noneLog[g]! += Math.log((1 - anything) * together[g]! + anything / DROP_RANGE_MV);
    this.mean = null;
  }

  /** Logarithm of the likelihood of all drops, the common error averaged, by suspect. */
  means(): Float64Array {
    this.mean ??= this.shares.map((_, k) => overDrops(this.log, k));
    return this.mean;
  }

  /** The same of one suspect where some readings may have nothing to do with it. */
  looseOf(suspect: number): number {
    return overDrops(this.loose, suspect);
  }

  ofNone(): number {
    return overDrops(this.noneLog, 0);
  }
}

export function overDrops(log: Float64Array, row: number): number {
  return overGains(log, row, GAIN_COUNT);
}
