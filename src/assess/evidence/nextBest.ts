import type { TestKind } from '../../bench/paper.ts';
import { DEFAULT_TEST_VOLT } from '../../engine/instruments/insulationTester.ts';
import type { Dictionary } from './dictionary.ts';
import { nominalDrops } from './dropScale.ts';
import type { DropTables } from './drops.ts';
import { information } from './information.ts';
import { type InsulationSuspect, insulationShows } from './insulation.ts';
import { nominalNeedles } from './needles.ts';
import type { Surface } from './noise.ts';
import { fieldOf } from './possibilities.ts';
import type { Posterior } from './posterior.ts';
import type { DropLaid } from './reading.ts';
import { dropPass, meterPasses, stripPasses } from './standardTests.ts';
import { PULLS } from './strip.ts';
import { overLeak } from './tester.ts';

/** One reading that could be taken next, and what it is expected to tell. */
export interface NextReading {
  readonly test: Exclude<TestKind, 'look'>;
  /** Ammeter and drop: the two bars. Lamp and insulation tester: any one bar, null. Strip: the slot under it. */
  readonly bars: readonly [number, number] | null;
  readonly slot: number | null;
  /** Place of the strip, degrees from the bottom. */
  readonly angleDeg: number | null;
  /** Expected gain about what the part has, bits. */
  readonly bits: number;
}

/** Suspects below this share are left out: what is hardly possible can hardly be told about. */
const LEAST = 1e-5;
/** Needle places told apart, over the whole scale. */
const BINS = 80;
const SCALE = 1.03;
/** A drop is told apart up to so many times what a sound part shows; an open pair lies beyond. */
const DROP_SCALE = 3;
/** Figures of the insulation tester told apart, and the least and the most of them, megohms. */
const MEGOHM_BINS = 40;
const MEGOHMS = { least: 0.005, most: 999 } as const;

/**
 * Which next readings would tell most: the mutual information of the reading and the possibilities of the winding (of
 * the insulation for lamp and tester), best first. Looking is not among them: it comes before power anyway.
 */
export function nextReadings(posterior: Posterior): NextReading[] {
  const { model } = posterior;
  const open = openSuspects(posterior);
  const found = [
    ...meterPasses(model).flatMap(({ test, readings }) =>
      readings.map((laid): NextReading => {
        const bits = needleBits(model.dictionary, laid, open);
        return { test, bars: laid.bars, slot: null, angleDeg: null, bits };
      }),
    ),
    ...stripPasses(model).flatMap(({ angleDeg, readings }) =>
      readings.map((held, slot): NextReading => {
        const bits = pullBits(model.dictionary, held, open);
        return { test: 'strip', bars: null, slot, angleDeg, bits };
      }),
    ),
    ...dropPass(model).map((laid): NextReading => {
      const bits = dropBits(model.drops, laid, open);
      return { test: 'millivolt', bars: laid.bars, slot: null, angleDeg: null, bits };
    }),
    ...(model.tests.includes('ground') ? [lampReading(posterior)] : []),
    ...(model.tests.includes('megohm') ? [testerReading(posterior)] : []),
  ];
  return found.sort((a, b) => told(b) - told(a));
}

/** What tells alike is taken in its order: rounding must not choose between bars that are alike, bits. */
const told = ({ bits }: NextReading) => Math.round(bits / ALIKE_BITS);
const ALIKE_BITS = 1e-4;

/** Suspects still possible: number, share, and which possibility each belongs to (0: nothing these tests can show). */
interface OpenSuspects {
  readonly suspects: Int32Array;
  readonly shares: Float64Array;
  readonly group: Int32Array;
  readonly groups: number;
  /** The likelier state of the commutator. */
  readonly surface: Surface;
}

function openSuspects({ model, winding, cases, surface }: Posterior): OpenSuspects {
  const { of } = fieldOf(model);
  const suspects: number[] = [];
  for (let k = 0; k < cases.singles; k++) if (winding[k]! > LEAST) suspects.push(k);
  const total = suspects.reduce((sum, k) => sum + winding[k]!, 0);
  const names = [-1, ...new Set(suspects.map((k) => of[k]!).filter((group) => group >= 0))];
  const numbers = new Map(names.map((name, number) => [name, number]));
  return {
    suspects: Int32Array.from(suspects),
    shares: Float64Array.from(suspects, (k) => winding[k]! / total),
    group: Int32Array.from(suspects, (k) => numbers.get(of[k]!)!),
    groups: names.length,
    surface: surface[1]! > surface[0]! ? 'dirty' : 'clean',
  };
}

function needleBits(
  dictionary: Dictionary,
  laid: Parameters<Dictionary['needles']>[0],
  open: OpenSuspects,
): number {
  const standing = dictionary.standing(laid.rotationDeg);
  const { needle, spread } = nominalNeedles(dictionary.needles(laid, standing), open.surface);
  const numbers = dictionary.turnedBackSuspects(standing);
  const joint = new Float64Array(open.groups * BINS);
  open.suspects.forEach((suspect, n) => {
    const number = numbers[suspect]!;
    spreadOver(joint, open.group[n]! * BINS, open.shares[n]!, needle[number]!, spread[number]!);
  });
  return information(joint, open.groups, BINS);
}

/** Lays a normal distribution over the bins; what lies beyond the stops gathers at them. */
function spreadOver(joint: Float64Array, from: number, share: number, mean: number, sd: number): void {
  const width = SCALE / BINS;
  const least = Math.max(0, Math.min(BINS - 1, Math.floor((mean - 3 * sd) / width)));
  const most = Math.max(least, Math.min(BINS - 1, Math.ceil((mean + 3 * sd) / width)));
  let total = 0;
  const height = (bin: number) => Math.exp(-0.5 * (((bin + 0.5) * width - mean) / Math.max(sd, width)) ** 2);
  for (let bin = least; bin <= most; bin++) total += height(bin);
  if (total === 0) joint[from + (mean > SCALE / 2 ? BINS - 1 : 0)]! += share;
  else for (let bin = least; bin <= most; bin++) joint[from + bin]! += (share * height(bin)) / total;
}

function pullBits(
  dictionary: Dictionary,
  held: Parameters<Dictionary['pulls']>[0],
  open: OpenSuspects,
): number {
  const standing = dictionary.standing(held.rotationDeg);
  const table = dictionary.pulls(held, standing);
  const numbers = dictionary.turnedBackSuspects(standing);
  const joint = new Float64Array(open.groups * PULLS);
  open.suspects.forEach((suspect, n) => {
    const from = numbers[suspect]! * PULLS;
    for (let pull = 0; pull < PULLS; pull++)
      joint[open.group[n]! * PULLS + pull]! += open.shares[n]! * table[from + pull]!;
  });
  return information(joint, open.groups, PULLS);
}

function dropBits(drops: DropTables, laid: DropLaid, open: OpenSuspects): number {
  const { table, standing } = drops.turnedBack(laid);
  const { needle, spread } = nominalDrops(table);
  const numbers = drops.dictionary.turnedBackSuspects(standing);
  const full = DROP_SCALE * needle[0]!;
  const joint = new Float64Array(open.groups * BINS);
  open.suspects.forEach((suspect, n) => {
    const number = numbers[suspect]!;
    const [mean, sd] = [needle[number]! / full, spread[number]! / full];
    spreadOver(joint, open.group[n]! * BINS, open.shares[n]!, Math.min(SCALE, mean), sd);
  });
  return information(joint, open.groups, BINS);
}

/** One bar will do for the insulation tester too. What matters is whether it is a ground, a leak, or good enough. */
function testerReading({ model, insulation }: Posterior): NextReading {
  const groups = 3;
  const joint = new Float64Array(groups * MEGOHM_BINS);
  model.insulation.forEach((suspect, i) => {
    const group = !insulationShows(suspect, model.tests) ? 0 : suspect.shows === 'lit' ? 1 : 2;
    joint[group * MEGOHM_BINS + megohmBin(suspect)]! += insulation[i]!;
  });
  const bits = information(joint, groups, MEGOHM_BINS);
  return { test: 'megohm', bars: null, slot: null, angleDeg: null, bits };
}

function megohmBin({ leak }: InsulationSuspect): number {
  const { leastOhm, mostOhm } = overLeak(leak, DEFAULT_TEST_VOLT);
  const mohm = Math.sqrt(leastOhm * mostOhm) / 1e6;
  const share = Math.log(mohm / MEGOHMS.least) / Math.log(MEGOHMS.most / MEGOHMS.least);
  return Math.max(0, Math.min(MEGOHM_BINS - 1, Math.floor(share * MEGOHM_BINS)));
}

/** One bar will do: the lamp lights at all or at none, unless one is cut off. */
function lampReading({ model, insulation }: Posterior): NextReading {
  const shows = ['dark', 'dim', 'lit'] as const;
  const joint = new Float64Array(shows.length ** 2);
  model.insulation.forEach((suspect, i) => {
    joint[shows.indexOf(suspect.shows) * (shows.length + 1)]! += insulation[i]!;
  });
  const bits = information(joint, shows.length, shows.length);
  return { test: 'ground', bars: null, slot: null, angleDeg: null, bits };
}
