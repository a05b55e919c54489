import type { TablePlace } from '../magnetics/slotTable.ts';
import { type ComplexLu, factorComplex, newComplexLu, solveComplex } from '../math/complexLu.ts';
import type { ArmatureDesign } from '../parts/armature.ts';
import { leakages } from './inductance.ts';
import type { LoopCircuit } from './loopSolution.ts';
import type { Topology } from './topology.ts';

/** The growler's turn and a pair of bars: volts per turn of one ampere-turn, volts of the pair, impedance of the pair. */
export interface TurnAndPair {
  ownRe: number;
  ownIm: number;
  tRe: number;
  tIm: number;
  zRe: number;
  zIm: number;
}

export function newTurnAndPair(): TurnAndPair {
  return { ownRe: 0, ownIm: 0, tRe: 0, tIm: 0, zRe: 0, zIm: 0 };
}

/** Complex numbers, one for each loop. */
export interface Column {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/** A way through the winding: what one ampere along it drives. */
interface Way {
  /** Slots it has turns in, and how many: each slot once. */
  readonly slots: Int32Array;
  readonly turns: Float64Array;
  /** Resistance and leakage it shares with every loop and, last, with itself, ohm and H. */
  readonly ohm: Float64Array;
  readonly leak: Float64Array;
  /** The resistances of the branches that `ohm` was made of. */
  ohms: ArrayLike<number>;
  /** Current in every branch. */
  readonly branches: Float64Array;
  /** Slots in which its linkage is wanted: its own and those of the loops. */
  readonly wanted: Int32Array;
  /** Its linkage with one ampere-turn of the growler (0) and one ampere in each of these slots (1 + slot), H per metre. */
  readonly linkage: Float64Array;
}

/**
 * One pair of bars at a rotation without solving all the others: only the loops and the way from bar to bar are
 * needed, and each has turns in few slots. A ring has none that do not cancel.
 */
export class PairProbe {
  /** Impedance round and between the loops, ohm; loops². */
  readonly loopRe: Float64Array;
  readonly loopIm: Float64Array;
  /** Reactance between each loop and a turn of the growler, and of that turn to itself, ohm. */
  readonly loopTurn: Float64Array;
  turnOhm = 0;
  /** Volts per turn of the growler winding per ampere-turn: jω·L with the armature's reaction. */
  ownRe = 0;
  ownIm = 0;
  /** Currents of the loops per ampere-turn of the growler, and per ampere out of and into the pair last asked for. */
  readonly perTurn: Column;
  readonly perAmpere: Column;
  private readonly a: ArmatureDesign;
  private readonly depth: number;
  private readonly topology: Topology;
  private readonly circuit: LoopCircuit;
  private ohms: ArrayLike<number>;
  private readonly leakage: Float64Array;
  private readonly loops: readonly Way[];
  private readonly pairs = new Map<number, Way>();
  private readonly lu: ComplexLu;
  private readonly b: Column;
  private place!: TablePlace;
  private omega = 0;

  /** @param ohms resistance of every branch as warm as it is */
  constructor(
    a: ArmatureDesign,
    depth: number,
    topology: Topology,
    circuit: LoopCircuit,
    ohms: ArrayLike<number>,
  ) {
    const k = circuit.loops;
    const column = (): Column => ({ re: new Float64Array(k), im: new Float64Array(k) });
    this.a = a;
    this.depth = depth;
    this.topology = topology;
    this.circuit = circuit;
    this.ohms = ohms;
    this.leakage = leakages(a, topology);
    const round = Array.from({ length: k }, (_, i) => {
      const loop = new Float64Array(k);
      loop[i] = 1;
      return circuit.branchCurrents(loop, new Float64Array(circuit.nodes));
    });
    const looped = new Set(round.flatMap((branches) => Array.from(this.slotsOf(branches).keys())));
    this.loops = round.map((branches) => this.way(branches, round, looped));
    this.lu = newComplexLu(k);
    this.loopRe = new Float64Array(k * k);
    this.loopIm = new Float64Array(k * k);
    this.loopTurn = new Float64Array(k);
    this.perTurn = column();
    this.perAmpere = column();
    this.b = column();
  }

  /** Other resistances for the same branches, ohm: coils warm up. Holds from the next turning on. */
  setOhms(ohms: ArrayLike<number>): void {
    this.ohms = ohms;
  }

  /**
   * Turns the armature.
   * @param ends leakage of the growler winding's ends, H  @param omega rad/s
   */
  turnTo(place: TablePlace, ends: number, omega: number): void {
    this.place = place;
    this.omega = omega;
    for (const loop of this.loops) this.link(loop);
    this.factor();
    const { perTurn: y, loops, loopTurn, depth } = this;
    for (let i = 0; i < loops.length; i++) {
      loopTurn[i] = omega * depth * loops[i]!.linkage[0]!;
      y.re[i] = 0;
      y.im[i] = -loopTurn[i]!;
    }
    solveComplex(this.lu, y.re, y.im, 1);
    this.turnOhm = omega * (depth * this.own() + ends);
    this.ownRe = 0;
    this.ownIm = this.turnOhm;
    for (let i = 0; i < loops.length; i++) {
      this.ownRe -= loopTurn[i]! * y.im[i]!;
      this.ownIm += loopTurn[i]! * y.re[i]!;
    }
  }

  /** Whether anything joins two nodes. */
  joined(from: number, to: number): boolean {
    const { island } = this.circuit.forest;
    return island[from] === island[to];
  }

  /** The growler's turn and the pair from → to, which must be joined. */
  ask(from: number, to: number, into: TurnAndPair): void {
    const way = this.wayBetween(from, to);
    this.link(way);
    const { omega, depth, loops, b, perAmpere: x, perTurn: y } = this;
    const k = loops.length;
    for (let i = 0; i < k; i++) {
      b.re[i] = way.ohm[i]!;
      b.im[i] = omega * (way.leak[i]! + depth * along(loops[i]!, way.linkage));
    }
    x.re.set(b.re);
    x.im.set(b.im);
    solveComplex(this.lu, x.re, x.im, 1);
    into.ownRe = this.ownRe;
    into.ownIm = this.ownIm;
    into.tRe = 0;
    into.tIm = omega * depth * way.linkage[0]!;
    into.zRe = way.ohm[k]!;
    into.zIm = omega * (way.leak[k]! + depth * along(way, way.linkage));
    for (let i = 0; i < k; i++) {
      into.tRe += b.re[i]! * y.re[i]! - b.im[i]! * y.im[i]!;
      into.tIm += b.re[i]! * y.im[i]! + b.im[i]! * y.re[i]!;
      into.zRe -= b.re[i]! * x.re[i]! - b.im[i]! * x.im[i]!;
      into.zIm -= b.re[i]! * x.im[i]! + b.im[i]! * x.re[i]!;
    }
  }

  private own(): number {
    const { before, after, share } = this.place;
    return before.m[0]! + share * (after.m[0]! - before.m[0]!);
  }

  private factor(): void {
    const { lu, loops, loopRe, loopIm, omega, depth } = this;
    const k = loops.length;
    for (let i = 0; i < k; i++) {
      for (let j = 0; j < k; j++) {
        const { ohm, leak } = loops[i]!;
        const linked = along(loops[j]!, loops[i]!.linkage);
        loopRe[i * k + j] = ohm[j]!;
        loopIm[i * k + j] = omega * (leak[j]! + depth * linked);
      }
    }
    lu.re.set(loopRe);
    lu.im.set(loopIm);
    factorComplex(lu);
  }

  /** Fills a way's linkage: Σ turns·M of its slots as the armature stands. */
  private link(way: Way): void {
    if (way.ohms !== this.ohms) this.warm(way);
    const { slots, turns, wanted, linkage } = way;
    const { before, after, share, shift } = this.place;
    const s = this.a.slots;
    linkage[0] = 0;
    for (let c = 0; c < wanted.length; c++) linkage[1 + wanted[c]!] = 0;
    for (let k = 0; k < slots.length; k++) {
      const row = (1 + turned(slots[k]!, shift, s)) * (s + 1);
      const far = turns[k]! * share;
      const near = turns[k]! - far;
      linkage[0] = linkage[0]! + near * before.m[row]! + far * after.m[row]!;
      for (let c = 0; c < wanted.length; c++) {
        const at = row + 1 + turned(wanted[c]!, shift, s);
        const to = 1 + wanted[c]!;
        linkage[to] = linkage[to]! + near * before.m[at]! + far * after.m[at]!;
      }
    }
  }

  private warm(way: Way): void {
    way.ohms = this.ohms;
    this.loops.forEach((loop, i) => {
      way.ohm[i] = this.sharedOhm(way.branches, loop.branches);
    });
    way.ohm[this.loops.length] = this.sharedOhm(way.branches, way.branches);
  }

  private wayBetween(from: number, to: number): Way {
    const key = from * this.circuit.nodes + to;
    const known = this.pairs.get(key);
    if (known) return known;
    const fed = new Float64Array(this.circuit.nodes);
    fed[from] = 1;
    fed[to] = -1;
    const branches = this.circuit.branchCurrents(new Float64Array(this.circuit.loops), fed);
    const looped = new Set(this.loops.flatMap((loop) => Array.from(loop.slots)));
    const way = this.way(
      branches,
      this.loops.map((loop) => loop.branches),
      looped,
    );
    this.pairs.set(key, way);
    return way;
  }

  private way(branches: Float64Array, loops: readonly Float64Array[], looped: ReadonlySet<number>): Way {
    const turns = this.slotsOf(branches);
    const shared = [...loops, branches];
    return {
      slots: Int32Array.from(turns.keys()),
      turns: Float64Array.from(turns.values()),
      ohm: Float64Array.from(shared, (other) => this.sharedOhm(branches, other)),
      ohms: this.ohms,
      leak: Float64Array.from(shared, (other) => this.sharedLeakage(branches, other)),
      branches,
      wanted: Int32Array.from(new Set([...turns.keys(), ...looped])),
      linkage: new Float64Array(this.a.slots + 1),
    };
  }

  /** Turns in every slot that has any left. */
  private slotsOf(branches: Float64Array): Map<number, number> {
    const perSlot = new Float64Array(this.a.slots);
    this.topology.segments.forEach(({ topSlot, bottomSlot, top, bottom }, k) => {
      perSlot[topSlot]! += branches[k]! * top;
      perSlot[bottomSlot]! += branches[k]! * bottom;
    });
    return new Map([...perSlot.entries()].filter(([, turns]) => turns !== 0));
  }

  private sharedOhm(a: Float64Array, b: Float64Array): number {
    let sum = 0;
    for (let k = 0; k < a.length; k++) sum += a[k]! * b[k]! * this.ohms[k]!;
    return sum;
  }

  private sharedLeakage(a: Float64Array, b: Float64Array): number {
    const n = this.topology.windingSegments;
    let sum = 0;
    for (let i = 0; i < n; i++) {
      if (a[i] === 0 && b[i] === 0) continue;
      for (let j = 0; j < i; j++) sum += this.leakage[i * n + j]! * (a[i]! * b[j]! + a[j]! * b[i]!);
      sum += this.leakage[i * n + i]! * a[i]! * b[i]!;
    }
    return sum;
  }
}

/** Σ turns of a way times the linkage of another, per metre. */
function along({ slots, turns }: Way, linkage: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < slots.length; k++) sum += turns[k]! * linkage[1 + slots[k]!]!;
  return sum;
}

/** Place in the table of a slot, `shift` slots on. */
function turned(slot: number, shift: number, slots: number): number {
  const place = slot + shift;
  return place < slots ? place : place - slots;
}
