import { describe, expect, it } from 'vitest';
import { hum } from '../../../src/engine/instruments/hum.ts';

const sound = (ampereTurns: number, fluxWb: number) => hum({ ampereTurns, fluxWb }, 50);

describe('the hum of the growler', () => {
  it('sounds at twice mains frequency (P02) and not at all without current', () => {
    expect(hum(null, 50)).toEqual({ level: 0, pitchHz: 100, harshness: 0 });
    expect(hum(null, 60).pitchHz).toBe(120);
    expect(sound(0, 0).level).toBe(0);
  });

  it('grows with the current, step by step, within its scale', () => {
    let last = 0;
    for (let ampereTurns = 20; ampereTurns < 4000; ampereTurns *= 1.1) {
      const { level } = sound(ampereTurns, 0.3e-3);
      expect(level).toBeGreaterThanOrEqual(last);
      expect(level).toBeLessThanOrEqual(20);
      last = level;
    }
    expect(last).toBe(20);
  });

  it('growls louder and harsher over an empty cradle than with an armature in it (common practice, no source)', () => {
    const loaded = sound(270, 0.51e-3);
    const empty = sound(870, 0.46e-3);
    expect(empty.level).toBeGreaterThanOrEqual(loaded.level + 4);
    expect(empty.harshness).toBeGreaterThanOrEqual(loaded.harshness + 4);
  });

  it('deepens when the armature carries a short (more current at nearly the same flux)', () => {
    expect(sound(520, 0.5e-3).level).toBeGreaterThan(sound(270, 0.51e-3).level);
  });
});
