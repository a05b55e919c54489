import { describe, expect, it } from 'vitest';
import { createArmatureSolver } from '../../src/engine/armatureBench.ts';
import { newInductances, segmentInductances } from '../../src/engine/circuit/inductance.ts';
import { windingTopology } from '../../src/engine/circuit/topology.ts';
import {
  BENCH_GROWLER,
  endLeakageHenry,
  type GrowlerDesign,
  LINEAR_GROWLER,
  sharedDepth,
} from '../../src/engine/growler.ts';
import { slotPotentials } from '../../src/engine/magnetics/toothNetwork.ts';
import type { ArmatureFault } from '../../src/engine/parts/armatureFault.ts';
import { coilOhm, endLeakage } from '../../src/engine/parts/winding.ts';
import { referenceData } from '../reference/data.ts';
import { drive, LAP_24, LAP_28, WAVE_23 } from './support/parts.ts';

/** Checks the implementation against the figures of another one of the same equations. Ours: no independent witness. */
interface ModelCase {
  readonly armature: string;
  readonly theta_slot0_rad: number;
  readonly Lp_H: number;
  readonly coil0_self_H: number;
  readonly coil_to_growler_H: readonly number[];
  readonly Rcoil: number;
  readonly Lend: number;
  readonly depth: number;
  readonly growler: { readonly Lsig: number; readonly R: number };
  readonly cases: Readonly<
    Record<string, { readonly Ip: number; readonly readings_8mOhm_from_bar0: readonly number[] }>
  >;
}
const { cases } = referenceData<{ cases: readonly ModelCase[] }>('reluctance-values.json');
const PARTS = { A_wave23: WAVE_23, B_lap28: LAP_28, C_lap24: LAP_24 };
const TURNS = 1500;
const FAULTS: Readonly<Record<string, readonly ArmatureFault[]>> = {
  healthy: [],
  open5: [{ kind: 'openCoil', coil: 5 }],
  short56: [{ kind: 'bridgedBars', bar: 5, ohm: 0.0002, by: 'copper' }],
  reversed5: [{ kind: 'reversedCoil', coil: 5 }],
};
const near = (x: number, y: number, tolerance = 1e-6) => expect(Math.abs(x / y - 1)).toBeLessThan(tolerance);

describe.each(cases.map((c) => [c.armature, c.theta_slot0_rad.toFixed(3), c] as const))(
  '%s at %s rad',
  (name, _t, c) => {
    const a = PARTS[name as keyof typeof PARTS];
    const depth = sharedDepth(BENCH_GROWLER, a.stackLength);

    it('winding constants', () => {
      near(depth, c.depth);
      near(coilOhm(a), c.Rcoil);
      near(endLeakage(a), c.Lend);
      near(TURNS ** 2 * endLeakageHenry(BENCH_GROWLER), c.growler.Lsig);
    });

    it('inductances to 1e-6', () => {
      const p = slotPotentials(a, BENCH_GROWLER, c.theta_slot0_rad);
      const l = newInductances(a.bars);
      segmentInductances(a, depth, windingTopology(a, []), p.m, 0, l);
      near(TURNS ** 2 * (depth * p.m[0]! + endLeakageHenry(BENCH_GROWLER)), c.Lp_H);
      near(l.mutual[0]!, c.coil0_self_H);
      const largest = Math.max(...c.coil_to_growler_H.map(Math.abs));
      c.coil_to_growler_H.forEach((h, i) => {
        expect(Math.abs(TURNS * l.growler[i]! - h) / largest).toBeLessThan(1e-6);
      });
    });

    it.each(Object.keys(FAULTS))('currents and readings, %s', (fault) => {
      const winding = { turns: TURNS, ohm20: c.growler.R };
      const growler: GrowlerDesign = {
        ...LINEAR_GROWLER,
        windings: { ...BENCH_GROWLER.windings, '230V50Hz': { high: winding, low: winding } },
      };
      const solver = createArmatureSolver(a, growler);
      const point = solver.solve(FAULTS[fault]!, drive({ rotationRad: c.theta_slot0_rad }));
      const expected = c.cases[fault]!;
      near(point.growlerA, expected.Ip);
      expected.readings_8mOhm_from_bar0.forEach((amps, bar) => {
        expect(Math.abs(point.reading(0, bar, 0.008) - amps), `bar ${bar}`).toBeLessThan(1e-5);
      });
    });
  },
);
