import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  ACCURACY_CLASS,
  contactOhm,
  loopOhm,
  makeAmmeter,
  scaleCurrent,
  scaleFraction,
  targetDeflection,
} from '../../../src/engine/instruments/ammeter.ts';

/** A plain linear congruential sequence: enough to draw from in a test. */
function draws(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (1664525 * state + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

describe('the printed scale', () => {
  it('runs from zero to full scale and rises all the way', () => {
    expect(scaleFraction(0, 30)).toBe(0);
    expect(scaleFraction(30, 30)).toBeCloseTo(1, 12);
    for (let i = 1; i <= 100; i += 1)
      expect(scaleFraction(i, 100)).toBeGreaterThan(scaleFraction(i - 1, 100));
  });

  it('crowds below about 15 % and goes there with the square of the current (I08)', () => {
    expect(scaleFraction(0.02, 1) / scaleFraction(0.01, 1)).toBeGreaterThan(3.7);
    const evenStep = 0.05;
    const bottom = scaleFraction(evenStep, 1);
    const top = scaleFraction(1, 1) - scaleFraction(1 - evenStep, 1);
    expect(bottom).toBeLessThan(evenStep / 3);
    expect(top).toBeGreaterThan(evenStep * 0.9);
    expect(scaleFraction(0.15, 1)).toBeLessThan(0.1);
  });

  it('is read back exactly', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 300, noNaN: true }),
        fc.constantFrom(3, 15, 30, 100),
        (current, range) => {
          expect(scaleCurrent(scaleFraction(current, range), range)).toBeCloseTo(current, 8);
        },
      ),
    );
  });
});

describe('the instrument', () => {
  it('errs by no more than its class anywhere on the scale (I01, I03: class 1.5 of 10 A is 0.15 A)', () => {
    expect((ACCURACY_CLASS / 100) * 10).toBeCloseTo(0.15, 12);
    const random = draws(7);
    for (let i = 0; i < 200; i += 1) {
      const meter = makeAmmeter(random);
      for (const current of [0, 1, 5, 10]) {
        const read = scaleCurrent(targetDeflection(current, 10, meter), 10);
        expect(Math.abs(read - current)).toBeLessThanOrEqual(0.15 + 1e-9);
      }
    }
  });

  it('shows a needle off zero with no current, when the bench has that fault', () => {
    expect(targetDeflection(0, 30, makeAmmeter(draws(1), 0.04))).toBeCloseTo(0.04, 12);
  });
});

describe('contacts', () => {
  it('stay in their spread and fill it, clean and dirty; a nominal clean loop is 8 mohm', () => {
    const random = draws(3);
    const clean = Array.from({ length: 4000 }, () => contactOhm(random, false));
    const dirty = Array.from({ length: 4000 }, () => contactOhm(random, true));
    const mean = (list: number[]) => list.reduce((a, b) => a + b, 0) / list.length;
    expect(Math.min(...clean)).toBeGreaterThanOrEqual(0.2e-3);
    expect(Math.max(...clean)).toBeLessThanOrEqual(0.4e-3);
    expect(mean(clean)).toBeCloseTo(0.3e-3, 5);
    expect(Math.min(...dirty)).toBeGreaterThanOrEqual(0.5e-3);
    expect(Math.max(...dirty)).toBeLessThanOrEqual(3e-3);
    expect(mean(dirty)).toBeCloseTo(1.75e-3, 4);
    expect(loopOhm(0.3e-3, 0.3e-3)).toBeCloseTo(8e-3, 12);
  });
});
