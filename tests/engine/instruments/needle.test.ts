import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  atRest,
  DAMPING,
  NATURAL_RATE,
  NEEDLE_AT_ZERO,
  type NeedleState,
  needleAt,
  retarget,
  seeNeedle,
  UPPER_STOP,
} from '../../../src/engine/instruments/needle.ts';

const step = (from: number, target: number): NeedleState => ({ fromDeflection: from, fromRate: 0, target });

/** Witness of another kind: the same equation stepped in small slices, with blows that take the speed away. */
function stepped({ fromDeflection, fromRate, target }: NeedleState, ms: number): number {
  const slices = ms * 20;
  const h = ms / 1000 / slices;
  let x = fromDeflection;
  let v = fromRate;
  for (let i = 0; i < slices; i += 1) {
    const pull = (y: number, w: number) => NATURAL_RATE ** 2 * (target - y) - 2 * DAMPING * NATURAL_RATE * w;
    const half = v + (h / 2) * pull(x, v);
    v += h * pull(x + (h / 2) * v, half);
    x += h * half;
    if (x > UPPER_STOP || x < 0) {
      x = Math.min(UPPER_STOP, Math.max(0, x));
      v = 0;
    }
  }
  return x;
}

describe('the needle', () => {
  it('overshoots a step by no more than a pointer instrument may (I04: 20 %, IEC 60051-1 from memory)', () => {
    let most = 0;
    for (let ms = 0; ms < 4000; ms += 1) most = Math.max(most, needleAt(step(0, 0.5), ms).deflection);
    const overshoot = (most - 0.5) / 0.5;
    expect(overshoot).toBeLessThanOrEqual(0.2);
    // I06: the overshoot of a second-order system is exp(-pi z / sqrt(1 - z^2)).
    expect(overshoot).toBeCloseTo(Math.exp((-Math.PI * DAMPING) / Math.sqrt(1 - DAMPING ** 2)), 4);
  });

  it('meets I06 and I07: at 20 % overshoot the damping is 0.45595 and the least rate 2.367 rad/s', () => {
    expect(Math.exp((-Math.PI * 0.45595) / Math.sqrt(1 - 0.45595 ** 2))).toBeCloseTo(0.2, 4);
    expect(NATURAL_RATE).toBeGreaterThan(2.367);
    expect(DAMPING).toBeGreaterThan(0.45595);
  });

  it('stands within 1.5 % of the scale 4 s after any step (I05, IEC 60051-1 from memory)', () => {
    for (const from of [0, 0.3, 1]) {
      for (const target of [0.05, 0.6, 0.97]) {
        for (let ms = 4000; ms < 8000; ms += 25) {
          expect(Math.abs(needleAt(step(from, target), ms).deflection - target)).toBeLessThanOrEqual(0.015);
        }
      }
    }
  });

  it('settles to what an eye tells in about two seconds, as a workshop meter does (common practice, no source)', () => {
    const state = step(0, 0.7);
    let last = 0;
    for (let ms = 0; ms < 8000; ms += 10)
      if (Math.abs(needleAt(state, ms).deflection - 0.7) > 0.01) last = ms;
    expect(last).toBeGreaterThan(1200);
    expect(last).toBeLessThan(2500);
  });

  it('agrees with the same equation stepped in small slices, stops included', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: UPPER_STOP, noNaN: true }),
        fc.double({ min: -4, max: 4, noNaN: true }),
        fc.double({ min: -0.5, max: 6, noNaN: true }),
        fc.integer({ min: 1, max: 3000 }),
        (from, rate, target, ms) => {
          const state = { fromDeflection: from, fromRate: rate, target };
          expect(needleAt(state, ms).deflection).toBeCloseTo(stepped(state, ms), 3);
        },
      ),
      { numRuns: 200 },
    );
  });

  it('never leaves the space between its stops, and stays on the peg it is held to', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: UPPER_STOP, noNaN: true }),
        fc.double({ min: -50, max: 50, noNaN: true }),
        fc.double({ min: -5, max: 50, noNaN: true }),
        fc.integer({ min: 0, max: 20_000 }),
        (from, rate, target, ms) => {
          const { deflection } = needleAt({ fromDeflection: from, fromRate: rate, target }, ms);
          expect(deflection).toBeGreaterThanOrEqual(-1e-9);
          expect(deflection).toBeLessThanOrEqual(UPPER_STOP + 1e-9);
        },
      ),
    );
    expect(seeNeedle(step(0, 12), 2000)).toEqual({ deflection: UPPER_STOP, pegged: true, atRest: true });
    expect(seeNeedle(step(UPPER_STOP, -0.2), 3000)).toEqual({ deflection: 0, pegged: false, atRest: true });
  });

  it('depends on the time since the change alone: stopping half way and going on is the same', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 3, noNaN: true }),
        fc.array(fc.integer({ min: 0, max: 900 }), { minLength: 1, maxLength: 6 }),
        (from, target, pauses) => {
          const whole = step(from, target);
          let state = whole;
          for (const ms of pauses) state = retarget(state, ms, target);
          const total = pauses.reduce((sum, ms) => sum + ms, 0);
          expect(needleAt(state, 250).deflection).toBeCloseTo(needleAt(whole, total + 250).deflection, 6);
        },
      ),
    );
  });

  it('rests only when no visible movement is left', () => {
    expect(atRest(NEEDLE_AT_ZERO, 0)).toBe(true);
    const state = step(0, 0.8);
    expect(atRest(state, 100)).toBe(false);
    const first = Array.from({ length: 800 }, (_, i) => i * 10).find((ms) => atRest(state, ms))!;
    const there = seeNeedle(state, first).deflection;
    for (let ms = first; ms < first + 5000; ms += 10) {
      expect(Math.abs(seeNeedle(state, ms).deflection - there)).toBeLessThanOrEqual(1 / 400 + 1e-9);
    }
  });
});
