import { describe, expect, it } from 'vitest';
import { type Inductances, newInductances, segmentInductances } from '../../src/engine/circuit/inductance.ts';
import { LoopCircuit } from '../../src/engine/circuit/loopSolution.ts';
import { windingTopology } from '../../src/engine/circuit/topology.ts';
import { BENCH_GROWLER } from '../../src/engine/growler.ts';
import { slotPotentials } from '../../src/engine/magnetics/toothNetwork.ts';
import type { ArmatureDesign } from '../../src/engine/parts/armature.ts';
import { coilPlaces, endLeakage } from '../../src/engine/parts/winding.ts';
import { LAP_24, WAVE_23 } from '../engine/support/parts.ts';
import { referenceData } from './data.ts';

/**
 * The reluctance network against plane finite elements of the same geometry (quadratic triangles, converged to
 * about 0.05 %). Tolerances are those the network was built to: growler self 1 %, coil to growler 2 % of the
 * largest, coil to coil 8 % of the geometric mean, coil with the growler shorted 9 %, ammeter readings 3 % of full
 * scale. Case A at 0, 0.25, 0.5 slot pitch and C at 0 served to fit six constants; A and C differ in radius, slots,
 * poles and turns.
 */
interface FemCase {
  readonly name: string;
  readonly armature: string;
  readonly theta_slot0_rad: number;
  readonly M_H_per_m: readonly (readonly number[])[];
}
const fem = referenceData<{ cases: readonly FemCase[]; no_armature_Lp_H_per_m_per_turn2: number }>(
  'fem-inductance.json',
);

interface PerMetre extends Inductances {
  readonly own: number;
}

/** Coil and growler inductances per metre of depth, without the coil ends, which a plane solution does not have. */
function ours(a: ArmatureDesign, rotation: number): PerMetre {
  const p = slotPotentials(a, BENCH_GROWLER, rotation);
  const sound = windingTopology(a, []);
  const segments = sound.segments.map((s) => ({ ...s, endLeak: 0 }));
  const l = newInductances(a.bars);
  segmentInductances({ ...a, stackLength: 1 }, 1, { ...sound, segments }, p.m, 0, l);
  return { ...l, own: p.m[0]! };
}

function theirs(a: ArmatureDesign, m: FemCase['M_H_per_m']): PerMetre {
  const u = a.coilsPerSlot;
  const l = newInductances(a.bars);
  const sides = coilPlaces(a).map((p, coil) => [
    1 + p.topSlot * 2 * u + (coil % u),
    1 + (p.bottomSlot * 2 + 1) * u + (coil % u),
  ]) as [number, number][];
  sides.forEach(([t, b], i) => {
    l.growler[i] = a.turns * (m[0]![t]! - m[0]![b]!);
    sides.forEach(([t2, b2], j) => {
      const linkage = m[t]![t2]! - m[t]![b2]! - m[b]![t2]! + m[b]![b2]!;
      l.mutual[i * a.bars + j] = a.turns ** 2 * linkage;
    });
  });
  return { ...l, own: m[0]![0]! };
}

/** All readings between bar 0 and every other bar of a sound armature, 230 V 50 Hz HIGH. */
function readings(a: ArmatureDesign, per: PerMetre, loopOhm: number): number[] {
  const depth = 0.05;
  const sound = windingTopology(a, []);
  const c = new LoopCircuit({ nodes: sound.nodes, branches: sound.segments, inductive: a.bars });
  const l = {
    mutual: per.mutual.map((x, k) => depth * x + (k % (a.bars + 1) === 0 ? endLeakage(a) : 0)),
    growler: per.growler.map((x) => depth * x),
  };
  const { turns, ohm20 } = BENCH_GROWLER.windings['230V50Hz'].high;
  const s = c.solve(l, 100 * Math.PI, depth * per.own);
  const zr = ohm20 + turns ** 2 * s.ownRe;
  const zi = turns ** 2 * s.ownIm;
  const size = zr * zr + zi * zi;
  return Array.from({ length: a.bars - 1 }, (_, k) => {
    const bar = k + 1;
    const tr = turns * (s.tRe[bar]! - s.tRe[0]!);
    const ti = turns * (s.tIm[bar]! - s.tIm[0]!);
    const own = bar * c.nodes + bar;
    const t2r = tr * tr - ti * ti;
    const t2i = 2 * tr * ti;
    const re = loopOhm + s.zRe[own]! - (t2r * zr + t2i * zi) / size;
    const im = s.zIm[own]! - (t2i * zr - t2r * zi) / size;
    return (230 * Math.hypot(tr, ti)) / Math.sqrt(size) / Math.hypot(re, im);
  });
}

describe.each(fem.cases.map((c) => [c.name, c] as const))('finite elements, case %s', (_name, one) => {
  const a = one.armature.startsWith('A') ? WAVE_23 : LAP_24;
  const n = a.bars;
  const net = ours(a, one.theta_slot0_rad);
  const ref = theirs(a, one.M_H_per_m);

  it('growler self inductance within 1 %', () => {
    expect(Math.abs(net.own / ref.own - 1)).toBeLessThan(0.01);
  });

  it('coil to growler within 2 % of the largest', () => {
    const largest = Math.max(...ref.growler.map(Math.abs));
    const worst = Math.max(...net.growler.map((x, i) => Math.abs(x - ref.growler[i]!)));
    expect(worst / largest).toBeLessThan(0.02);
  });

  it('coil to coil within 8 % of the geometric mean', () => {
    let worst = 0;
    for (let i = 0; i < n; i++) {
      for (let j = 0; j < n; j++) {
        const mean = Math.sqrt(ref.mutual[i * n + i]! * ref.mutual[j * n + j]!);
        worst = Math.max(worst, Math.abs(net.mutual[i * n + j]! - ref.mutual[i * n + j]!) / mean);
      }
    }
    expect(worst).toBeLessThan(0.08);
  });

  it('coil with the growler shorted within 9 %', () => {
    const shorted = (x: PerMetre, i: number) => x.mutual[i * n + i]! - x.growler[i]! ** 2 / x.own;
    for (let i = 0; i < n; i++) expect(Math.abs(shorted(net, i) / shorted(ref, i) - 1)).toBeLessThan(0.09);
  });

  it.each([1e-4, 0.008, 0.1])('ammeter readings at a loop of %f ohm within 3 %% of full scale', (loopOhm) => {
    const expected = readings(a, ref, loopOhm);
    const worst = Math.max(...readings(a, net, loopOhm).map((x, i) => Math.abs(x - expected[i]!)));
    expect(worst / Math.max(...expected)).toBeLessThan(0.03);
  });
});

it('the growler with nothing in its jaws is taken from the same finite elements', () => {
  expect(BENCH_GROWLER.openInductance).toBe(fem.no_armature_Lp_H_per_m_per_turn2);
});
