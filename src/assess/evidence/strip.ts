import type { StripForce } from '../../engine/drive.ts';
import { feel, SNAPPED } from '../../engine/instruments/stripMotion.ts';
import { pullOf, type TipPotentials } from '../../engine/strip.ts';
import { lookAtStrip, newStripLinks, type StripLinks } from '../../engine/stripLinks.ts';
import type { Dictionary, Standing } from './dictionary.ts';
import type { Port } from './joints.ts';
import type { StripPassReading, StripReading } from './reading.ts';
import { StripField } from './stripField.ts';
import { type SuspectBlock, suspectAt } from './suspects.ts';
import type { Supply } from './thevenin.ts';

/** Kinds of pull an observation tells apart: 0 none .. 4 snapped on. */
export const PULLS = SNAPPED + 1;

/** Chance of each pull, by suspect: count × PULLS. */
export type PullTable = Float32Array;

export type StripHeld = Pick<StripReading, 'angleDeg' | 'heightMm' | 'rotationDeg' | 'excitation'>;

/** Spread of the logarithm of the pull: gap held by hand, forces beside a slot. Ours, after the model's own limits. */
const PULL_SD = 0.25;
/** Equal parts of a normal distribution, by the middle of each. */
const QUANTILES = [
  -1.83, -1.28, -0.97, -0.73, -0.52, -0.34, -0.17, 0, 0.17, 0.34, 0.52, 0.73, 0.97, 1.28, 1.83,
];
/** Chance that what was felt or written has nothing to do with the pull. Ours. */
export const STRIP_SLIP = 0.02;
/** A fault whose hardest case pulls no more than this beyond a sound part is not felt at this place, N. */
const NOT_FELT_N = 0.004;

/** Steps between neighbouring severities of a joint that are solved, where the list is a fine one. */
const JOINTS_APART = 4;
const FINE_LIST = 12;

/** Likelihood of one place of the strip for every suspect. */
export function stripLikelihoods(dictionary: Dictionary, reading: StripReading): Float64Array {
  return atPlace(dictionary, reading, (table, number) => {
    return (1 - STRIP_SLIP) * table[number * PULLS + reading.pull]! + STRIP_SLIP / PULLS;
  });
}

/** Likelihood of a pass written as felt or still: still means nowhere, felt means somewhere. */
export function passLikelihoods(dictionary: Dictionary, { places, felt }: StripPassReading): Float64Array {
  const still = new Float64Array(dictionary.suspects.count).fill(1);
  for (const place of places) {
    const none = atPlace(dictionary, place, (table, number) => table[number * PULLS]!);
    for (let k = 0; k < still.length; k++) still[k]! *= none[k]!;
  }
  return still.map((chance) => (1 - STRIP_SLIP) * (felt ? 1 - chance : chance) + STRIP_SLIP / 2);
}

/** Of every suspect by its own number, what the table has for it turned back. */
function atPlace(
  dictionary: Dictionary,
  held: StripHeld,
  read: (table: PullTable, number: number) => number,
): Float64Array {
  const standing = dictionary.standing(held.rotationDeg);
  const table = dictionary.pulls(held, standing);
  return Float64Array.from(dictionary.turnedBackSuspects(standing), (number) => read(table, number));
}

/**
 * Pulls of all suspects with the strip held at one place and the armature turned back to the first pitch. Without
 * equalisers a break carries no current when no ammeter is connected: it feels like a sound part.
 */
export function pullTable(dictionary: Dictionary, held: StripHeld, standing: Standing): PullTable {
  const { suspects } = dictionary;
  const table = new Float32Array(suspects.count * PULLS);
  const bench = new StripBench(dictionary, held, standing);
  const sound = bench.sound();
  const plain = bench.chances(sound, 0);
  for (let k = 0; k < suspects.count; k++) table.set(plain, k * PULLS);
  suspects.blocks.forEach((block, nth) => {
    const shorts = ['bridge', 'turnShort', 'coilShort'].includes(block.kind);
    for (let place = 0; place < suspects.design.bars; place++) {
      if (shorts) bench.fillShort(table, block, nth, place, size(sound));
      else if (block.kind === 'reversed') bench.fillReversed(table, block, place);
      else if (suspects.design.equalised) bench.fillBreak(table, block, place, size(sound));
    }
  });
  return table;
}

/** Chance of each pull with two bars joined, the armature as it lies. */
export function joinedPulls(
  dictionary: Dictionary,
  held: StripHeld,
  bars: readonly [number, number],
  ohm: number,
): Float32Array {
  const standing = dictionary.standing(held.rotationDeg);
  const [a, b] = bars.map((bar) => dictionary.turnedBack(bar, standing)) as [number, number];
  return new StripBench(dictionary, held, standing).joined({ a, b, outside: true }, ohm);
}

function size({ meanN, tangentialN }: StripForce): number {
  return Math.hypot(meanN, tangentialN);
}

function between(low: StripForce, high: StripForce, share: number): StripForce {
  const mix = (key: keyof StripForce) => low[key] + share * (high[key] - low[key]);
  return { meanN: mix('meanN'), alternatingN: mix('alternatingN'), tangentialN: mix('tangentialN') };
}

class StripBench {
  private readonly dictionary: Dictionary;
  private readonly held: StripHeld;
  private readonly step: number;
  private readonly supply: Supply;
  private readonly links: StripLinks;
  private readonly whole: StripField;

  constructor(dictionary: Dictionary, held: StripHeld, { step }: Standing) {
    this.dictionary = dictionary;
    this.held = held;
    this.step = step;
    this.supply = dictionary.supply(held.excitation, step);
    this.links = this.look();
    const { jointed, potentials } = dictionary.at(step);
    this.whole = new StripField(dictionary.jointedCircuit(), jointed, potentials, dictionary.mains.hz);
  }

  sound(): StripForce {
    return this.force(this.whole.whole(this.supply));
  }

  joined(port: Port, ohm: number): Float32Array {
    const { dictionary, supply, links } = this;
    return this.chances(this.force(this.whole.across(port, supply, links, dictionary.depth)(ohm)), 0);
  }

  /** From the hardest severity on, until it cannot be felt any more. */
  fillShort(table: PullTable, block: SuspectBlock, nth: number, place: number, soundN: number): void {
    const across = this.across(block, nth, place);
    let harder: number | null = null;
    for (let k = 0; k < block.severities.length; k++) {
      const force = this.force(across(block.severities[k]!.ohm as number));
      if (Math.abs(size(force) - soundN) < NOT_FELT_N) return;
      const log = Math.log(size(force));
      const cell: number = harder === null ? 0 : Math.abs(log - harder) / Math.sqrt(12);
      harder = log;
      table.set(this.chances(force, cell), suspectAt(block, place, k) * PULLS);
    }
  }

  fillReversed(table: PullTable, block: SuspectBlock, place: number): void {
    table.set(this.chances(this.solved(block, place, 0), 0), suspectAt(block, place, 0) * PULLS);
  }

  /** Joints are solved some severities apart; between two of them the pull lies between theirs. */
  fillBreak(table: PullTable, block: SuspectBlock, place: number, soundN: number): void {
    const last = block.severities.length - 1;
    const hardest = this.solved(block, place, last);
    if (Math.abs(size(hardest) - soundN) < NOT_FELT_N) return;
    const put = (severity: number, force: StripForce) =>
      table.set(this.chances(force, 0), suspectAt(block, place, severity) * PULLS);
    put(last, hardest);
    let lighter: StripForce | null = null;
    const step = last > FINE_LIST ? JOINTS_APART : 1;
    for (let from = 0; from < last; from += step) {
      const to = Math.min(from + step, last - 1);
      const low: StripForce = lighter ?? this.solved(block, place, from);
      const high: StripForce = to === from ? low : this.solved(block, place, to);
      for (let k = from; k <= to; k++) put(k, between(low, high, to === from ? 0 : (k - from) / (to - from)));
      lighter = high;
    }
  }

  /** @param cellSd spread of the pull's logarithm that comes from the step between severities */
  chances(force: StripForce, cellSd: number): Float32Array {
    const out = new Float32Array(PULLS);
    const sd = Math.hypot(PULL_SD, cellSd);
    const gapM = this.held.heightMm / 1000;
    for (const z of QUANTILES) {
      const scale = Math.exp(z * sd);
      const scaled = {
        meanN: force.meanN * scale,
        alternatingN: force.alternatingN * scale,
        tangentialN: force.tangentialN * scale,
      };
      out[feel(scaled, gapM, this.dictionary.mains.hz).pull]! += 1 / QUANTILES.length;
    }
    return out;
  }

  private across(block: SuspectBlock, nth: number, place: number): (ohm: number) => TipPotentials {
    const { dictionary, supply, links } = this;
    const { depth, mains } = dictionary;
    if (block.kind === 'bridge') return this.whole.across(dictionary.bridgePort(place), supply, links, depth);
    const { network, port } = dictionary.dividedAt(nth, place);
    const { divided, potentials } = dictionary.at(this.step);
    const field = new StripField(network, divided[nth]![place]!, potentials, mains.hz);
    return field.across(port, supply, links, depth);
  }

  /** Solved afresh: for the few suspects that change more than one place of the circuit. */
  private solved(block: SuspectBlock, place: number, severity: number): StripForce {
    const { angleDeg, heightMm, excitation } = this.held;
    const rotationRad = this.dictionary.rotationRad(this.step);
    const point = this.dictionary.solve(block, place, severity, { rotationRad, excitation });
    return point.strip(angleDeg, heightMm / 1000);
  }

  private look(): StripLinks {
    const { design, growler } = this.dictionary;
    const { shift } = this.dictionary.at(this.step).potentials;
    const rotation = this.dictionary.rotationRad(this.step) - (2 * Math.PI * shift) / design.slots;
    const links = newStripLinks(design.slots);
    lookAtStrip(design, growler, rotation, this.held.angleDeg, this.held.heightMm / 1000, links);
    return links;
  }

  private force(u: TipPotentials): StripForce {
    return pullOf(this.links, this.dictionary.depth, u);
  }
}
