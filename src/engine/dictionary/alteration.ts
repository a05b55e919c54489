import type { LoopCircuit, LoopSolution } from '../circuit/loopSolution.ts';
import type { TurnAndPair } from '../circuit/pairProbe.ts';
import { type ComplexLu, factorComplex, newComplexLu, solveComplex } from '../math/complexLu.ts';

/** Something done to a winding afterwards: a resistor laid between two nodes, or resistance put into a branch. */
export type Port =
  | { readonly kind: 'across'; readonly from: number; readonly to: number; readonly ohm: number }
  | { readonly kind: 'inBranch'; readonly branch: number; readonly ohm: number | 'open' };

/** Most that can be done at once. */
const MOST_PORTS = 4;

/**
 * A solved winding, and what becomes of it when a few things are altered, without solving it again. With w_q the
 * answers of the growler's turn and of the pair at each port, s the current drawn through a resistor laid across, or
 * the volts lost in a branch, and H the ports' answers to one another,
 *   (H + D)·s = w,   W' = W ∓ wᵀ·s
 * with D = R for a resistor and 1/R for a branch (0 when it is opened). Exact however large the alteration.
 * @source matrix inversion lemma of Sherman, Morrison and Woodbury (standard linear algebra)
 */
export class AlterableWinding {
  private readonly circuit: LoopCircuit;
  private readonly n: number;
  private readonly loops: number;
  /** Current in every branch per ampere round each loop, loops×branches, and per ampere fed in at each node. */
  private readonly byLoop: readonly Float64Array[];
  private readonly byNode: readonly Float64Array[];
  /** Inverse of the loops' impedance, loops². */
  private readonly admittance: { readonly re: Float64Array; readonly im: Float64Array };
  private readonly loopLu: ComplexLu;
  private readonly scratch = Array.from({ length: MOST_PORTS + 1 }, (_, k) => newComplexLu(k));
  private readonly sRe = new Float64Array(2 * MOST_PORTS);
  private readonly sIm = new Float64Array(2 * MOST_PORTS);
  private readonly wRe = new Float64Array(2 * MOST_PORTS);
  private readonly wIm = new Float64Array(2 * MOST_PORTS);
  private solution!: LoopSolution;

  constructor(circuit: LoopCircuit) {
    const k = circuit.loops;
    const none = () => new Float64Array(circuit.nodes);
    this.circuit = circuit;
    this.n = circuit.nodes;
    this.loops = k;
    this.byLoop = Array.from({ length: k }, (_, i) => {
      const loop = new Float64Array(k);
      loop[i] = 1;
      return circuit.branchCurrents(loop, none());
    });
    this.byNode = Array.from({ length: circuit.nodes }, (_, node) => {
      const fed = none();
      fed[node] = 1;
      return circuit.branchCurrents(new Float64Array(k), fed);
    });
    this.admittance = { re: new Float64Array(k * k), im: new Float64Array(k * k) };
    this.loopLu = newComplexLu(k);
  }

  /** @param solution of this circuit; kept until the next one is loaded */
  load(solution: LoopSolution): void {
    const { loops: k, admittance, loopLu } = this;
    this.solution = solution;
    loopLu.re.set(solution.loopRe);
    loopLu.im.set(solution.loopIm);
    factorComplex(loopLu);
    admittance.re.fill(0);
    admittance.im.fill(0);
    for (let i = 0; i < k; i++) admittance.re[i * k + i] = 1;
    solveComplex(loopLu, admittance.re, admittance.im, k);
  }

  joined(a: number, b: number): boolean {
    const { island } = this.circuit.forest;
    return island[a] === island[b];
  }

  /** The growler's turn and the pair a, b of the winding as altered. */
  ask(a: number, b: number, ports: readonly Port[], into: TurnAndPair): void {
    const { solution: s, n } = this;
    into.ownRe = s.ownRe;
    into.ownIm = s.ownIm;
    into.tRe = s.tRe[a]! - s.tRe[b]!;
    into.tIm = s.tIm[a]! - s.tIm[b]!;
    into.zRe = s.zRe[a * n + a]! + s.zRe[b * n + b]! - 2 * s.zRe[a * n + b]!;
    into.zIm = s.zIm[a * n + a]! + s.zIm[b * n + b]! - 2 * s.zIm[a * n + b]!;
    if (ports.length > 0) this.alter(a, b, ports, into);
  }

  private alter(a: number, b: number, ports: readonly Port[], into: TurnAndPair): void {
    const k = ports.length;
    const lu = this.scratch[k]!;
    for (let q = 0; q < k; q++) {
      this.couple(ports[q]!, q, a, b);
      for (let r = 0; r < k; r++) this.join(ports[q]!, ports[r]!, lu, q * k + r);
      lu.re[q * k + q]! += burden(ports[q]!);
    }
    this.sRe.set(this.wRe);
    this.sIm.set(this.wIm);
    factorComplex(lu);
    solveComplex(lu, this.sRe, this.sIm, 2);
    for (let q = 0; q < k; q++) this.add(q, ports[q]!.kind === 'across' ? -1 : 1, into);
  }

  private add(q: number, sign: number, into: TurnAndPair): void {
    const [turn, pair] = [2 * q, 2 * q + 1];
    const { wRe, wIm, sRe, sIm } = this;
    into.ownRe += sign * (wRe[turn]! * sRe[turn]! - wIm[turn]! * sIm[turn]!);
    into.ownIm += sign * (wRe[turn]! * sIm[turn]! + wIm[turn]! * sRe[turn]!);
    into.tRe += sign * (wRe[turn]! * sRe[pair]! - wIm[turn]! * sIm[pair]!);
    into.tIm += sign * (wRe[turn]! * sIm[pair]! + wIm[turn]! * sRe[pair]!);
    into.zRe += sign * (wRe[pair]! * sRe[pair]! - wIm[pair]! * sIm[pair]!);
    into.zIm += sign * (wRe[pair]! * sIm[pair]! + wIm[pair]! * sRe[pair]!);
  }

  /** Answers of the port to the growler's turn (column 0) and to one ampere fed in at a and out at b (column 1). */
  private couple(port: Port, q: number, a: number, b: number): void {
    const { solution: s, wRe, wIm } = this;
    if (port.kind === 'across') {
      wRe[2 * q] = s.tRe[port.from]! - s.tRe[port.to]!;
      wIm[2 * q] = s.tIm[port.from]! - s.tIm[port.to]!;
      wRe[2 * q + 1] = this.between(s.zRe, port.from, port.to, a, b);
      wIm[2 * q + 1] = this.between(s.zIm, port.from, port.to, a, b);
      return;
    }
    const { branch } = port;
    wRe[2 * q] = 0;
    wIm[2 * q] = 0;
    for (let k = 0; k < this.loops; k++) {
      wRe[2 * q]! += this.byLoop[k]![branch]! * s.yRe[k]!;
      wIm[2 * q]! += this.byLoop[k]![branch]! * s.yIm[k]!;
    }
    this.fedCurrent(branch, a, b);
    wRe[2 * q + 1] = fed.re;
    wIm[2 * q + 1] = fed.im;
  }

  /** H: volts at a port per ampere drawn at another, currents in a branch per volt lost in another. */
  private join(p: Port, r: Port, lu: ComplexLu, at: number): void {
    const { solution: s } = this;
    if (p.kind === 'across' && r.kind === 'across') {
      lu.re[at] = this.between(s.zRe, p.from, p.to, r.from, r.to);
      lu.im[at] = this.between(s.zIm, p.from, p.to, r.from, r.to);
    } else if (p.kind === 'inBranch' && r.kind === 'inBranch') {
      lu.re[at] = this.betweenBranches(this.admittance.re, p.branch, r.branch);
      lu.im[at] = this.betweenBranches(this.admittance.im, p.branch, r.branch);
    } else {
      const across = p.kind === 'across' ? p : (r as Port & { kind: 'across' });
      const inBranch = p.kind === 'inBranch' ? p : (r as Port & { kind: 'inBranch' });
      this.fedCurrent(inBranch.branch, across.from, across.to);
      const sign = p.kind === 'across' ? -1 : 1;
      lu.re[at] = sign * fed.re;
      lu.im[at] = sign * fed.im;
    }
  }

  private between(z: Float64Array, i: number, j: number, a: number, b: number): number {
    const { n } = this;
    return z[i * n + a]! - z[i * n + b]! - z[j * n + a]! + z[j * n + b]!;
  }

  private betweenBranches(y: Float64Array, c: number, d: number): number {
    const k = this.loops;
    let sum = 0;
    for (let i = 0; i < k; i++) {
      const through = this.byLoop[i]![c]!;
      if (through !== 0) for (let j = 0; j < k; j++) sum += through * y[i * k + j]! * this.byLoop[j]![d]!;
    }
    return sum;
  }

  /** Current in a branch per ampere fed in at one node and out at another. Writes `fed`. */
  private fedCurrent(branch: number, from: number, to: number): void {
    const { n, solution: s } = this;
    fed.re = this.byNode[from]![branch]! - this.byNode[to]![branch]!;
    fed.im = 0;
    for (let k = 0; k < this.loops; k++) {
      const through = this.byLoop[k]![branch]!;
      fed.re -= through * (s.xRe[k * n + from]! - s.xRe[k * n + to]!);
      fed.im -= through * (s.xIm[k * n + from]! - s.xIm[k * n + to]!);
    }
  }
}

const fed = { re: 0, im: 0 };

/** D: what the port itself adds. */
function burden(port: Port): number {
  if (port.kind === 'across') return port.ohm;
  return port.ohm === 'open' ? 0 : 1 / port.ohm;
}
