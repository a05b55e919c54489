import { type ComplexLu, factorComplex, newComplexLu, solveComplex } from '../math/complexLu.ts';
import { type Forest, spanningForest } from './forest.ts';
import type { Inductances } from './inductance.ts';
import { type CircuitBranches, LoopMatrices } from './loopMatrices.ts';

export type { CircuitBranches };

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
  /** What was solved: impedance round and between the loops (loops²), reactance to and of a growler turn, ohm. */
  readonly loopRe: Float64Array;
  readonly loopIm: Float64Array;
  readonly loopTurn: Float64Array;
  readonly turnOhm: number;
}

/** A solution whose arrays are written again at every solving. */
type Reused = { -readonly [K in keyof LoopSolution]: LoopSolution[K] };

/**
 * Loop form of a circuit of coupled coils and resistors. Branch currents are tree-path currents of what is fed in
 * plus loop currents: i = Q·J + P·y. Σ of volts round each loop is zero, so Pᵀ(Z·i + E) = 0 with Z = R + jωL.
 * Only the loops (the ring, and one for each fault that joins two places) need a complex factorisation; openings and
 * islands are exact because a missing branch is missing.
 */
export class LoopCircuit {
  readonly nodes: number;
  readonly forest: Forest;
  private readonly matrices: LoopMatrices;
  private readonly lu: ComplexLu;

  constructor(circuit: CircuitBranches) {
    this.nodes = circuit.nodes;
    this.forest = spanningForest(circuit.nodes, circuit.branches);
    this.matrices = new LoopMatrices(circuit, this.forest);
    this.lu = newComplexLu(this.loops);
  }

  get loops(): number {
    return this.forest.cotree.length;
  }

  /** Other resistances for the same branches, ohm: coils warm up. Holds for every later solving. */
  setOhms(ohms: ArrayLike<number>): void {
    this.matrices.gatherOhms(ohms);
  }

  /** Room for a solution, to be handed to `solve` again and again. */
  newSolution(): LoopSolution {
    const n = this.nodes;
    const k = this.loops;
    const array = (size: number) => new Float64Array(size);
    return {
      zRe: array(n * n),
      zIm: array(n * n),
      tRe: array(n),
      tIm: array(n),
      yRe: array(k),
      yIm: array(k),
      xRe: array(k * n),
      xIm: array(k * n),
      ownRe: 0,
      ownIm: 0,
      loopRe: array(k * k),
      loopIm: array(k * k),
      loopTurn: array(k),
      turnOhm: 0,
    };
  }

  /**
   * @param omega rad/s  @param ownHenry inductance of one turn of the growler winding, H
   * @param into  a solution made by `newSolution` whose contents are no longer wanted; left out, a new one is made
   */
  solve(l: Inductances, omega: number, ownHenry: number, into = this.newSolution()): LoopSolution {
    this.matrices.gatherHenries(l);
    this.factorLoops(omega, into);
    this.respondToFeeding(omega, into);
    this.respondToGrowler(omega, ownHenry, into);
    return into;
  }

  private factorLoops(omega: number, { loopRe, loopIm }: LoopSolution): void {
    const { loopOhm, loopHenry } = this.matrices;
    loopRe.set(loopOhm);
    for (let i = 0; i < loopIm.length; i++) loopIm[i] = omega * loopHenry[i]!;
    this.lu.re.set(loopRe);
    this.lu.im.set(loopIm);
    factorComplex(this.lu);
  }

  /** Node impedances with the growler open: Qᵀ·Z·Q − Bᵀ·(PᵀZP)⁻¹·B with B = PᵀZQ. */
  private respondToFeeding(omega: number, { zRe, zIm, xRe, xIm }: LoopSolution): void {
    const { pathOhm, pathHenry, loopNodeOhm: bRe, loopNodeReactance: bIm, loopNodeHenry } = this.matrices;
    const n = this.nodes;
    const k = this.loops;
    for (let i = 0; i < k * n; i++) bIm[i] = omega * loopNodeHenry[i]!;
    xRe.set(bRe);
    xIm.set(bIm);
    solveComplex(this.lu, xRe, xIm, n);
    // The matrix is symmetric: worked out below the diagonal, copied above it.
    for (let a = 0; a < n; a++) {
      const row = a * n;
      for (let b = 0; b <= a; b++) {
        zRe[row + b] = pathOhm[row + b]!;
        zIm[row + b] = omega * pathHenry[row + b]!;
      }
      for (let q = 0; q < k; q++)
        subtractRow(zRe, zIm, row, bRe[q * n + a]!, bIm[q * n + a]!, xRe, xIm, q * n, a + 1);
    }
    mirror(zRe, n);
    mirror(zIm, n);
  }

  /** Loop currents, node volts and the growler's own volts per turn for one ampere-turn in it. */
  private respondToGrowler(omega: number, ownHenry: number, into: Reused): void {
    const { loopGrowler, pathGrowler, loopNodeOhm: bRe, loopNodeReactance: bIm } = this.matrices;
    const { yRe, yIm, tRe, tIm, loopTurn } = into;
    const n = this.nodes;
    const k = this.loops;
    for (let i = 0; i < k; i++) {
      loopTurn[i] = omega * loopGrowler[i]!;
      yRe[i] = 0;
      yIm[i] = -loopTurn[i]!;
    }
    solveComplex(this.lu, yRe, yIm, 1);
    for (let m = 0; m < n; m++) {
      tRe[m] = 0;
      tIm[m] = omega * pathGrowler[m]!;
    }
    let ownRe = 0;
    let ownIm = omega * ownHenry;
    for (let i = 0; i < k; i++) {
      for (let m = 0; m < n; m++) {
        tRe[m] = tRe[m]! + bRe[i * n + m]! * yRe[i]! - bIm[i * n + m]! * yIm[i]!;
        tIm[m] = tIm[m]! + bRe[i * n + m]! * yIm[i]! + bIm[i * n + m]! * yRe[i]!;
      }
      ownRe -= loopTurn[i]! * yIm[i]!;
      ownIm += loopTurn[i]! * yRe[i]!;
    }
    into.turnOhm = omega * ownHenry;
    into.ownRe = ownRe;
    into.ownIm = ownIm;
  }

  /**
   * Currents of all branches from loop currents and currents fed in at nodes; the fed currents of an island must
   * add up to zero. Consumes `fed`.
   */
  branchCurrents(loop: Float64Array, fed: Float64Array): Float64Array {
    const { order, parent, edge, sign, cotree } = this.forest;
    const { from, to } = this.matrices;
    const currents = new Float64Array(from.length);
    for (let i = 0; i < this.loops; i++) {
      const c = cotree[i]!;
      currents[c] = loop[i]!;
      fed[to[c]!]! += loop[i]!;
      fed[from[c]!]! -= loop[i]!;
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

/** z[row..] −= b·x[from..], complex, `count` elements. */
function subtractRow(
  zRe: Float64Array,
  zIm: Float64Array,
  row: number,
  bRe: number,
  bIm: number,
  xRe: Float64Array,
  xIm: Float64Array,
  from: number,
  count: number,
): void {
  for (let c = 0; c < count; c++) {
    const xr = xRe[from + c]!;
    const xi = xIm[from + c]!;
    zRe[row + c] = zRe[row + c]! - (bRe * xr - bIm * xi);
    zIm[row + c] = zIm[row + c]! - (bRe * xi + bIm * xr);
  }
}

function mirror(z: Float64Array, n: number): void {
  for (let a = 1; a < n; a++) for (let b = 0; b < a; b++) z[b * n + a] = z[a * n + b]!;
}
