import type { TestKind } from '../../bench/paper.ts';
import type { Dictionary } from './dictionary.ts';
import { information } from './information.ts';
import { nominalNeedles } from './needles.ts';
import type { Surface } from './noise.ts';
import { fieldOf } from './possibilities.ts';
import type { Posterior } from './posterior.ts';
import { meterPasses, stripPasses } from './standardTests.ts';
import { PULLS } from './strip.ts';

/** One reading that could be taken next, and what it is expected to tell. */
export interface NextReading {
  readonly test: Exclude<TestKind, 'look'>;
  /** Ammeter: the two bars. Lamp: any one bar, null. Strip: the slot under it. */
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

/**
 * Which next readings would tell most: the mutual information of the reading and the possibilities of the winding (of
 * the insulation for the lamp), best first. Looking is not among them: it comes before power anyway.
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
    ...(model.tests.includes('ground') ? [lampReading(posterior)] : []),
  ];
  return found.sort((a, b) => b.bits - a.bits);
}

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
