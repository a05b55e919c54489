import { describe, expect, it } from 'vitest';
import { createArmatureSolver } from '../../src/engine/armatureBench.ts';
import { MAINS } from '../../src/engine/drive.ts';
import type { ArmatureFault } from '../../src/engine/parts/armatureFault.ts';
import { ARMATURES, drive, EQUALISED_LAP_28, FORCED_WAVE_35, WAVE_23 } from './support/parts.ts';

const FAULTS: readonly ArmatureFault[] = [
  { kind: 'bridgedBars', bar: 5, ohm: 2e-4, by: 'copper' },
  { kind: 'riserJoint', bar: 9, form: 'bar', ohm: 'open' },
];
const setting = { mains: MAINS['120V60Hz'], excitation: 'low', windingC: 35 } as const;
const places = { anglesDeg: [95, 110, 150, 180, 235], heightM: 5e-4, fromRad: 0.021 };

describe.each([...ARMATURES, EQUALISED_LAP_28, FORCED_WAVE_35].map((a) => [a.id, a] as const))(
  '%s turned from place to place',
  (_id, a) => {
    const solver = createArmatureSolver(a);
    const sweep = solver.sweep(FAULTS, setting);

    it('answers every pair as a point solved for itself', () => {
      const pairs = new Float64Array((a.bars * (a.bars - 1)) / 2);
      for (const rotationRad of [0, 0.7, -2.3, (2 * Math.PI) / a.slots, 0.01]) {
        const point = solver.solve(FAULTS, drive({ ...setting, rotationRad }));
        sweep.turnTo(rotationRad);
        sweep.everyPair(0.008, pairs);
        expect(sweep.growlerA() / point.growlerA).toBeCloseTo(1, 10);
        for (let b = 1, at = 0; b < a.bars; b++) {
          for (let c = 0; c < b; c++, at++) {
            expect(pairs[at]!).toBeCloseTo(point.reading(c, b, 0.008), 9);
            expect(sweep.reading(b, c, 0.008)).toBeCloseTo(pairs[at]!, 9);
          }
        }
      }
    });

    it('answers one pair alone as it answers it among all', () => {
      for (const rotationRad of [0, 0.7, -2.3, 0.01, Math.PI / a.slots]) {
        const point = solver.solve(FAULTS, drive({ ...setting, rotationRad }));
        for (let b = 1; b < a.bars; b++) {
          const alone = sweep.readingAt(rotationRad, b, (2 * b) % a.bars, 0.008);
          expect(alone).toBeCloseTo(point.reading(b, (2 * b) % a.bars, 0.008), 9);
          expect(sweep.readingAt(rotationRad, b, b - 1, 1e-4)).toBeCloseTo(point.reading(b - 1, b, 1e-4), 7);
        }
      }
    });

    it('maps the strip as points do that are solved for themselves', () => {
      const map = solver.stripMap(FAULTS, setting, places);
      const n = places.anglesDeg.length;
      expect(map).toHaveLength(a.slots * n);
      for (let k = 0; k < a.slots; k += 3) {
        const rotationRad = places.fromRad + (2 * Math.PI * k) / a.slots;
        const point = solver.solve(FAULTS, drive({ ...setting, rotationRad }));
        places.anglesDeg.forEach((angle, i) => {
          expect(map[k * n + i]!).toBeCloseTo(point.strip(angle, places.heightM).meanN, 8);
        });
      }
    });
  },
);

describe('sweeps', () => {
  it('have warm coils of their own, and disturb neither one another nor the solver', () => {
    const solver = createArmatureSolver(WAVE_23);
    const cold = solver.sweep(FAULTS, setting);
    const warm = solver.sweep(FAULTS, { ...setting, coilC: new Array<number>(23).fill(100) });
    for (const s of [cold, warm, cold]) s.turnTo(0.4);
    const asked = drive({ ...setting, rotationRad: 0.4 });
    expect(cold.reading(0, 6, 0.008)).toBeCloseTo(solver.solve(FAULTS, asked).reading(0, 6, 0.008), 10);
    const hot = { ...asked, coilC: new Array<number>(23).fill(100) };
    expect(warm.reading(0, 6, 0.008)).toBeCloseTo(solver.solve(FAULTS, hot).reading(0, 6, 0.008), 10);
    expect(warm.readingAt(0.4, 0, 6, 0.008)).toBeCloseTo(warm.reading(0, 6, 0.008), 10);
    expect(warm.reading(0, 6, 0.008)).toBeLessThan(cold.reading(0, 6, 0.008));
  });
});
