import { describe, expect, it } from 'vitest';
import { seeded } from '../../src/engine/math/random.ts';

describe('seeded random', () => {
  it('gives the same sequence for the same seed and another for another', () => {
    const draw = (seed: string | number) => Array.from({ length: 8 }, seeded(seed));
    expect(draw('bench')).toEqual(draw('bench'));
    expect(draw(5)).toEqual(draw('5'));
    expect(draw('bench')).not.toEqual(draw('bench '));
  });

  it('is uniform: mean, spread and bin counts of 100 000 draws lie within four standard errors', () => {
    const next = seeded(20260101);
    const n = 100_000;
    const bins = new Array<number>(20).fill(0);
    let sum = 0;
    for (let i = 0; i < n; i++) {
      const x = next();
      expect(x >= 0 && x < 1).toBe(true);
      sum += x;
      bins[Math.floor(x * 20)]!++;
    }
    expect(Math.abs(sum / n - 0.5)).toBeLessThan(4 * Math.sqrt(1 / 12 / n));
    const sd = Math.sqrt(n * 0.05 * 0.95);
    for (const count of bins) expect(Math.abs(count - n / 20)).toBeLessThan(4 * sd);
  });
});
