import { describe, expect, it } from 'vitest';
import { LoopCircuit } from '../../src/engine/circuit/loopSolution.ts';
import { referenceData } from './data.ts';
import { readNetlist, type SpiceCase } from './netlist.ts';
import { solveNodal } from './nodal.ts';

/**
 * The circuit against ngspice (general-purpose circuit solver), which read the same netlists. Tolerance 1e-6
 * relative to the largest value: the stored figures have nine digits.
 */
const TOLERANCE = 1e-6;
const { cases } = referenceData<{ cases: readonly SpiceCase[] }>('ngspice-cases.json');
const VOLT = 230;

function solveLoops(one: SpiceCase) {
  const c = readNetlist(one.netlist);
  const circuit = new LoopCircuit(c);
  const s = circuit.solve(c.l, 2 * Math.PI * one.f_Hz, c.growlerHenry);
  const re = c.growlerOhm + s.ownRe;
  const size = re * re + s.ownIm * s.ownIm;
  const primary = { re: (VOLT * re) / size, im: (-VOLT * s.ownIm) / size };
  return { c, circuit, s, primary, impedance: { re, im: s.ownIm } };
}

function between({ circuit, s, primary, impedance }: ReturnType<typeof solveLoops>, a: number, b: number) {
  const n = circuit.nodes;
  const tr = s.tRe[a]! - s.tRe[b]!;
  const ti = s.tIm[a]! - s.tIm[b]!;
  const z = (part: Float64Array) => part[a * n + a]! + part[b * n + b]! - 2 * part[a * n + b]!;
  const t2r = tr * tr - ti * ti;
  const t2i = 2 * tr * ti;
  const size = impedance.re ** 2 + impedance.im ** 2;
  return {
    re: tr * primary.re - ti * primary.im,
    im: tr * primary.im + ti * primary.re,
    ohm: z(s.zRe) - (t2r * impedance.re + t2i * impedance.im) / size,
    reactance: z(s.zIm) - (t2i * impedance.re - t2r * impedance.im) / size,
  };
}

describe.each(cases.map((c) => [c.armature, c.case, c] as const))('%s, %s', (_armature, _case, one) => {
  const bars = one.armature.startsWith('A') ? 23 : 24;
  const solved = solveLoops(one);

  it('growler current and bar volts', () => {
    const { primary } = solved;
    expect(Math.abs(Math.hypot(primary.re, primary.im) / one.spice_Ip_A - 1)).toBeLessThan(TOLERANCE);
    const largest = Math.max(...one.spice_bar_V.map(([re, im]) => Math.hypot(re, im)));
    one.spice_bar_V.slice(0, bars).forEach(([re, im], bar) => {
      const v = between(solved, bar, 0);
      expect(Math.hypot(v.re - re, v.im - im) / largest, `bar ${bar}`).toBeLessThan(TOLERANCE);
    });
  });

  it('ammeter readings', () => {
    for (const {
      bars: [a, b],
      burden_ohm,
      spice_A,
    } of one.meters) {
      const v = between(solved, a, b);
      const amps = Math.hypot(v.re, v.im) / Math.hypot(v.ohm + burden_ohm, v.reactance);
      expect(Math.abs(amps / spice_A - 1), `bars ${a} and ${b}`).toBeLessThan(TOLERANCE);
    }
  });

  it('agrees with a full nodal solution, ammeter connected', () => {
    const { c } = solved;
    const {
      bars: [a, b],
      burden_ohm,
    } = one.meters[0]!;
    const islands = [...new Set(solved.circuit.forest.island)];
    const nodal = solveNodal(c, 2 * Math.PI * one.f_Hz, VOLT, islands, [{ from: a, to: b, ohm: burden_ohm }]);
    const drop = Math.hypot(nodal.re[a]! - nodal.re[b]!, nodal.im[a]! - nodal.im[b]!);
    const v = between(solved, a, b);
    const amps = Math.hypot(v.re, v.im) / Math.hypot(v.ohm + burden_ohm, v.reactance);
    expect(Math.abs(drop / burden_ohm / amps - 1)).toBeLessThan(1e-9);
  });
});
