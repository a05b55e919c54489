import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createArmatureSolver } from '../../src/engine/armatureBench.ts';
import { BENCH_GROWLER, LINEAR_GROWLER } from '../../src/engine/growler.ts';
import { slotPotentials } from '../../src/engine/magnetics/toothNetwork.ts';
import type { ArmatureDesign } from '../../src/engine/parts/armature.ts';
import type { ArmatureFault } from '../../src/engine/parts/armatureFault.ts';
import { drive, LAP_28 } from '../engine/support/parts.ts';
import { anyArmature, anyFaultyArmature } from '../engine/support/random.ts';
import { coupledCircuit } from '../reference/support/liveNetlist.ts';
import { solveNodal } from '../reference/support/nodal.ts';
import { holds } from './holds.ts';

/** Laws every linear circuit of coupled coils obeys; power balance and finite numbers are in tests/engine/invariants. */
const angle = fc.double({ min: -7, max: 7, noNaN: true });

/** One node of each island of branches. */
function islandRoots(nodes: number, branches: readonly { readonly from: number; readonly to: number }[]) {
  const group = Array.from({ length: nodes }, (_, i) => i);
  const root = (i: number): number => (group[i] === i ? i : root(group[i]!));
  for (const { from, to } of branches) group[root(from)] = root(to);
  return group.flatMap((_, i) => (root(i) === i ? [i] : []));
}

describe('laws of the circuit, for any armature and faults', () => {
  it('superposition: seen from two bars it is one source behind one impedance, whatever the loop', () => {
    holds(
      'one source, one impedance',
      50,
      fc.property(anyFaultyArmature, angle, fc.nat(), fc.nat(), ({ a, faults }, rotationRad, x, y) => {
        const [i, j] = [x % a.bars, y % a.bars];
        const p = createArmatureSolver(a).solve(faults, drive({ rotationRad }));
        const volt = p.openVolt(i, j);
        if (volt < 1e-9) return;
        // V²/I² = |z|² + 2·R·re z + R²: the part without R² is a straight line in R.
        const line = (ohm: number) => (volt / p.reading(i, j, ohm)) ** 2 - ohm * ohm;
        const [near, middle, far] = [0.01, 0.02, 0.03].map(line) as [number, number, number];
        const scale = (volt / p.reading(i, j, 0.03)) ** 2;
        expect(Math.abs(near - 2 * middle + far) / scale).toBeLessThan(1e-9);
        expect(far).toBeGreaterThanOrEqual(near - 1e-9 * scale);
      }),
    );
  });

  it('loops or nodes: a full nodal solution of the same circuit, ammeter and all, gives the same currents', () => {
    holds(
      'loops and nodes',
      15,
      fc.property(anyFaultyArmature, fc.nat(400), fc.nat(), fc.nat(), ({ a, faults }, quarter, x, y) => {
        const meter = { barA: x % a.bars, barB: y % a.bars, loopOhm: 0.008 };
        if (meter.barA === meter.barB) return;
        // At quarter pitches the table of slot potentials is read between no points.
        const setting = drive({ rotationRad: (2 * Math.PI * quarter) / (4 * a.slots), meter });
        const p = createArmatureSolver(a, LINEAR_GROWLER).solve(faults, setting);
        const circuit = coupledCircuit({ a, faults, drive: setting });
        const loop = { from: meter.barA, to: meter.barB, ohm: meter.loopOhm };
        const grounds = islandRoots(circuit.nodes, [...circuit.branches, loop]);
        const nodal = solveNodal(circuit, 100 * Math.PI, 230, grounds, [loop]);
        const drop = Math.hypot(
          nodal.re[loop.from]! - nodal.re[loop.to]!,
          nodal.im[loop.from]! - nodal.im[loop.to]!,
        );
        const growlerA = Math.hypot(nodal.growlerRe, nodal.growlerIm);
        expect(Math.abs(p.growlerA / growlerA - 1)).toBeLessThan(1e-6);
        expect(Math.abs(p.meterA - drop / loop.ohm)).toBeLessThan(1e-6 * (1 + p.meterA));
      }),
    );
  });

  it('volts add up round any three bars: none exceeds the sum of the other two', () => {
    holds(
      'volts round three bars',
      50,
      fc.property(
        anyFaultyArmature,
        angle,
        fc.nat(),
        fc.nat(),
        fc.nat(),
        ({ a, faults }, rotationRad, x, y, z) => {
          const [i, j, k] = [x % a.bars, y % a.bars, z % a.bars];
          const solver = createArmatureSolver(a);
          const joined = solver.path(faults, i, j, 50) && solver.path(faults, j, k, 50);
          if (!joined) return;
          const p = solver.solve(faults, drive({ rotationRad }));
          expect(p.openVolt(i, k)).toBeLessThanOrEqual(p.openVolt(i, j) + p.openVolt(j, k) + 1e-9);
        },
      ),
    );
  });

  it('reciprocity: every source links every other as much as the other links it', () => {
    holds(
      'reciprocity',
      40,
      fc.property(anyArmature, angle, (a, rotation) => {
        const { m } = slotPotentials(a, BENCH_GROWLER, rotation);
        const w = a.slots + 1;
        const largest = m.reduce((most, x) => Math.max(most, Math.abs(x)), 0);
        for (let i = 0; i < w; i++)
          for (let j = 0; j < i; j++)
            expect(Math.abs(m[i * w + j]! - m[j * w + i]!)).toBeLessThan(1e-10 * largest);
      }),
    );
  });

  it('an open coil of a plain winding changes no open-circuit voltage', () => {
    holds(
      'open coil',
      40,
      fc.property(anyArmature, angle, fc.nat(), (a, rotationRad, x) => {
        if (a.equalised || a.dummyPlace !== undefined) return;
        const solver = createArmatureSolver(a);
        const sound = solver.solve([], drive({ rotationRad }));
        const open = solver.solve([{ kind: 'openCoil', coil: x % a.bars }], drive({ rotationRad }));
        const largest = Math.max(...bars(a).map((bar) => sound.openVolt(0, bar)));
        for (const bar of bars(a))
          expect(Math.abs(open.openVolt(0, bar) - sound.openVolt(0, bar))).toBeLessThan(1e-7 * largest);
      }),
    );
  });
});

const bars = ({ bars: count }: ArmatureDesign) => Array.from({ length: count }, (_, bar) => bar);

/** The same fault one place on, a slot pitch earlier, must look the same from the bars one place on. */
function expectSamePitchOn(a: ArmatureDesign, rotationRad: number, i: number, j: number, fault: FaultAt) {
  const on = (bar: number) => (bar + a.coilsPerSlot) % a.bars;
  const at = (i + j) % a.bars;
  const solver = createArmatureSolver(a);
  const pitch = (2 * Math.PI) / a.slots;
  const here = solver.solve([fault(on(at))], drive({ rotationRad }));
  const next = solver.solve([fault(at)], drive({ rotationRad: rotationRad + pitch }));
  expect(next.growlerA / here.growlerA).toBeCloseTo(1, 7);
  expect(next.reading(i, j, 0.01)).toBeCloseTo(here.reading(on(i), on(j), 0.01), 5);
  expect(next.openVolt(i, j)).toBeCloseTo(here.openVolt(on(i), on(j)), 7);
  const pulls = [here, next].map((p) => p.strip(140, 5e-4).meanN) as [number, number];
  expect(Math.abs(pulls[0] - pulls[1])).toBeLessThan(1e-5 * (1 + Math.abs(pulls[0])));
}

type FaultAt = (bar: number) => ArmatureFault;
const bridge: FaultAt = (bar) => ({ kind: 'bridgedBars', bar, ohm: 1e-3, by: 'copper' });
const badEnd: FaultAt = (bar) => ({ kind: 'riserJoint', bar, form: 'oneEnd', ohm: 0.02 });

describe('a turn by one slot pitch', () => {
  it('brings every slot where the next one was: faults and readings move with their bars', () => {
    holds(
      'slot pitch',
      40,
      fc.property(
        anyArmature,
        angle,
        fc.nat(),
        fc.nat(),
        fc.constantFrom(bridge, badEnd),
        (a, rotationRad, x, y, fault) => {
          // A dummy coil lies in one place only and spoils the symmetry.
          if (a.dummyPlace === undefined) expectSamePitchOn(a, rotationRad, x % a.bars, y % a.bars, fault);
        },
      ),
    );
  });

  it('failed once, seed 1439190848: equalisers of six poles were a chain with two ends', () => {
    const a: ArmatureDesign = {
      ...LAP_28,
      poles: 6,
      slots: 9,
      bars: 9,
      spanSlots: 2,
      equalised: true,
      slotWidth: 0.0042,
      slotMouth: 0.0025,
    };
    expectSamePitchOn(a, 0, 0, 0, badEnd);
    expectSamePitchOn(a, 0.3, 1, 5, bridge);
  });

  it('is the same as a whole turn later', () => {
    holds(
      'whole turn',
      20,
      fc.property(
        anyFaultyArmature,
        angle,
        fc.integer({ min: -3, max: 3 }),
        ({ a, faults }, rotationRad, turns) => {
          const solver = createArmatureSolver(a);
          const here = solver.solve(faults, drive({ rotationRad }));
          const later = solver.solve(faults, drive({ rotationRad: rotationRad + 2 * Math.PI * turns }));
          expect(later.growlerA / here.growlerA).toBeCloseTo(1, 7);
          expect(later.reading(0, 1, 0.01)).toBeCloseTo(here.reading(0, 1, 0.01), 4);
        },
      ),
    );
  });
});

describe('a bar cut off from the winding', () => {
  it('reads exactly nothing to every other bar, and the others go on', () => {
    holds(
      'isolated bar',
      40,
      fc.property(anyArmature, angle, fc.nat(), fc.boolean(), (a, rotationRad, x, whole) => {
        const bar = x % a.bars;
        if (a.equalised && !whole) return;
        const form = whole ? 'bar' : 'bothEnds';
        const faults: readonly ArmatureFault[] = [{ kind: 'riserJoint', bar, form, ohm: 'open' }];
        const solver = createArmatureSolver(a);
        const p = solver.solve(faults, drive({ rotationRad }));
        for (const other of bars(a)) {
          expect(p.reading(bar, other, 0.008)).toBe(0);
          expect(p.openVolt(bar, other)).toBe(0);
          if (other !== bar) expect(solver.path(faults, bar, other, 50)).toBeNull();
        }
        const meter = { barA: bar, barB: (bar + 1) % a.bars, loopOhm: 0.008 };
        expect(solver.solve(faults, drive({ rotationRad, meter })).meterA).toBe(0);
      }),
    );
  });
});
