import { factorComplex, newComplexLu, solveComplex } from '../../../src/engine/math/complexLu.ts';
import type { CoupledCircuit } from './storedNetlist.ts';

/** What a full nodal solution gives: volts of every node against node 0 of its island, and the growler current. */
export interface NodalSolution {
  readonly re: Float64Array;
  readonly im: Float64Array;
  readonly growlerRe: number;
  readonly growlerIm: number;
}

/**
 * The same circuit by dense modified nodal analysis: one equation for every node, every branch and the growler,
 * nothing eliminated. Slow and plain; it shares only the complex factorisation with the loop form.
 * @param grounds one node of each island, held at zero volts
 * @param extra   resistors added, such as an ammeter
 */
export function solveNodal(
  c: CoupledCircuit,
  omega: number,
  volt: number,
  grounds: readonly number[],
  extra: readonly { readonly from: number; readonly to: number; readonly ohm: number }[] = [],
): NodalSolution {
  const branches = [...c.branches, ...extra];
  const n = c.nodes;
  const m = branches.length;
  const size = n + m + 1;
  const lu = newComplexLu(size);
  const rhs = new Float64Array(size);
  const add = (part: Float64Array, row: number, column: number, value: number) => {
    part[row * size + column]! += value;
  };
  branches.forEach(({ from, to, ohm }, k) => {
    add(lu.re, from, n + k, 1);
    add(lu.re, to, n + k, -1);
    add(lu.re, n + k, from, 1);
    add(lu.re, n + k, to, -1);
    add(lu.re, n + k, n + k, -ohm);
  });
  for (let i = 0; i < c.inductive; i++) {
    for (let j = 0; j < c.inductive; j++) add(lu.im, n + i, n + j, -omega * c.l.mutual[i * c.inductive + j]!);
    add(lu.im, n + i, n + m, -omega * c.l.growler[i]!);
    add(lu.im, n + m, n + i, omega * c.l.growler[i]!);
  }
  add(lu.re, n + m, n + m, c.growlerOhm);
  add(lu.im, n + m, n + m, omega * c.growlerHenry);
  rhs[n + m] = volt;
  for (const g of grounds) {
    lu.re.fill(0, g * size, (g + 1) * size);
    lu.im.fill(0, g * size, (g + 1) * size);
    add(lu.re, g, g, 1);
  }
  factorComplex(lu);
  const im = new Float64Array(size);
  solveComplex(lu, rhs, im, 1);
  return {
    re: rhs.slice(0, n),
    im: im.slice(0, n),
    growlerRe: rhs[n + m]!,
    growlerIm: im[n + m]!,
  };
}
