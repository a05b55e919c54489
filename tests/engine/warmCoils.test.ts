import { describe, expect, it } from 'vitest';
import { createArmatureSolver } from '../../src/engine/armatureBench.ts';
import { LINEAR_GROWLER } from '../../src/engine/growler.ts';
import type { ArmatureFault } from '../../src/engine/parts/armatureFault.ts';
import { ARMATURES, drive, LAP_24, WAVE_23 } from './support/parts.ts';

/** Copper at 75 C over copper at 20 C: reference M07, 1 + 0.00393·55 (IACS coefficient, NBS Handbook 100). */
const AT_75 = 1.21615;
const BRIDGE: readonly ArmatureFault[] = [{ kind: 'bridgedBars', bar: 5, ohm: 2e-4, by: 'copper' }];
const all = (bars: number, celsius: number) => new Array<number>(bars).fill(celsius);

describe('warm coils', () => {
  it('at 75 C act as coils of wire that much thinner', () => {
    for (const a of ARMATURES) {
      const thinner = { ...a, conductorArea: a.conductorArea / AT_75 };
      const warm = createArmatureSolver(a, LINEAR_GROWLER).solve(BRIDGE, drive({ coilC: all(a.bars, 75) }));
      const thin = createArmatureSolver(thinner, LINEAR_GROWLER).solve(BRIDGE, drive());
      expect(warm.growlerA / thin.growlerA).toBeCloseTo(1, 9);
      warm.coilCurrentA().forEach((amps, coil) => {
        expect(amps).toBeCloseTo(thin.coilCurrentA()[coil]!, 6);
      });
      expect(warm.coilLossW().reduce((x, y) => x + y)).toBeCloseTo(
        thin.coilLossW().reduce((x, y) => x + y),
        6,
      );
    }
  });

  it('at 20 C are the coils left out of the drive', () => {
    const solver = createArmatureSolver(WAVE_23);
    const cold = solver.solve(BRIDGE, drive());
    const told = solver.solve(BRIDGE, drive({ coilC: all(23, 20) }));
    expect(told.reading(0, 5, 0.008)).toBeCloseTo(cold.reading(0, 5, 0.008), 12);
  });

  it('a shorted coil carries less the hotter it is, its neighbours warm or not', () => {
    const rotationRad = Math.PI - 2 * (Math.PI / 6);
    const solver = createArmatureSolver(LAP_24);
    const amps = [20, 60, 100, 150].map((celsius) => {
      const coilC = all(24, 20);
      coilC[5] = celsius;
      return solver.solve(BRIDGE, drive({ rotationRad, coilC })).coilCurrentA()[5]!;
    });
    for (let k = 1; k < amps.length; k++) expect(amps[k]!).toBeLessThan(amps[k - 1]!);
    // Where resistance rules (six thin turns) 80 K cost about a fifth of the current.
    expect(amps[2]! / amps[0]!).toBeGreaterThan(0.75);
    expect(amps[2]! / amps[0]!).toBeLessThan(0.88);
  });

  it('leave joints, bridges and bad risers as they were', () => {
    const riser: readonly ArmatureFault[] = [{ kind: 'riserJoint', bar: 5, form: 'bar', ohm: 0.05 }];
    const solver = createArmatureSolver(WAVE_23);
    const cold = solver.solve(riser, drive()).reading(5, 6, 0.008);
    const warm = solver.solve(riser, drive({ coilC: all(23, 120) })).reading(5, 6, 0.008);
    expect(warm / cold).toBeGreaterThan(0.98);
    expect(warm / cold).toBeLessThan(1);
  });

  it('leave nothing behind: a cold answer after a warm one is the cold answer', () => {
    const solver = createArmatureSolver(WAVE_23);
    const before = solver.solve(BRIDGE, drive()).growlerA;
    const held = solver.solve(BRIDGE, drive({ rotationRad: 0.3 }));
    const heldA = held.reading(1, 7, 0.008);
    solver.solve(BRIDGE, drive({ coilC: all(23, 130) }));
    expect(solver.solve(BRIDGE, drive()).growlerA).toBe(before);
    expect(held.reading(1, 7, 0.008)).toBe(heldA);
  });
});
