import { describe, expect, it } from 'vitest';
import {
  COLD_WINDING,
  COPPER_DENSITY,
  growlerHeat,
  partHeat,
  REARM_C,
  ROOM_C,
  stepCoil,
  stepWinding,
  TRIP_C,
} from '../../../src/engine/instruments/thermal.ts';
import { copperRise } from '../../../src/engine/math/constants.ts';

describe('copper', () => {
  it('rises by 21.615 % from 20 to 75 C (M05, M07: IACS 0.00393)', () => {
    expect(copperRise(75)).toBeCloseTo(1.21615, 9);
    expect(copperRise(-234.45)).toBeCloseTo(0, 4);
  });
});

describe('the growler winding', () => {
  it('follows the closed form of one heated node, C dx/dt = P - x/R', () => {
    for (const seconds of [10, 100, 600]) {
      const { windingC } = stepWinding(COLD_WINDING, () => 4, seconds * 10);
      expect(windingC - ROOM_C).toBeCloseTo(4 * 8 * (1 - Math.exp(-seconds / (64 * 8))), 9);
    }
  });

  it('trips at +75 K, at the instant the closed form gives, and then cools until it may be set again', () => {
    const power = 40;
    const { trippedAfter, cutOut, windingC } = stepWinding(COLD_WINDING, () => power, 3000);
    const instant = -64 * 8 * Math.log(1 - 75 / (power * 8));
    expect(trippedAfter! / 10).toBeCloseTo(instant, 0);
    expect(cutOut).toBe(true);
    expect(windingC).toBeLessThan(TRIP_C);
    const hot = { windingC: TRIP_C, cutOut: true };
    // Newton cooling from +75 to +45 K: tau ln(75/45) = 262 s.
    const wait = Math.ceil(64 * 8 * Math.log(75 / 45) * 10);
    expect(stepWinding(hot, () => power, wait - 20).windingC).toBeGreaterThan(REARM_C);
    expect(stepWinding(hot, () => power, wait + 1).windingC).toBeLessThan(REARM_C);
  });

  it('is heated by the loss at its own temperature', () => {
    const constantVolt = (tempC: number) => 10 / copperRise(tempC);
    const { windingC } = stepWinding(COLD_WINDING, constantVolt, 100_000);
    expect((windingC - ROOM_C) / 8).toBeCloseTo(constantVolt(windingC), 6);
  });

  it('never trips at a power that settles below the limit', () => {
    expect(stepWinding(COLD_WINDING, () => 9.3, 100_000).trippedAfter).toBeNull();
  });

  it('is felt in words', () => {
    expect([20, 40, 60, 95].map(growlerHeat)).toEqual(['cool', 'warm', 'hot', 'tooHotToTouch']);
  });
});

describe('a coil with a circulating current', () => {
  it('starts at the adiabatic rate P / (m c), copper 385 J/(kg K) (handbook)', () => {
    const mass = COPPER_DENSITY * 1.227e-6 * 1.765;
    expect(stepCoil(0, 11, mass, 1) / 0.1).toBeCloseTo(11 / (mass * 385), 2);
  });

  it('gives its heat away in the end, and steps add up', () => {
    expect(stepCoil(50, 0, 0.02, 100_000)).toBeLessThan(1e-6);
    const once = stepCoil(5, 3, 0.02, 70);
    expect(stepCoil(stepCoil(5, 3, 0.02, 30), 3, 0.02, 40)).toBeCloseTo(once, 9);
  });

  it('is smelt in words', () => {
    expect([0, 20, 60, 140].map(partHeat)).toEqual(['cool', 'warm', 'hot', 'smoking']);
  });
});
