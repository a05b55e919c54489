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

/** A way through the winding: what one ampere along it drives. */
interface Way {
  /** Slots it has turns in, and how many: each slot once. */
  readonly slots: Int32Array;
  readonly turns: Float64Array;
  /** Resistance and leakage it shares with every loop and, last, with itself, ohm and H. */
  readonly ohm: Float64Array;
  readonly leak: Float64Array;
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
  private readonly a: ArmatureDesign;
  private readonly depth: number;
  private readonly topology: Topology;
  private readonly circuit: LoopCircuit;
  private readonly ohms: ArrayLike<number>;
  private readonly leakage: Float64Array;
  private readonly loops: readonly Way[];
  private readonly pairs = new Map<number, Way>();
  private readonly lu: ComplexLu;
  private readonly y: { readonly re: Float64Array; readonly im: Float64Array };
  private readonly b: { readonly re: Float64Array; readonly im: Float64Array };
  private readonly x: { readonly re: Float64Array; readonly im: Float64Array };
  private place!: TablePlace;
  private omega = 0;
  private ownRe = 0;
  private ownIm = 0;

  /** @param ohms resistance of every branch as warm as it is */
  constructor(
    a: ArmatureDesign,
    depth: number,
    topology: Topology,
    circuit: LoopCircuit,
    ohms: ArrayLike<number>,
  ) {
    const k = circuit.loops;
    const column = () => ({ re: new Float64Array(k), im: new Float64Array(k) });
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
    this.y = column();
    this.b = column();
    this.x = column();
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
    const { y, loops, depth } = this;
    this.ownRe = 0;
    this.ownIm = omega * (depth * this.own() + ends);
    loops.forEach(({ linkage }, i) => {
      y.re[i] = 0;
      y.im[i] = -omega * depth * linkage[0]!;
    });
    solveComplex(this.lu, y.re, y.im, 1);
    for (let i = 0; i < loops.length; i++) {
      const turn = omega * depth * loops[i]!.linkage[0]!;
      this.ownRe -= turn * y.im[i]!;
      this.ownIm += turn * y.re[i]!;
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
    const { omega, depth, loops, b, x, y } = this;
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
    const { lu, loops, omega, depth } = this;
    const k = loops.length;
    for (let i = 0; i < k; i++) {
      for (let j = 0; j < k; j++) {
        const { ohm, leak } = loops[i]!;
        const linked = along(loops[j]!, loops[i]!.linkage);
        lu.re[i * k + j] = ohm[j]!;
        lu.im[i * k + j] = omega * (leak[j]! + depth * linked);
      }
    }
    factorComplex(lu);
  }

  /** Fills a way's linkage: Σ turns·M of its slots as the armature stands. */
  private link({ slots, turns, wanted, linkage }: Way): void {
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
    return a.reduce((sum, amps, k) => sum + amps * b[k]! * this.ohms[k]!, 0);
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
