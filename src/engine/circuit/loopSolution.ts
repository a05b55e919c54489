import { type ComplexLu, factorComplex, newComplexLu, solveComplex } from '../math/complexLu.ts';
import { type Forest, spanningForest } from './forest.ts';
import type { Inductances } from './inductance.ts';

/** A circuit in loop form wants of each branch its nodes and its resistance; inductive branches come first. */
export interface CircuitBranches {
  readonly nodes: number;
  readonly branches: readonly { readonly from: number; readonly to: number; readonly ohm: number }[];
  readonly inductive: number;
}

/**
 * The winding solved for one ampere-turn in the growler and for a current fed in at any node, at one frequency and
 * one rotation. Nothing in it depends on the growler's turns, resistance or volts: those come in afterwards, because
 * the growler's input impedance less its own resistance is the same whatever that resistance is.
 */
export interface LoopSolution {
  /** Impedance matrix of the nodes with the growler winding open, each island against its root, ohm; nodes². */
  readonly zRe: Float64Array;
  readonly zIm: Float64Array;
  /** Open-circuit volts of the nodes per ampere-turn in the growler, against the island's root. */
  readonly tRe: Float64Array;
  readonly tIm: Float64Array;
  /** Loop currents per ampere-turn, and per ampere fed in at each node (loops×nodes). */
  readonly yRe: Float64Array;
  readonly yIm: Float64Array;
  readonly xRe: Float64Array;
  readonly xIm: Float64Array;
  /** Volts per turn of the growler winding per ampere-turn: jω·L with the armature's reaction. */
  readonly ownRe: number;
  readonly ownIm: number;
}

/**
 * Loop form of a circuit of coupled coils and resistors. Branch currents are tree-path currents of what is fed in
 * plus loop currents: i = Q·J + P·y. Σ of volts round each loop is zero, so Pᵀ(Z·i + E) = 0 with Z = R + jωL.
 * Only the loops (the ring, and one for each fault that joins two places) need a complex factorisation; openings and
 * islands are exact because a missing branch is missing.
 */
export class LoopCircuit {
  readonly nodes: number;
  readonly forest: Forest;
  private readonly circuit: CircuitBranches;
  /** Resistance common to the tree paths of two nodes, nodes²; loop against node, loop against loop. */
  private readonly pathOhm: Float64Array;
  private readonly loopNodeOhm: Float64Array;
  private readonly loopOhm: Float64Array;
  /** The same for inductance, filled at every solution; L·Q by node, and the growler's coupling. */
  private readonly reach: Float64Array;
  private readonly pathHenry: Float64Array;
  private readonly loopNodeHenry: Float64Array;
  private readonly loopHenry: Float64Array;
  private readonly pathGrowler: Float64Array;
  private readonly loopGrowler: Float64Array;
  private readonly lu: ComplexLu;

  constructor(circuit: CircuitBranches) {
    this.circuit = circuit;
    this.nodes = circuit.nodes;
    this.forest = spanningForest(circuit.nodes, circuit.branches);
    const n = this.nodes;
    const k = this.loops;
    this.pathOhm = new Float64Array(n * n);
    this.loopNodeOhm = new Float64Array(k * n);
    this.loopOhm = new Float64Array(k * k);
    this.reach = new Float64Array(n * circuit.inductive);
    this.pathHenry = new Float64Array(n * n);
    this.loopNodeHenry = new Float64Array(k * n);
    this.loopHenry = new Float64Array(k * k);
    this.pathGrowler = new Float64Array(n);
    this.loopGrowler = new Float64Array(k);
    this.lu = newComplexLu(k);
    this.gatherOhms();
  }

  get loops(): number {
    return this.forest.cotree.length;
  }

  /** @param omega rad/s  @param ownHenry inductance of one turn of the growler winding, H */
  solve(l: Inductances, omega: number, ownHenry: number): LoopSolution {
    this.gatherHenries(l);
    this.factorLoops(omega);
    const fed = this.respondToFeeding(omega);
    const turn = this.respondToGrowler(omega, fed.bRe, fed.bIm, ownHenry);
    return { ...fed.solution, ...turn };
  }

  private gatherOhms(): void {
    const { order, parent, edge, island } = this.forest;
    const n = this.nodes;
    // A node's path is its parent's path and one branch more, so it shares with any earlier node what its parent does.
    for (const child of order) {
      const p = parent[child]!;
      if (p < 0) continue;
      for (const other of order) {
        if (other === child) break;
        if (island[other] !== island[child]) continue;
        this.pathOhm[child * n + other] = this.pathOhm[p * n + other]!;
        this.pathOhm[other * n + child] = this.pathOhm[p * n + other]!;
      }
      const own = this.circuit.branches[edge[child]!]!.ohm;
      this.pathOhm[child * n + child] = this.pathOhm[p * n + p]! + own;
    }
    this.closeLoops(this.pathOhm, this.loopNodeOhm, this.loopOhm);
    const k = this.loops;
    for (let i = 0; i < k; i++)
      this.loopOhm[i * k + i]! += this.circuit.branches[this.forest.cotree[i]!]!.ohm;
  }

  /** Loop quantities from node quantities for a loop that runs a → b outside the tree and back b → a inside it. */
  private closeLoops(path: Float64Array, loopNode: Float64Array, loop: Float64Array): void {
    const n = this.nodes;
    const k = this.loops;
    for (let i = 0; i < k; i++) {
      const { from, to } = this.circuit.branches[this.forest.cotree[i]!]!;
      for (let m = 0; m < n; m++) loopNode[i * n + m]! += path[to * n + m]! - path[from * n + m]!;
    }
    for (let j = 0; j < k; j++) {
      const { from, to } = this.circuit.branches[this.forest.cotree[j]!]!;
      for (let i = 0; i < k; i++) loop[i * k + j]! += loopNode[i * n + to]! - loopNode[i * n + from]!;
    }
  }

  private gatherHenries(l: Inductances): void {
    this.gatherTree(l);
    const { cotree } = this.forest;
    const s = this.circuit.inductive;
    const n = this.nodes;
    const k = this.loops;
    this.loopHenry.fill(0);
    this.loopNodeHenry.fill(0);
    for (let i = 0; i < k; i++) {
      const c = cotree[i]!;
      const { from, to } = this.circuit.branches[c]!;
      this.loopGrowler[i] = (c < s ? l.growler[c]! : 0) + this.pathGrowler[to]! - this.pathGrowler[from]!;
      if (c < s) for (let m = 0; m < n; m++) this.loopNodeHenry[i * n + m] = this.reach[m * s + c]!;
      for (let j = 0; j < k; j++)
        this.loopHenry[i * k + j] = this.loopReach(l.mutual, c, from, to, cotree[j]!);
    }
    this.closeLoops(this.pathHenry, this.loopNodeHenry, this.loopHenry);
  }

  /** Linkage of branch `d` with one ampere round the loop of cotree branch `c`. */
  private loopReach(mutual: Float64Array, c: number, from: number, to: number, d: number): number {
    const s = this.circuit.inductive;
    if (d >= s) return 0;
    const own = c < s ? mutual[c * s + d]! : 0;
    return own + this.reach[to * s + d]! - this.reach[from * s + d]!;
  }

  /** L·Q, Qᵀ·L·Q and Qᵀ·l by walking the trees from their roots: additions only. */
  private gatherTree(l: Inductances): void {
    const { order, parent, edge, sign } = this.forest;
    const s = this.circuit.inductive;
    const n = this.nodes;
    const { reach, pathHenry, pathGrowler } = this;
    for (const child of order) {
      const p = parent[child]!;
      const e = edge[child]!;
      const g = sign[child]!;
      if (p < 0) {
        reach.fill(0, child * s, (child + 1) * s);
        pathGrowler[child] = 0;
      } else if (e < s) {
        for (let q = 0; q < s; q++) reach[child * s + q] = reach[p * s + q]! + g * l.mutual[e * s + q]!;
        pathGrowler[child] = pathGrowler[p]! + g * l.growler[e]!;
      } else {
        reach.copyWithin(child * s, p * s, (p + 1) * s);
        pathGrowler[child] = pathGrowler[p]!;
      }
    }
    for (const child of order) {
      const p = parent[child]!;
      const e = edge[child]!;
      const g = sign[child]!;
      if (p < 0) pathHenry.fill(0, child * n, (child + 1) * n);
      else if (e < s)
        for (let m = 0; m < n; m++) pathHenry[child * n + m] = pathHenry[p * n + m]! + g * reach[m * s + e]!;
      else pathHenry.copyWithin(child * n, p * n, (p + 1) * n);
    }
  }

  private factorLoops(omega: number): void {
    this.lu.re.set(this.loopOhm);
    for (let i = 0; i < this.loopHenry.length; i++) this.lu.im[i] = omega * this.loopHenry[i]!;
    factorComplex(this.lu);
  }

  /** Node impedances with the growler open: Qᵀ·Z·Q − Bᵀ·(PᵀZP)⁻¹·B with B = PᵀZQ. */
  private respondToFeeding(omega: number) {
    const n = this.nodes;
    const k = this.loops;
    const bRe = this.loopNodeOhm;
    const bIm = new Float64Array(k * n);
    for (let i = 0; i < k * n; i++) bIm[i] = omega * this.loopNodeHenry[i]!;
    const xRe = bRe.slice();
    const xIm = bIm.slice();
    solveComplex(this.lu, xRe, xIm, n);
    const zRe = this.pathOhm.slice();
    const zIm = new Float64Array(n * n);
    for (let i = 0; i < n * n; i++) zIm[i] = omega * this.pathHenry[i]!;
    for (let q = 0; q < k; q++) {
      for (let a = 0; a < n; a++) {
        const br = bRe[q * n + a]!;
        const bi = bIm[q * n + a]!;
        for (let b = 0; b < n; b++) {
          const xr = xRe[q * n + b]!;
          const xi = xIm[q * n + b]!;
          zRe[a * n + b] = zRe[a * n + b]! - (br * xr - bi * xi);
          zIm[a * n + b] = zIm[a * n + b]! - (br * xi + bi * xr);
        }
      }
    }
    return { bRe, bIm, solution: { zRe, zIm, xRe, xIm } };
  }

  /** Loop currents, node volts and the growler's own volts per turn for one ampere-turn in it. */
  private respondToGrowler(omega: number, bRe: Float64Array, bIm: Float64Array, ownHenry: number) {
    const n = this.nodes;
    const k = this.loops;
    const yRe = new Float64Array(k);
    const yIm = new Float64Array(k);
    for (let i = 0; i < k; i++) yIm[i] = -omega * this.loopGrowler[i]!;
    solveComplex(this.lu, yRe, yIm, 1);
    const tRe = new Float64Array(n);
    const tIm = new Float64Array(n);
    for (let m = 0; m < n; m++) tIm[m] = omega * this.pathGrowler[m]!;
    let ownRe = 0;
    let ownIm = omega * ownHenry;
    for (let i = 0; i < k; i++) {
      for (let m = 0; m < n; m++) {
        tRe[m] = tRe[m]! + bRe[i * n + m]! * yRe[i]! - bIm[i * n + m]! * yIm[i]!;
        tIm[m] = tIm[m]! + bRe[i * n + m]! * yIm[i]! + bIm[i * n + m]! * yRe[i]!;
      }
      ownRe -= omega * this.loopGrowler[i]! * yIm[i]!;
      ownIm += omega * this.loopGrowler[i]! * yRe[i]!;
    }
    return { yRe, yIm, tRe, tIm, ownRe, ownIm };
  }

  /**
   * Currents of all branches from loop currents and currents fed in at nodes; the fed currents of an island must
   * add up to zero. Consumes `fed`.
   */
  branchCurrents(loop: Float64Array, fed: Float64Array): Float64Array {
    const { order, parent, edge, sign, cotree } = this.forest;
    const currents = new Float64Array(this.circuit.branches.length);
    for (let i = 0; i < this.loops; i++) {
      const c = cotree[i]!;
      const { from, to } = this.circuit.branches[c]!;
      currents[c] = loop[i]!;
      fed[to]! += loop[i]!;
      fed[from]! -= loop[i]!;
    }
    for (let i = order.length - 1; i >= 0; i--) {
      const child = order[i]!;
      const p = parent[child]!;
      if (p < 0) continue;
      currents[edge[child]!] = sign[child]! * fed[child]!;
      fed[p]! += fed[child]!;
    }
    return currents;
  }
}
