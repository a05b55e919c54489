import type { RangeA } from '../../bench/action.ts';
import { scaleFraction } from '../../engine/instruments/ammeter.ts';
import { UPPER_STOP } from '../../engine/instruments/needle.ts';
import { CONTACT_CASES, CURRENT_SD, GAINS, READING_NOISE, SURFACES, type Surface } from './noise.ts';
import type { MeterReading } from './reading.ts';
import type { SuspectBlock } from './suspects.ts';
import type { Sources } from './thevenin.ts';

const GAIN_COUNT = GAINS.length;
/** Cases of surface and instrument a suspect is weighed in, surface by surface. */
export const CASES = SURFACES.length * GAIN_COUNT;
/** Ways the probes may meet the bars: each belongs to a surface. */
const CONTACTS = SURFACES.flatMap((surface, s) =>
  CONTACT_CASES[surface].map((contact) => ({ ...contact, surface: s })),
);
const CONTACT_COUNT = CONTACTS.length;

/** Where the needle would stand, and how that place spreads, for a list of sources on one range. */
export interface NeedleTable {
  /** Fraction of full scale by source, contact case and gain. */
  readonly mean: Float32Array;
  /** By source and contact case; without the spread of the reading itself. */
  readonly spread: Float32Array;
}

/**
 * @param cells  spread that comes from the steps between severities, by source
 * @param warmth what a current does to the winding's resistance while it is read, share per ampere squared
 */
export function needleTable(
  { v2, r, x }: Sources,
  cells: Float64Array,
  rangeA: RangeA,
  warmth: number,
): NeedleTable {
  const count = v2.length;
  const mean = new Float32Array(count * CONTACT_COUNT * GAIN_COUNT);
  const spread = new Float32Array(count * CONTACT_COUNT);
  for (let k = 0; k < count; k++) {
    for (let c = 0; c < CONTACT_COUNT; c++) {
      const { loopOhm, sdOhm } = CONTACTS[c]!;
      const whole = r[k]! + loopOhm;
      const size = whole * whole + x[k]! * x[k]!;
      const amps = Math.sqrt(v2[k]! / size);
      const at = k * CONTACT_COUNT + c;
      const rise = 1000 * (scaleFraction(amps * 1.001, rangeA) - scaleFraction(amps, rangeA));
      const warm = warmth * amps * amps * r[k]!;
      const share = Math.sqrt(CURRENT_SD ** 2 + (whole * whole * (sdOhm * sdOhm + warm * warm)) / size ** 2);
      spread[at] = Math.sqrt((rise * share) ** 2 + cells[k]! ** 2);
      for (let g = 0; g < GAIN_COUNT; g++)
        mean[at * GAIN_COUNT + g] = scaleFraction(amps * (1 + GAINS[g]!), rangeA);
    }
  }
  return { mean, spread };
}

/** Contact case that stands for a surface, and how far the others of that surface lie from it. */
const MIDDLE = { clean: 0, dirty: 2 } as const;

/** Needle and its spread with an exact instrument on one kind of surface, the needle's own steps included; by source. */
export function nominalNeedles({ mean, spread }: NeedleTable, surface: Surface = 'clean'): NeedleNominal {
  const count = spread.length / CONTACT_COUNT;
  const exact = (GAIN_COUNT - 1) / 2;
  const { sd } = READING_NOISE.instrument;
  const at = (k: number, contact: number) => mean[(k * CONTACT_COUNT + contact) * GAIN_COUNT + exact]!;
  const middle = MIDDLE[surface];
  const apart = (k: number) => (surface === 'clean' ? 0 : (at(k, 3) - at(k, 1)) / 2);
  const of = (read: (k: number) => number) => Float32Array.from({ length: count }, (_, k) => read(k));
  return {
    needle: of((k) => at(k, middle)),
    // Half of the weight lies on the two outer cases of a dirty surface.
    spread: of((k) => Math.sqrt(sd ** 2 + spread[k * CONTACT_COUNT + middle]! ** 2 + apart(k) ** 2 / 2)),
  };
}

export interface NeedleNominal {
  readonly needle: Float32Array;
  readonly spread: Float32Array;
}

type Shown = Pick<MeterReading, 'deflection' | 'pegged' | 'from'>;

/** Likelihood (not its logarithm) of a needle for every source of a table in every case; count × CASES. */
export function needleLikelihoods({ mean, spread }: NeedleTable, shown: Shown): Float64Array {
  const count = spread.length / CONTACT_COUNT;
  const { sd, slip } = READING_NOISE[shown.from];
  const out = new Float64Array(count * CASES);
  for (let k = 0; k < count; k++) {
    for (let c = 0; c < CONTACT_COUNT; c++) {
      const { surface, weight } = CONTACTS[c]!;
      const at = k * CONTACT_COUNT + c;
      const whole = Math.sqrt(sd * sd + spread[at]! * spread[at]!);
      const to = k * CASES + surface * GAIN_COUNT;
      for (let g = 0; g < GAIN_COUNT; g++) {
        const m = mean[at * GAIN_COUNT + g]!;
        out[to + g]! += weight * densityAbout(shown, m, whole, slip);
      }
    }
  }
  return out;
}

/**
 * A severity stands for all from half-way to its lower to half-way to its higher neighbour; the needle's place spreads
 * evenly over what lies between. Open stands for itself.
 */
export function severityCells(
  { v2, r, x }: Sources,
  rangeA: RangeA,
  blocks: readonly Pick<SuspectBlock, 'severities' | 'first'>[],
): Float64Array {
  const { loopOhm } = CONTACT_CASES.clean[0]!;
  const needle = Float64Array.from(v2, (volts, k) =>
    scaleFraction(Math.sqrt(volts / ((r[k]! + loopOhm) ** 2 + x[k]! ** 2)), rangeA),
  );
  return cellsOf(needle, blocks);
}

/** The same of anything read: spread by suspect, in the unit of the values. */
export function cellsOf(
  values: Float64Array,
  blocks: readonly Pick<SuspectBlock, 'severities' | 'first'>[],
): Float64Array {
  const cells = new Float64Array(values.length);
  blocks.forEach(({ severities, first }, nth) => {
    const finite = severities.filter(({ ohm }) => ohm !== 'open').length;
    const end = blocks[nth + 1]?.first ?? values.length;
    for (let from = first; from < end; from += severities.length) {
      for (let k = 0; k < finite; k++) cells[from + k] = cell(values, from, k, finite);
    }
  });
  return cells;
}

/** Standard deviation of an even spread over one step about the kth of some severities. */
function cell(values: Float64Array, first: number, k: number, count: number): number {
  const low = Math.max(0, k - 1);
  const high = Math.min(count - 1, k + 1);
  const apart = Math.abs(values[first + high]! - values[first + low]!);
  return apart / Math.max(1, high - low) / Math.sqrt(12);
}

/** Slips fall anywhere on the scale; this share of them on its upper stop. */
const SLIP_DENSITY = 1 / UPPER_STOP;
const SLIP_PEGGED = 0.05;

/** Likelihood of a reading that has nothing to do with the part. */
export function anywhere(pegged: boolean): number {
  return pegged ? SLIP_PEGGED : SLIP_DENSITY;
}

/** Likelihood of a needle about one place, slips included. */
export function densityAbout({ deflection, pegged }: Shown, mean: number, sd: number, slip: number): number {
  return pegged ? peggedChance(mean, sd, slip) : needleDensity(deflection, mean, sd, slip);
}

/** Where the needle of a sound part would stand with clean bars and an exact instrument. */
export function soundNeedle({ mean }: NeedleTable): number {
  return mean[(GAIN_COUNT - 1) / 2]!;
}

/**
 * Density of a needle standing at `at` when the fault would put it at `mean`, slips included; per unit of scale.
 * @param sd spread of the reading, fraction of full scale
 */
function needleDensity(at: number, mean: number, sd: number, slip: number): number {
  const off = (at - mean) / sd;
  return (1 - slip) * (0.3989422804014327 / sd) * Math.exp(-0.5 * off * off) + slip * SLIP_DENSITY;
}

/** Chance of a needle on its upper stop. */
function peggedChance(mean: number, sd: number, slip: number): number {
  return (1 - slip) * normalBelow((mean - UPPER_STOP) / sd) + slip * SLIP_PEGGED;
}

/**
 * Share of the normal distribution below x standard deviations.
 * @source Abramowitz and Stegun, Handbook of Mathematical Functions, 26.2.17 (from memory); error below 7.5e-8
 */
export function normalBelow(x: number): number {
  const t = 1 / (1 + 0.2316419 * Math.abs(x));
  const series =
    t * (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  const above = 0.3989422804014327 * Math.exp(-0.5 * x * x) * series;
  return x >= 0 ? 1 - above : above;
}
