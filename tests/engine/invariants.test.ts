import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createArmatureSolver } from '../../src/engine/armatureBench.ts';
import { MAINS, type OperatingPoint } from '../../src/engine/drive.ts';
import { BENCH_GROWLER } from '../../src/engine/growler.ts';
import { SlotTable } from '../../src/engine/magnetics/slotTable.ts';
import { slotPotentials } from '../../src/engine/magnetics/toothNetwork.ts';
import { checkFault } from '../../src/engine/parts/faultRules.ts';
import { ARMATURES, drive, EQUALISED_LAP_28, FORCED_WAVE_35, LAP_28, WAVE_23 } from './support/parts.ts';
import { anyFaultyArmature } from './support/random.ts';

const rotation = fc.double({ min: -10, max: 10, noNaN: true });
const sum = (x: Float64Array) => x.reduce((s, v) => s + v, 0);

function everyNumber(p: OperatingPoint, bars: number, degrees: number): number[] {
  const f = p.strip(degrees, 0.0005);
  const readings = Array.from({ length: bars }, (_, b) => p.reading(0, b, 1e-4));
  const volts = Array.from({ length: bars }, (_, b) => p.openVolt(0, b));
  const force = [f.meanN, f.alternatingN, f.tangentialN];
  const growler = [p.growlerA, p.growlerW, p.fluxWb, p.meterA, p.bridgeLossW()];
  return [...growler, ...readings, ...volts, ...p.coilLossW(), ...p.coilCurrentA(), ...force];
}

describe('for any armature, faults, rotation and ammeter', () => {
  it('every number is finite, readings are the same both ways, and power in is power lost', () => {
    fc.assert(
      fc.property(
        anyFaultyArmature,
        rotation,
        fc.nat(),
        fc.nat(),
        fc.integer({ min: 65, max: 295 }),
        fc.constantFrom('230V50Hz' as const, '120V60Hz' as const),
        ({ a, faults }, rotationRad, x, y, degrees, mains) => {
          for (const f of faults) expect(checkFault(a, f)).toEqual([]);
          const [barA, barB] = [x % a.bars, y % a.bars];
          const tap = { barA, barB, loopOhm: 0.008 };
          const solver = createArmatureSolver(a);
          const setting = drive({ rotationRad, mains: MAINS[mains], excitation: 'low' });
          const idle = solver.solve(faults, setting);
          const p = solver.solve(faults, { ...setting, meter: tap });
          for (const v of everyNumber(p, a.bars, degrees)) expect(Number.isFinite(v)).toBe(true);
          expect(p.meterA).toBeCloseTo(idle.reading(barA, barB, tap.loopOhm), 9);
          expect(p.reading(barB, barA, 0.02)).toBeCloseTo(p.reading(barA, barB, 0.02), 9);
          expectPowerBalance(p, tap.loopOhm, MAINS[mains].volt);
        },
      ),
      { numRuns: 60 },
    );
  });
});

/** What the mains feed in, V·I·cos φ, with cos φ from the flux the growler carries, is what all resistances lose. */
function expectPowerBalance(p: OperatingPoint, loopOhm: number, volt: number): void {
  const lost = p.growlerW + sum(p.coilLossW()) + p.bridgeLossW() + p.meterA ** 2 * loopOhm;
  const input = inputPower(p, volt);
  expect(Math.abs(lost / input - 1)).toBeLessThan(1e-6);
}

/** |V − R·I| is known from the core flux, so Re(V·I*) = (V² + R²I² − |V − RI|²)/2R. */
function inputPower(p: OperatingPoint, volt: number): number {
  const hz = volt === 230 ? 50 : 60;
  const { turns } = BENCH_GROWLER.windings[volt === 230 ? '230V50Hz' : '120V60Hz'].low;
  const ohm = p.growlerW / p.growlerA ** 2;
  const induced = (p.fluxWb * 2 * Math.PI * hz * turns) / Math.SQRT2;
  return (volt ** 2 + (ohm * p.growlerA) ** 2 - induced ** 2) / (2 * ohm);
}

describe('slot potentials', () => {
  it('are symmetric at every rotation: reciprocity', () => {
    for (const a of ARMATURES) {
      const { m } = slotPotentials(a, BENCH_GROWLER, 0.123);
      const w = a.slots + 1;
      const largest = Math.max(...m.map(Math.abs));
      for (let i = 0; i < w; i++)
        for (let j = 0; j < i; j++)
          expect(Math.abs(m[i * w + j]! - m[j * w + i]!) / largest).toBeLessThan(1e-12);
    }
  });

  it('repeat after one slot pitch, each slot taking the place of the next', () => {
    const a = WAVE_23;
    const pitch = (2 * Math.PI) / a.slots;
    const w = a.slots + 1;
    const here = slotPotentials(a, BENCH_GROWLER, 0.05);
    const next = slotPotentials(a, BENCH_GROWLER, 0.05 + pitch);
    for (let s = 0; s < a.slots; s++) {
      const moved = 1 + ((s + 1) % a.slots);
      expect(next.m[1 + s]! / here.m[moved]!).toBeCloseTo(1, 9);
      expect(next.m[(1 + s) * w + 1 + s]! / here.m[moved * w + moved]!).toBeCloseTo(1, 9);
    }
  });

  it('read from the table within 5e-4 of the largest element at any rotation', () => {
    for (const a of ARMATURES) {
      const table = new SlotTable(a, BENCH_GROWLER);
      const w = a.slots + 1;
      for (let k = 0; k < 40; k++) {
        const angle = -3 + 0.1571 * k;
        const exact = slotPotentials(a, BENCH_GROWLER, angle).m;
        const { m, shift } = table.at(angle);
        const place = (i: number) => (i === 0 ? 0 : 1 + ((i - 1 + shift) % a.slots));
        const largest = Math.max(...exact.map(Math.abs));
        let worst = 0;
        for (let i = 0; i < w; i++)
          for (let j = 0; j < w; j++)
            worst = Math.max(worst, Math.abs(exact[i * w + j]! - m[place(i) * w + place(j)]!));
        expect(worst / largest).toBeLessThan(5e-4);
      }
    }
  });
});

describe('islands', () => {
  it('a bar cut off from the winding reads exactly zero to every other bar, and has no path to them', () => {
    for (const form of ['bar', 'bothEnds'] as const) {
      const faults = [{ kind: 'riserJoint', bar: 5, form, ohm: 'open' }] as const;
      const solver = createArmatureSolver(WAVE_23);
      const p = solver.solve(faults, drive());
      for (let b = 0; b < 23; b++) expect(p.reading(5, b, 0.008)).toBe(0);
      expect(p.openVolt(5, 6)).toBe(0);
      expect(solver.path(faults, 5, 6, 50)).toBeNull();
      expect(p.reading(4, 6, 0.008)).toBeGreaterThan(1);
    }
  });

  it('with every coil open every reading is zero', () => {
    const faults = Array.from({ length: 28 }, (_, coil) => ({ kind: 'openCoil' as const, coil }));
    const p = createArmatureSolver(LAP_28).solve(faults, drive());
    for (let b = 1; b < 28; b++) expect(p.reading(0, b, 0.008)).toBe(0);
    expect(p.growlerA).toBeGreaterThan(0.1);
  });
});

describe('paths between metals', () => {
  const solver = createArmatureSolver(WAVE_23);
  it('sound: every bar reaches every bar by milliohms, none the core', () => {
    for (let b = 1; b < 23; b++) expect(Math.hypot(...ohms(solver.path([], 0, b, 50)!))).toBeLessThan(0.01);
    for (let b = 0; b < 23; b++) expect(solver.path([], 'core', b, 50)).toBeNull();
  });

  it('a ground at one bar is reached from every bar', () => {
    const faults = [{ kind: 'groundedBar', bar: 5, ohm: 0.5 }] as const;
    for (let b = 0; b < 23; b++) expect(solver.path(faults, b, 'core', 50)!.re).toBeCloseTo(0.5, 2);
  });

  it('weak insulation is a path of its own ohms, and an arc once it has broken down', () => {
    const faults = [{ kind: 'weakInsulation', ohm: 5e5, breakdownV: 300 }] as const;
    expect(solver.path(faults, 3, 'core', 50)!.re).toBeCloseTo(5e5, 0);
    expect(solver.path(faults, 3, 'core', 50, 170)!.re).toBeCloseTo(5e5, 0);
    expect(solver.path(faults, 3, 'core', 50, 325)!.re).toBeLessThan(1000);
  });
});

function ohms(z: { re: number; im: number }): [number, number] {
  return [z.re, z.im];
}

describe('special windings', () => {
  it('an equalised lap carries currents everywhere when sound, so the strip is of no use (common practice, no source)', () => {
    const equalised = createArmatureSolver(EQUALISED_LAP_28).solve([], drive());
    const plain = createArmatureSolver(LAP_28).solve([], drive());
    const largest = Math.max(...equalised.coilCurrentA());
    expect(largest).toBeGreaterThan(20);
    expect(Math.max(...plain.coilCurrentA())).toBeLessThan(largest / 1000);
    const pulls = Array.from({ length: 35 }, (_, k) => equalised.strip(95 + 5 * k, 0.0005).meanN);
    expect(Math.max(...pulls)).toBeGreaterThan(0.05);
  });

  it('a forced wave winding with its dummy coil is one ring, and all but even', () => {
    const p = createArmatureSolver(FORCED_WAVE_35).solve([], drive());
    for (let b = 0; b < 35; b++) expect(p.reading(b, (b + 1) % 35, 0.008)).toBeGreaterThan(0);
  });
});
