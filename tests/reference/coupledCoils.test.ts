import { describe, expect, it } from 'vitest';
import { newInductances } from '../../src/engine/circuit/inductance.ts';
import { LoopCircuit } from '../../src/engine/circuit/loopSolution.ts';

/**
 * Small coupled circuits whose answers a general-purpose circuit solver (ngspice) and a general-purpose matrix
 * library (mathjs lusolve) give alike to every digit shown (references N01, N03).
 */
describe('coupled coils in loop form', () => {
  it('N01 transformer with a shorted secondary', () => {
    const growlerHenry = 0.1;
    const l = newInductances(1);
    l.mutual[0] = 20e-6;
    l.growler[0] = 0.6 * Math.sqrt(growlerHenry * 20e-6);
    const circuit = new LoopCircuit({ nodes: 1, branches: [{ from: 0, to: 0, ohm: 0.005 }], inductive: 1 });
    const s = circuit.solve(l, 100 * Math.PI, growlerHenry);
    const re = 2 + s.ownRe;
    const size = re * re + s.ownIm ** 2;
    const primary = { re: (230 * re) / size, im: (-230 * s.ownIm) / size };
    expect(primary.re).toBeCloseTo(2.6323188967, 8);
    expect(primary.im).toBeCloseTo(-8.583875209, 8);
    const re2 = s.yRe[0]! * primary.re - s.yIm[0]! * primary.im;
    const im2 = s.yRe[0]! * primary.im + s.yIm[0]! * primary.re;
    expect(re2).toBeCloseTo(-245.8200661, 5);
    expect(im2).toBeCloseTo(168.565589, 5);
  });

  it('N03 ring of 24 coils with two bars shorted', () => {
    const coil = 20e-6;
    const growlerHenry = 0.05;
    const l = newInductances(24);
    for (let i = 0; i < 24; i++) {
      l.mutual[i * 24 + i] = coil;
      l.growler[i] = 0.55 * Math.cos((2 * Math.PI * (i + 0.5)) / 24) * Math.sqrt(coil * growlerHenry);
    }
    const ring = Array.from({ length: 24 }, (_, i) => ({ from: i, to: (i + 1) % 24, ohm: 0.004 }));
    const branches = [...ring, { from: 5, to: 6, ohm: 0.001 }];
    const circuit = new LoopCircuit({ nodes: 24, branches, inductive: 24 });
    const s = circuit.solve(l, 120 * Math.PI, growlerHenry);
    const impedance = Math.hypot(1.5 + s.ownRe, s.ownIm);
    const primary = 120 / impedance;
    expect(primary).toBeCloseTo(6.3684, 3);
    const part = (y: Float64Array) => circuit.branchCurrents(y.slice(), new Float64Array(24));
    const re = part(s.yRe);
    const im = part(s.yIm);
    const amps = Array.from({ length: 24 }, (_, i) => primary * Math.hypot(re[i]!, im[i]!));
    expect(amps[5]).toBeCloseTo(19.0, 2);
    amps.forEach((a, i) => {
      if (i !== 5) expect(a).toBeCloseTo(0.826, 3);
    });
  });
});
