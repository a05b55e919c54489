import type { Forest } from './forest.ts';
import type { Inductances } from './inductance.ts';

/** A circuit in loop form wants of each branch its nodes and its resistance; inductive branches come first. */
export interface CircuitBranches {
  readonly nodes: number;
  readonly branches: readonly { readonly from: number; readonly to: number; readonly ohm: number }[];
  readonly inductive: number;
}

/**
 * Resistances and inductances of a circuit seen along tree paths and round loops: QᵀXQ, PᵀXQ and PᵀXP for X = R and
 * X = L. Filled again at every rotation, in place, by walking the trees from their roots: additions only.
 */
export class LoopMatrices {
  /** Nodes of each branch. */
  readonly from: Int32Array;
  readonly to: Int32Array;
  /** Resistance common to the tree paths of two nodes, nodes²; loop against node, loops×nodes; loop against loop. */
  readonly pathOhm: Float64Array;
  readonly loopNodeOhm: Float64Array;
  readonly loopOhm: Float64Array;
  /** The same for inductance, and the growler's coupling to paths and loops. */
  readonly pathHenry: Float64Array;
  readonly loopNodeHenry: Float64Array;
  readonly loopHenry: Float64Array;
  readonly pathGrowler: Float64Array;
  readonly loopGrowler: Float64Array;
  /** Scratch of the solution, loops×nodes. */
  readonly loopNodeReactance: Float64Array;
  private readonly circuit: CircuitBranches;
  private readonly forest: Forest;
  /** L·Q: linkage of every inductive branch with one ampere along the path of a node; nodes×inductive. */
  private readonly reach: Float64Array;

  constructor(circuit: CircuitBranches, forest: Forest) {
    const n = circuit.nodes;
    const k = forest.cotree.length;
    this.circuit = circuit;
    this.forest = forest;
    this.from = Int32Array.from(circuit.branches, (b) => b.from);
    this.to = Int32Array.from(circuit.branches, (b) => b.to);
    this.pathOhm = new Float64Array(n * n);
    this.loopNodeOhm = new Float64Array(k * n);
    this.loopOhm = new Float64Array(k * k);
    this.pathHenry = new Float64Array(n * n);
    this.loopNodeHenry = new Float64Array(k * n);
    this.loopHenry = new Float64Array(k * k);
    this.pathGrowler = new Float64Array(n);
    this.loopGrowler = new Float64Array(k);
    this.loopNodeReactance = new Float64Array(k * n);
    this.reach = new Float64Array(n * circuit.inductive);
    this.gatherOhms(circuit.branches.map((b) => b.ohm));
  }

  /** @param ohms resistance of every branch, ohm */
  gatherOhms(ohms: ArrayLike<number>): void {
    const { order, parent, edge, island, cotree } = this.forest;
    const { pathOhm, loopOhm, loopNodeOhm } = this;
    const n = this.circuit.nodes;
    pathOhm.fill(0);
    loopNodeOhm.fill(0);
    loopOhm.fill(0);
    // A node's path is its parent's path and one branch more, so it shares with any earlier node what its parent does.
    for (const child of order) {
      const p = parent[child]!;
      if (p < 0) continue;
      for (const other of order) {
        if (other === child) break;
        if (island[other] !== island[child]) continue;
        pathOhm[child * n + other] = pathOhm[p * n + other]!;
        pathOhm[other * n + child] = pathOhm[p * n + other]!;
      }
      pathOhm[child * n + child] = pathOhm[p * n + p]! + ohms[edge[child]!]!;
    }
    this.closeLoops(pathOhm, loopNodeOhm, loopOhm);
    const k = cotree.length;
    for (let i = 0; i < k; i++) loopOhm[i * k + i]! += ohms[cotree[i]!]!;
  }

  gatherHenries(l: Inductances): void {
    this.gatherReach(l);
    this.gatherPaths();
    const { loopNodeHenry, loopHenry, pathHenry } = this;
    loopNodeHenry.fill(0);
    loopHenry.fill(0);
    for (let i = 0; i < this.forest.cotree.length; i++) this.gatherLoop(l, i);
    this.closeLoops(pathHenry, loopNodeHenry, loopHenry);
  }

  /** Loop quantities from node quantities for a loop that runs a → b outside the tree and back b → a inside it. */
  private closeLoops(path: Float64Array, loopNode: Float64Array, loop: Float64Array): void {
    const { cotree } = this.forest;
    const n = this.circuit.nodes;
    const k = cotree.length;
    for (let i = 0; i < k; i++) {
      const to = this.to[cotree[i]!]! * n;
      const from = this.from[cotree[i]!]! * n;
      for (let m = 0; m < n; m++) loopNode[i * n + m]! += path[to + m]! - path[from + m]!;
    }
    for (let j = 0; j < k; j++) {
      const to = this.to[cotree[j]!]!;
      const from = this.from[cotree[j]!]!;
      for (let i = 0; i < k; i++) loop[i * k + j]! += loopNode[i * n + to]! - loopNode[i * n + from]!;
    }
  }

  private gatherReach(l: Inductances): void {
    const { order, parent, edge, sign } = this.forest;
    const { reach, pathGrowler } = this;
    const { mutual, growler } = l;
    const s = this.circuit.inductive;
    for (const child of order) {
      const p = parent[child]!;
      const e = edge[child]!;
      const to = child * s;
      if (p < 0) reach.fill(0, to, to + s);
      else if (e >= s) reach.copyWithin(to, p * s, (p + 1) * s);
      else addRow(reach, to, p * s, sign[child]!, mutual, e * s, s);
      const own = p >= 0 && e < s ? sign[child]! * growler[e]! : 0;
      pathGrowler[child] = p < 0 ? 0 : pathGrowler[p]! + own;
    }
  }

  /** Both halves of the symmetric matrix at once, each node against itself and those before it. */
  private gatherPaths(): void {
    const { order, parent, edge, sign } = this.forest;
    const { reach, pathHenry } = this;
    const s = this.circuit.inductive;
    const n = this.circuit.nodes;
    for (let i = 0; i < n; i++) {
      const child = order[i]!;
      const p = parent[child]! * n;
      const e = edge[child]!;
      const g = p >= 0 && e < s ? sign[child]! : 0;
      for (let j = 0; j <= i; j++) {
        const m = order[j]!;
        const henry = p < 0 ? 0 : pathHenry[p + m]! + (g === 0 ? 0 : g * reach[m * s + e]!);
        pathHenry[child * n + m] = henry;
        pathHenry[m * n + child] = henry;
      }
    }
  }

  private gatherLoop(l: Inductances, i: number): void {
    const { cotree } = this.forest;
    const { reach, pathGrowler } = this;
    const s = this.circuit.inductive;
    const n = this.circuit.nodes;
    const k = cotree.length;
    const c = cotree[i]!;
    const from = this.from[c]!;
    const to = this.to[c]!;
    this.loopGrowler[i] = (c < s ? l.growler[c]! : 0) + pathGrowler[to]! - pathGrowler[from]!;
    if (c < s) for (let m = 0; m < n; m++) this.loopNodeHenry[i * n + m] = reach[m * s + c]!;
    for (let j = 0; j < k; j++) {
      const d = cotree[j]!;
      if (d >= s) continue;
      // Linkage of branch d with one ampere round the loop of branch c.
      const own = c < s ? l.mutual[c * s + d]! : 0;
      this.loopHenry[i * k + j] = own + reach[to * s + d]! - reach[from * s + d]!;
    }
  }
}

/** out[to..] = out[from..] + sign·row[at..], `count` elements. */
function addRow(
  out: Float64Array,
  to: number,
  from: number,
  sign: number,
  row: Float64Array,
  at: number,
  count: number,
): void {
  for (let q = 0; q < count; q++) out[to + q] = out[from + q]! + sign * row[at + q]!;
}
