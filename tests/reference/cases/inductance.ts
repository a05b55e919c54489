import {
  type Inductances,
  newInductances,
  segmentInductances,
  slotLeakage,
} from '../../../src/engine/circuit/inductance.ts';
import { LoopCircuit } from '../../../src/engine/circuit/loopSolution.ts';
import { windingTopology } from '../../../src/engine/circuit/topology.ts';
import { BENCH_GROWLER } from '../../../src/engine/growler.ts';
import { slotPotentials } from '../../../src/engine/magnetics/toothNetwork.ts';
import type { ArmatureDesign } from '../../../src/engine/parts/armature.ts';
import { coilPlaces, endLeakage } from '../../../src/engine/parts/winding.ts';
import { LAP_24, WAVE_23 } from '../../engine/support/parts.ts';
import { equal, type Finding, rowsOf, type WitnessCase, type WitnessGroup, within, worst } from '../case.ts';
import { referenceData } from '../data.ts';

interface FemCase {
  readonly name: string;
  readonly armature: string;
  readonly theta_slot0_rad: number;
  readonly theta_in_slot_pitches: number;
  readonly M_H_per_m: readonly (readonly number[])[];
}
const fem = referenceData<{ cases: readonly FemCase[]; no_armature_Lp_H_per_m_per_turn2: number }>(
  'fem-inductance.json',
);

interface PerMetre extends Inductances {
  readonly own: number;
}

/** Coil and growler inductances per metre of depth, without the coil ends, which a plane solution does not have. */
function ofNetwork(a: ArmatureDesign, rotation: number): PerMetre {
  const p = slotPotentials(a, BENCH_GROWLER, rotation);
  const sound = windingTopology(a, []);
  const segments = sound.segments.map((s) => ({ ...s, endLeak: 0 }));
  const l = newInductances(a.bars);
  segmentInductances({ ...a, stackLength: 1 }, 1, { ...sound, segments }, p.m, 0, l);
  return { ...l, own: p.m[0]! };
}

/** Row of a conductor in the matrix of the finite elements. */
const source = (a: ArmatureDesign, slot: number, layer: 0 | 1, column: number) =>
  1 + (slot * 2 + layer) * a.coilsPerSlot + column;

function ofElements(a: ArmatureDesign, m: FemCase['M_H_per_m']): PerMetre {
  const l = newInductances(a.bars);
  const sides = coilPlaces(a).map((p, coil) => [
    source(a, p.topSlot, 0, coil % a.coilsPerSlot),
    source(a, p.bottomSlot, 1, coil % a.coilsPerSlot),
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

/** All readings between bar 0 and every other bar of a sound armature, 230 V 50 Hz HIGH, linear iron. */
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

/** The pair of coils that differs most, against the geometric mean of their own inductances. */
function coilToCoil(net: PerMetre, ref: PerMetre, n: number): Finding {
  let found: Finding = { ours: 0, reference: 0, scale: 1 };
  let most = -1;
  for (let k = 0; k < n * n; k++) {
    const [i, j] = [Math.floor(k / n), k % n];
    const scale = Math.sqrt(ref.mutual[i * n + i]! * ref.mutual[j * n + j]!);
    const error = Math.abs(net.mutual[k]! - ref.mutual[k]!) / scale;
    if (error <= most) continue;
    most = error;
    found = { ours: net.mutual[k]!, reference: ref.mutual[k]!, scale };
  }
  return found;
}

/** Inductance of each coil with the growler winding shorted; the worst by its own size. */
function growlerShorted(net: PerMetre, ref: PerMetre, n: number): Finding {
  const shorted = (x: PerMetre, i: number) => x.mutual[i * n + i]! - x.growler[i]! ** 2 / x.own;
  const pairs = Array.from({ length: n }, (_, i) => ({ ours: shorted(net, i), reference: shorted(ref, i) }));
  const error = (f: { ours: number; reference: number }) => Math.abs(f.ours / f.reference - 1);
  return pairs.reduce((far, f) => (error(f) > error(far) ? f : far));
}

/** Leakage of two layers of one slot, seen between them: M_tt + M_bb - 2·M_tb, where all common flux drops out. */
function slotLayers(a: ArmatureDesign, m: FemCase['M_H_per_m']): Finding {
  const { top, bottom, mutual } = slotLeakage(a);
  const slot = Math.floor(a.slots / 2);
  const t = source(a, slot, 0, 0);
  const b = source(a, slot, 1, 0);
  return { ours: top + bottom - 2 * mutual, reference: m[t]![t]! + m[b]![b]! - 2 * m[t]![b]! };
}

const row = rowsOf({
  unit: 'H/m',
  source: 'plane finite elements, quadratic triangles, converged to 0.05 %',
  verified: 'stored',
  standing: 'fitted',
  tolerance: within(0.01),
});

const rows: WitnessCase[] = fem.cases.flatMap((one) => {
  const a = one.armature.startsWith('A') ? WAVE_23 : LAP_24;
  const n = a.bars;
  const net = () => ofNetwork(a, one.theta_slot0_rad);
  const ref = ofElements(a, one.M_H_per_m);
  const where = `${a.id} at ${one.theta_in_slot_pitches} slot pitches`;
  const amps = [1e-4, 0.008, 0.1].map((ohm) =>
    row(
      `FEM-${one.name}-${ohm}`,
      `${where}: worst of all readings from bar 0, loop ${ohm * 1000} mΩ`,
      () => worst(readings(a, net(), ohm), readings(a, ref, ohm)),
      { unit: 'A of full scale', tolerance: within(0.03) },
    ),
  );
  return [
    row(`FEM-${one.name}-own`, `${where}: growler own`, () => ({ ours: net().own, reference: ref.own })),
    row(
      `FEM-${one.name}-growler`,
      `${where}: coil to growler, worst coil against the largest`,
      () => worst(net().growler, ref.growler),
      { tolerance: within(0.02) },
    ),
    row(
      `FEM-${one.name}-coils`,
      `${where}: coil to coil, worst pair against the geometric mean`,
      () => coilToCoil(net(), ref, n),
      { tolerance: within(0.08) },
    ),
    row(
      `FEM-${one.name}-shorted`,
      `${where}: coil with the growler shorted, worst coil`,
      () => growlerShorted(net(), ref, n),
      { tolerance: within(0.09) },
    ),
    ...amps,
  ];
});

export const inductance: WitnessGroup = {
  title: 'Magnetics, against finite elements',
  about:
    'Plane linear magnetostatics of the same invented geometry. Six constants of the reluctance network were fitted to ' +
    'these four cases, which hold some 6,000 numbers; where a row is called fitted, it is held by the shape of the ' +
    'model and not by its constants alone.',
  cases: [
    ...rows,
    row(
      'FEM-slot-A',
      'wave-23: leakage between the two layers of a slot at the top',
      () => slotLayers(WAVE_23, fem.cases[0]!.M_H_per_m),
      { standing: 'independent' },
    ),
    row(
      'FEM-open',
      'growler with nothing in its jaws, taken over from the finite elements',
      () => ({ ours: BENCH_GROWLER.openInductance, reference: fem.no_armature_Lp_H_per_m_per_turn2 }),
      { tolerance: equal },
    ),
  ],
};
