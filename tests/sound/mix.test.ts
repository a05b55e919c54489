import { describe, expect, it } from 'vitest';
import { hum } from '../../src/engine/instruments/hum.ts';
import { feel } from '../../src/engine/instruments/stripMotion.ts';
import { mix } from '../../src/sound/mix.ts';
import { humming, QUIET, withStrip } from './bench.ts';

/** Gains for a growler current, all the way from the computed current through the observation. */
function gainsAt(ampereTurns: number, fluxWb: number) {
  const heard = hum({ ampereTurns, fluxWb }, 50);
  return mix({ ...QUIET, hum: heard });
}
const loudness = ({ hum: smooth, harsh }: { hum: number; harsh: number }) => Math.hypot(smooth, harsh);

describe('the gains of the loops', () => {
  it('are silent on a bench that is off', () => {
    expect(mix(QUIET)).toEqual({ hum: 0, harsh: 0, buzz: 0 });
  });

  it('follow the computed growler current: never softer for more, and louder by far in the end', () => {
    const currents = Array.from({ length: 30 }, (_, i) => 100 * 1.12 ** i);
    const gains = currents.map((ampereTurns) => loudness(gainsAt(ampereTurns, 0.4e-3)));
    gains.slice(1).forEach((gain, i) => {
      expect(gain).toBeGreaterThanOrEqual(gains[i]! - 1e-12);
    });
    expect(gains.at(-1)! / gains[0]!).toBeGreaterThan(5);
  });

  it('turn from smooth to harsh when the cradle is empty and the current several times the loaded one', () => {
    const loaded = gainsAt(266, 0.513e-3);
    const empty = gainsAt(872, 0.461e-3);
    expect(loaded.hum).toBeGreaterThan(loaded.harsh);
    expect(empty.harsh).toBeGreaterThan(empty.hum);
    expect(loudness(empty)).toBeGreaterThan(1.8 * loudness(loaded));
  });

  it('keep to the level whatever the share of rattle, and within 0..1', () => {
    for (let level = 1; level <= 20; level += 1) {
      for (let harshness = 0; harshness <= 10; harshness += 1) {
        const gains = mix(humming(level, harshness));
        expect(loudness(gains)).toBeCloseTo(loudness(mix(humming(level, 0))), 12);
        expect(Math.max(gains.hum, gains.harsh)).toBeLessThanOrEqual(1);
      }
    }
  });

  it('let the strip sound by its computed amplitude', () => {
    const forces = [0.02, 0.06, 0.12, 0.25, 0.45, 0.8];
    const gains = forces.map((f) => {
      const felt = feel({ meanN: f, alternatingN: f, tangentialN: 0 }, 0.5e-3, 50);
      return mix(withStrip(humming(11), felt.pull, felt.buzz)).buzz;
    });
    expect(gains[0]).toBe(0);
    gains.slice(1).forEach((gain, i) => {
      expect(gain).toBeGreaterThan(gains[i]!);
    });
  });
});
