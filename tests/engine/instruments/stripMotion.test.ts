import { describe, expect, it } from 'vitest';
import {
  amplitude,
  feel,
  movingMass,
  naturalHz,
  RATTLING,
  SNAPPED,
  STRIP,
  snapsOn,
  tipStiffness,
} from '../../../src/engine/instruments/stripMotion.ts';

const thin = { ...STRIP, thicknessM: 0.64e-3, widthM: 12.7e-3 };
const pull = (meanN: number, alternatingN = meanN, tangentialN = 0) => ({ meanN, alternatingN, tangentialN });

describe('the strip as a cantilever', () => {
  it.each([
    [0.1, 52.83],
    [0.15, 23.48],
    [0.2, 13.21],
  ])('has its first frequency at length %f m (V04: %f Hz)', (freeLengthM, hz) => {
    expect(naturalHz({ ...thin, freeLengthM })).toBeCloseTo(hz, 2);
  });

  it('would ring at twice mains frequency only when short (V05: 72.69 mm at 100 Hz, 66.35 mm at 120 Hz)', () => {
    expect(naturalHz({ ...thin, freeLengthM: 0.07269 })).toBeCloseTo(100, 1);
    expect(naturalHz({ ...thin, freeLengthM: 0.06635 })).toBeCloseTo(120, 1);
  });

  it('gives 41.776 Hz for a 1 m bar of 50 mm (V03)', () => {
    const bar = { thicknessM: 0.05, widthM: 0.05, freeLengthM: 1, youngPa: 210e9, densityKgM3: 7850 };
    expect(naturalHz(bar)).toBeCloseTo(41.776, 2);
  });

  it('is as stiff at the tip as V07: 50.55 N/m', () => {
    expect(tipStiffness(thin)).toBeCloseTo(50.55, 1);
  });

  it('moves as much of its mass as makes tip stiffness and frequency agree (sqrt(k/m) = w1), within 1 %', () => {
    const w1 = Math.sqrt(tipStiffness(STRIP) / movingMass(STRIP));
    expect(w1 / (2 * Math.PI * naturalHz(STRIP))).toBeCloseTo(1, 2);
  });

  it('bends under a steady force as F / k, and rings up at resonance by 1 / 2 zeta (second-order theory)', () => {
    expect(amplitude(STRIP, 0.01, 0) * tipStiffness(STRIP)).toBeCloseTo(0.01, 3);
    const still = amplitude(STRIP, 0.01, 0);
    expect(amplitude(STRIP, 0.01, naturalHz(STRIP)) / still).toBeCloseTo(1 / 0.06, 6);
  });
});

describe('what a hand feels', () => {
  it('is nothing from a still strip, just something at 0.05 N', () => {
    expect(feel(pull(0.049), 0.5e-3, 50)).toEqual({ pull: 0, buzz: 0 });
    expect(feel(pull(0.0501), 0.5e-3, 50)).toEqual({ pull: 1, buzz: 1 });
  });

  it('grows to a snap on to the iron at half a newton over half a millimetre', () => {
    expect(feel(pull(0.2), 0.5e-3, 50).pull).toBe(2);
    expect(feel(pull(0.4), 0.5e-3, 50).pull).toBe(3);
    expect(feel(pull(0.5), 0.5e-3, 50)).toEqual({ pull: SNAPPED, buzz: RATTLING });
    expect(snapsOn(0.5, 1e-3)).toBe(false);
  });

  it('never grows weaker as the force grows', () => {
    let last = { pull: 0, buzz: 0 };
    for (let force = 0.01; force < 3; force *= 1.05) {
      const now = feel(pull(force), 0.5e-3, 60);
      expect(now.pull).toBeGreaterThanOrEqual(last.pull);
      expect(now.buzz).toBeGreaterThanOrEqual(last.buzz);
      last = now;
    }
    expect(last.buzz).toBe(8);
  });

  it('takes a sideways drag near a jaw for a pull, as a hand does, but not for a snap', () => {
    expect(feel(pull(-0.6, 0.1, 0.56), 0.5e-3, 50).pull).toBe(3);
  });
});
