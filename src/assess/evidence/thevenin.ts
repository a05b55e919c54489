import type { LoopSolution } from '../../engine/circuit/loopSolution.ts';
import { type ComplexLu, factorComplex, newComplexLu, solveComplex } from '../../engine/math/complexLu.ts';
import type { Port } from './joints.ts';

/**
 * What the ammeter finds behind two bars of a winding with something altered in it, worked out from the solution of
 * the unaltered winding:
 *
 *   W' = W − W_q (G⁻¹ + W_qq)⁻¹ W_qᵀ
 *
 * with W the impedances between the growler's turn, the two bars and the ports q at which a conductance G is added
 * (negative where a joint is taken away). Exact, however large the alteration; its rank is the number of ports.
 * @source matrix inversion lemma of Sherman, Morrison and Woodbury (standard linear algebra)
 */

/** What is done to a winding: conductances added at ports, resistance put between bars and the winding. */
export interface Alteration {
  readonly ports: readonly Port[];
  /** G⁻¹ of each port, ohm. */
  readonly inverse: readonly number[];
  readonly inFront: readonly { readonly bar: number; readonly ohm: number }[];
}

export const NOTHING: Alteration = { ports: [], inverse: [], inFront: [] };

/** A bar that nothing joins to the winding any more, ohm: far beyond what the ammeter tells from nothing. */
export const CUT_OFF_OHM = 1e4;

/** Both alterations at once, in the same winding. */
export function together(one: Alteration, other: Alteration): Alteration {
  return {
    ports: [...one.ports, ...other.ports],
    inverse: [...one.inverse, ...other.inverse],
    inFront: [...one.inFront, ...other.inFront],
  };
}

/** What drives the network of growler and part: turns, and mains with the winding behind them, volts and ohm. */
export interface Supply {
  readonly turns: number;
  readonly ohmRe: number;
  readonly ohmIm: number;
  readonly volt: number;
}

/** Open-circuit voltage squared (V²) and impedance (ohm) between two bars. */
export interface Source {
  v2: number;
  r: number;
  x: number;
}

/** Sources behind two bars, one for each suspect: V², ohm, ohm. */
export interface Sources {
  readonly v2: Float64Array;
  readonly r: Float64Array;
  readonly x: Float64Array;
}

/** Current through an ammeter loop across a source, A. */
export function loopCurrent({ v2, r, x }: Source, loopOhm: number): number {
  return Math.sqrt(v2 / ((r + loopOhm) ** 2 + x * x));
}

/** Closes the growler over its winding: answers per ampere-turn become volts and ohms behind the two bars. */
export function closeGrowler(
  supply: Supply,
  own: { re: number; im: number },
  turn: { re: number; im: number },
  z: { re: number; im: number },
  into: Source,
): void {
  const n2 = supply.turns * supply.turns;
  const dRe = supply.ohmRe + n2 * own.re;
  const dIm = supply.ohmIm + n2 * own.im;
  const d2 = dRe * dRe + dIm * dIm;
  const t2 = n2 * (turn.re * turn.re + turn.im * turn.im);
  into.v2 = (t2 * supply.volt * supply.volt) / d2;
  const sRe = n2 * (turn.re * turn.re - turn.im * turn.im);
  const sIm = n2 * 2 * turn.re * turn.im;
  into.r = z.re - (sRe * dRe + sIm * dIm) / d2;
  into.x = z.im - (sIm * dRe - sRe * dIm) / d2;
}

/** Most ports an alteration may have: four reversed coils. */
const MOST_PORTS = 16;

/** Works out sources behind one pair of bars in one solved winding; keeps its scratch between questions. */
export class BarPair {
  private readonly s: LoopSolution;
  private readonly n: number;
  private readonly a: number;
  private readonly b: number;
  private readonly own = { re: 0, im: 0 };
  private readonly turn = { re: 0, im: 0 };
  private readonly z = { re: 0, im: 0 };

  constructor(solution: LoopSolution, a: number, b: number) {
    this.s = solution;
    this.n = solution.tRe.length;
    this.a = a;
    this.b = b;
  }

  /** The winding altered as told. Writes into `into`. */
  source({ ports, inverse, inFront }: Alteration, supply: Supply, into: Source): void {
    this.start();
    for (const { bar, ohm } of inFront) if (bar === this.a || bar === this.b) this.z.re += ohm;
    if (ports.length > 0) this.alter(ports, inverse, inFront);
    closeGrowler(supply, this.own, this.turn, this.z, into);
  }

  /** The winding with one conductance added, for as many values of it as are asked for. */
  onePort(port: Port): OnePort {
    this.start();
    this.couple(port, 0, []);
    const own = { re: this.between(this.s.zRe, port, port), im: this.between(this.s.zIm, port, port) };
    const complex = (i: number) => ({ re: coupledRe[i]!, im: coupledIm[i]! });
    return new OnePort({ ...this.own }, { ...this.turn }, { ...this.z }, complex(0), complex(1), own);
  }

  /** A bar's own node carries the resistance in front of it into everything joined to the bar itself. */
  private alter(ports: readonly Port[], inverse: readonly number[], inFront: Alteration['inFront']): void {
    const k = ports.length;
    const lu = scratchOf(k);
    lu.re.fill(0);
    lu.im.fill(0);
    ports.forEach((p, i) => {
      this.couple(p, i, inFront);
      for (let j = 0; j < k; j++) {
        const q = ports[j]!;
        lu.re[i * k + j] = this.between(this.s.zRe, p, q) + frontOhm(p, q, inFront);
        lu.im[i * k + j] = this.between(this.s.zIm, p, q);
      }
      lu.re[i * k + i]! += inverse[i]!;
    });
    const rhs = 2;
    for (let i = 0; i < k * rhs; i++) {
      solvedRe[i] = coupledRe[i]!;
      solvedIm[i] = coupledIm[i]!;
    }
    factorComplex(lu);
    solveComplex(lu, solvedRe, solvedIm, rhs);
    for (let i = 0; i < k; i++) {
      subtract(this.own, i * rhs, i * rhs);
      subtract(this.turn, i * rhs, i * rhs + 1);
      subtract(this.z, i * rhs + 1, i * rhs + 1);
    }
  }

  /** Winding as it is: own answer of the growler's turn, volts of the pair, impedance of the pair. */
  private start(): void {
    const { s, a, b, n } = this;
    this.own.re = s.ownRe;
    this.own.im = s.ownIm;
    this.turn.re = s.tRe[a]! - s.tRe[b]!;
    this.turn.im = s.tIm[a]! - s.tIm[b]!;
    this.z.re = s.zRe[a * n + a]! + s.zRe[b * n + b]! - s.zRe[a * n + b]! - s.zRe[b * n + a]!;
    this.z.im = s.zIm[a * n + a]! + s.zIm[b * n + b]! - s.zIm[a * n + b]! - s.zIm[b * n + a]!;
  }

  /** Column 0: growler's turn with port; column 1: pair with port. */
  private couple(p: Port, i: number, inFront: Alteration['inFront']): void {
    const { s } = this;
    const pair = { a: this.a, b: this.b, outside: true };
    coupledRe[2 * i] = s.tRe[p.a]! - s.tRe[p.b]!;
    coupledIm[2 * i] = s.tIm[p.a]! - s.tIm[p.b]!;
    coupledRe[2 * i + 1] = this.between(s.zRe, pair, p) + frontOhm(pair, p, inFront);
    coupledIm[2 * i + 1] = this.between(s.zIm, pair, p);
  }

  private between(z: Float64Array, p: Port, q: Port): number {
    const { n } = this;
    return z[p.a * n + q.a]! - z[p.a * n + q.b]! - z[p.b * n + q.a]! + z[p.b * n + q.b]!;
  }
}

interface Complex {
  re: number;
  im: number;
}

/** A pair of bars and one port: all that is needed to put any resistance across the port. */
export class OnePort {
  private readonly whole: readonly [Complex, Complex, Complex];
  private readonly growlerPort: Complex;
  private readonly pairPort: Complex;
  private readonly port: Complex;
  private readonly altered: [Complex, Complex, Complex] = [
    { re: 0, im: 0 },
    { re: 0, im: 0 },
    { re: 0, im: 0 },
  ];

  constructor(
    own: Complex,
    turn: Complex,
    z: Complex,
    growlerPort: Complex,
    pairPort: Complex,
    port: Complex,
  ) {
    this.whole = [own, turn, z];
    this.growlerPort = growlerPort;
    this.pairPort = pairPort;
    this.port = port;
  }

  /** @param inverse G⁻¹, ohm */
  source(inverse: number, supply: Supply, into: Source): void {
    const re = inverse + this.port.re;
    const im = this.port.im;
    const size = re * re + im * im;
    const { growlerPort: g, pairPort: p } = this;
    const gRe = (g.re * re + g.im * im) / size;
    const gIm = (g.im * re - g.re * im) / size;
    const pRe = (p.re * re + p.im * im) / size;
    const pIm = (p.im * re - p.re * im) / size;
    const [own, turn, z] = this.altered;
    lessProduct(own, this.whole[0], g, gRe, gIm);
    lessProduct(turn, this.whole[1], g, pRe, pIm);
    lessProduct(z, this.whole[2], p, pRe, pIm);
    closeGrowler(supply, own, turn, z, into);
  }
}

/** whole − a·(xRe + j xIm) */
function lessProduct(into: Complex, whole: Complex, a: Complex, xRe: number, xIm: number): void {
  into.re = whole.re - (a.re * xRe - a.im * xIm);
  into.im = whole.im - (a.re * xIm + a.im * xRe);
}

const coupledRe = new Float64Array(2 * MOST_PORTS);
const coupledIm = new Float64Array(2 * MOST_PORTS);
const solvedRe = new Float64Array(2 * MOST_PORTS);
const solvedIm = new Float64Array(2 * MOST_PORTS);
const scratch: (ComplexLu | undefined)[] = [];

function scratchOf(k: number): ComplexLu {
  scratch[k] ??= newComplexLu(k);
  return scratch[k];
}

function subtract(from: { re: number; im: number }, coupled: number, solved: number): void {
  const cr = coupledRe[coupled]!;
  const ci = coupledIm[coupled]!;
  const xr = solvedRe[solved]!;
  const xi = solvedIm[solved]!;
  from.re -= cr * xr - ci * xi;
  from.im -= cr * xi + ci * xr;
}

/** Resistance in front of bars that two ports share; a joint lies behind it. */
export function frontOhm(p: Port, q: Port, inFront: Alteration['inFront']): number {
  let shared = 0;
  if (!p.outside || !q.outside) return shared;
  for (const { bar, ohm } of inFront) {
    const weight = (port: Port) => (port.a === bar ? 1 : 0) - (port.b === bar ? 1 : 0);
    shared += weight(p) * weight(q) * ohm;
  }
  return shared;
}
