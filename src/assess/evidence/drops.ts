import type { LoopSolution } from '../../engine/circuit/loopSolution.ts';
import { DROP_END_MV, FEED_A, FEED_MOST_V } from '../../engine/instruments/millivoltDrop.ts';
import { factorLu, solveLu } from '../../engine/math/realLu.ts';
import { alterationOf } from './alterations.ts';
import type { Dictionary, Standing } from './dictionary.ts';
import type { Port } from './joints.ts';
import { remembered } from './memory.ts';
import { cellsOf } from './needles.ts';
import type { DropLaid } from './reading.ts';
import { type SuspectBlock, suspectAt } from './suspects.ts';
import { type Alteration, CUT_OFF_OHM, frontOhm, NOTHING } from './thevenin.ts';

/** Drops between two bars under a steady current fed in at two bars, worked out for every suspect. */

/** Ways of laying feed and meter that are remembered; thirty kilobytes each. */
const REMEMBERED = 128;

/** What the millivoltmeter would show, mV up to the end of its scale, and its spread between severities, by suspect. */
export interface DropTable {
  readonly millivolts: Float64Array;
  readonly cells: Float64Array;
}

/** Drops of one type of armature: a core turned by a slot is the same to a steady current too. */
export class DropTables {
  readonly dictionary: Dictionary;
  private readonly tables = new Map<string, DropTable>();

  constructor(dictionary: Dictionary) {
    this.dictionary = dictionary;
  }

  /** By suspect, with the armature turned back so that the feed begins in the first slot. */
  turnedBack({ feed, bars }: DropLaid): { readonly table: DropTable; readonly standing: Standing } {
    const { dictionary } = this;
    const standing = dictionary.standingOf(feed[0]);
    const back = (pair: readonly [number, number]) =>
      pair.map((bar) => dictionary.turnedBack(bar, standing)) as [number, number];
    const laid: DropLaid = { feed: back(feed), bars: back(bars) };
    const key = `${laid.feed} ${laid.bars}`;
    return { table: remembered(this.tables, key, REMEMBERED, () => dropTable(dictionary, laid)), standing };
  }

  /** By suspect as it lies. */
  at(laid: DropLaid): DropTable {
    const { table, standing } = this.turnedBack(laid);
    const numbers = this.dictionary.turnedBackSuspects(standing);
    const here = (values: Float64Array) => values.map((_, k) => values[numbers[k]!]!);
    return { millivolts: here(table.millivolts), cells: here(table.cells) };
  }
}

function dropTable(dictionary: Dictionary, laid: DropLaid): DropTable {
  const { suspects, design, winding } = dictionary;
  const { jointed, divided } = dictionary.steady();
  const whole = new DropPair(jointed, design.bars, laid);
  const millivolts = new Float64Array(suspects.count);
  millivolts[0] = shownMv(whole.volt(NOTHING));
  suspects.blocks.forEach((block, nth) => {
    for (let place = 0; place < design.bars; place++) {
      const own = divided[nth]![place];
      const pair = own === undefined ? whole : new DropPair(own, design.bars, laid);
      const port = own === undefined ? null : dictionary.dividedAt(nth, place).port;
      const altered = (severity: number) =>
        port === null
          ? alterationOf(design, winding, block, place, severity)
          : shortAt(port, block, severity);
      block.severities.forEach((_, severity) => {
        millivolts[suspectAt(block, place, severity)] = shownMv(pair.volt(altered(severity)));
      });
    }
  });
  return { millivolts, cells: cellsOf(millivolts, suspects.blocks) };
}

function shortAt(port: Port, { severities }: SuspectBlock, severity: number): Alteration {
  return { ports: [port], inverse: [severities[severity]!.ohm as number], inFront: [] };
}

export function shownMv(volt: number): number {
  return Math.min(DROP_END_MV, 1000 * Math.abs(volt));
}

/** Most ports an alteration may have: four reversed coils. */
const MOST_PORTS = 16;
/** Current through each port for an ampere fed in, and room to work it out. */
const through = new Float64Array(MOST_PORTS);
const matrices = Array.from({ length: MOST_PORTS + 1 }, (_, k) => new Float64Array(k * k));

/** Works out the drop between one pair of bars under one feed in one solved winding. */
export class DropPair {
  private readonly z: Float64Array;
  private readonly nodes: number;
  private readonly bars: number;
  private readonly feed: Port;
  private readonly meter: readonly [number, number];

  /** @param solution of the winding to a steady current */
  constructor(solution: LoopSolution, bars: number, { feed: [a, b], bars: meter }: DropLaid) {
    this.z = solution.zRe;
    this.nodes = solution.tRe.length;
    this.bars = bars;
    this.feed = { a, b, outside: true };
    this.meter = meter;
  }

  /** Drop with the winding altered as told, V; the feed drives what its own most voltage allows. */
  volt(alteration: Alteration): number {
    const { feed, meter } = this;
    this.findThrough(alteration);
    const [from, to] = [this.outside(feed.a, alteration), this.outside(feed.b, alteration)];
    const amps = Math.min(FEED_A, FEED_MOST_V / Math.max(from - to, Number.MIN_VALUE));
    const along = meter[0] === feed.a && meter[1] === feed.b;
    return (
      amps * (along ? from - to : this.touched(meter[0], alteration) - this.touched(meter[1], alteration))
    );
  }

  private findThrough({ ports, inverse, inFront }: Alteration): void {
    const k = ports.length;
    const matrix = matrices[k]!;
    for (let i = 0; i < k; i++) {
      const p = ports[i]!;
      through[i] = this.between(p, this.feed) + front(p, this.feed, inFront);
      for (let j = 0; j < k; j++)
        matrix[i * k + j] = this.between(p, ports[j]!) + front(p, ports[j]!, inFront);
      matrix[i * k + i]! += inverse[i]!;
    }
    if (k === 1) through[0]! /= matrix[0]!;
    else if (k > 1) solveLu(factorLu(matrix, k), through);
  }

  /** Potential that a tip on a bar finds for an ampere fed in, V. */
  private touched(bar: number, alteration: Alteration): number {
    return this.floats(bar, alteration) ? this.drifting(bar, alteration) : this.outside(bar, alteration);
  }

  /** Potential on the surface of a bar for an ampere fed in, V. */
  private outside(bar: number, { ports, inFront }: Alteration): number {
    let volt = this.fedAt(bar, this.feed);
    for (let i = 0; i < ports.length; i++) volt -= through[i]! * this.fedAt(bar, ports[i]!);
    for (const { bar: spoilt, ohm } of inFront) if (spoilt === bar) volt += ohm * this.enters(bar, ports);
    return volt;
  }

  /** Current from outside into a bar for an ampere fed in, A. */
  private enters(bar: number, ports: readonly Port[]): number {
    let amps = ends(this.feed, bar);
    for (let i = 0; i < ports.length; i++) if (ports[i]!.outside) amps -= through[i]! * ends(ports[i]!, bar);
    return amps;
  }

  /** Cut off from the winding and touched by nothing else. */
  private floats(bar: number, { ports, inFront }: Alteration): boolean {
    const isCut = inFront.some((spoilt) => spoilt.bar === bar && spoilt.ohm >= CUT_OFF_OHM);
    return isCut && ends(this.feed, bar) === 0 && !ports.some((p) => p.outside && ends(p, bar) !== 0);
  }

  /** What leaks through sound insulation leaves such a bar at the mean of all others. */
  private drifting(bar: number, alteration: Alteration): number {
    let sum = 0;
    for (let other = 0; other < this.bars; other++) if (other !== bar) sum += this.outside(other, alteration);
    return sum / (this.bars - 1);
  }

  private fedAt(node: number, { a, b }: Port): number {
    return this.z[node * this.nodes + a]! - this.z[node * this.nodes + b]!;
  }

  private between({ a, b }: Port, q: Port): number {
    return this.fedAt(a, q) - this.fedAt(b, q);
  }
}

function front(p: Port, q: Port, inFront: Alteration['inFront']): number {
  return inFront.length === 0 ? 0 : frontOhm(p, q, inFront);
}

function ends({ a, b }: Port, bar: number): number {
  return (a === bar ? 1 : 0) - (b === bar ? 1 : 0);
}
