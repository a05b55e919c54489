import { readdirSync, readFileSync, statSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  LEAD_MS,
  LOOP_MS,
  LOOP_NAMES,
  type LoopName,
  SHOT_NAMES,
  SOUND_NAMES,
} from '../../src/sound/names.ts';
import { rampAt } from '../../src/sound/ramp.ts';
import { makeSound } from '../../tools/sounds/recipes.ts';
import { decodeWav } from '../../tools/sounds/wav.ts';

const folder = new URL('../../assets/sounds/', import.meta.url);
const read = (name: string) => decodeWav(readFileSync(new URL(`${name}.wav`, folder)));
const LSB = 1 / 32767;

/** The samples of a loop around its repeating part. */
function loop(name: LoopName) {
  const { rateHz, samples } = read(name);
  const start = (LEAD_MS / 1000) * rateHz;
  const length = (LOOP_MS[name] / 1000) * rateHz;
  return { rateHz, samples, start, length, hz: name.endsWith('100') ? 100 : 120 };
}

/** Largest bend between three samples in a row: a click is a bend that the sound itself does not have. */
function sharpest(samples: ArrayLike<number>): number {
  let most = 0;
  for (let i = 2; i < samples.length; i += 1) {
    most = Math.max(most, Math.abs(samples[i]! - 2 * samples[i - 1]! + samples[i - 2]!));
  }
  return most;
}

describe('the sound files', () => {
  it('are all there, nothing else is, and together they stay below 500 kB', () => {
    expect(readdirSync(folder).sort()).toEqual(SOUND_NAMES.map((name) => `${name}.wav`).sort());
    const bytes = SOUND_NAMES.reduce((sum, name) => sum + statSync(new URL(`${name}.wav`, folder)).size, 0);
    expect(bytes).toBeLessThan(500_000);
  });

  it.each(SOUND_NAMES)('%s is what the script makes', (name) => {
    const file = read(name);
    const made = makeSound(name);
    expect(file.rateHz).toBe(made.rateHz);
    expect(file.samples.length).toBe(made.samples.length);
    // One step of rounding: the last digit of a sine may differ between machines.
    const worst = made.samples.reduce((most, x, i) => Math.max(most, Math.abs(x - file.samples[i]!)), 0);
    expect(worst).toBeLessThan(1.6 * LSB);
  });

  it.each(SHOT_NAMES)('%s begins and ends in silence and is not cut off at the top', (name) => {
    const { samples } = read(name);
    expect(Math.abs(samples[0]!)).toBeLessThan(0.02);
    expect(Math.abs(samples.at(-1)!)).toBeLessThan(0.005);
    expect(Math.max(...samples.map(Math.abs))).toBeLessThan(0.95);
  });
});

describe('the loops', () => {
  it.each(LOOP_NAMES)('%s repeats after a whole number of samples and of periods', (name) => {
    const { start, length, rateHz, hz } = loop(name);
    expect(Number.isInteger(length)).toBe(true);
    expect(Number.isInteger((length / rateHz) * hz)).toBe(true);
    expect(start % 1 === 0 || start % 1 === 0.5).toBe(true);
  });

  it.each(LOOP_NAMES)('%s has no step at the seam: it runs on as it began', (name) => {
    const { samples, start, length } = loop(name);
    const from = Math.ceil(start);
    for (let i = from; i + length < samples.length; i += 1) {
      expect(Math.abs(samples[i]! - samples[i + length]!)).toBeLessThan(2.1 * LSB);
    }
    const seam = [
      ...samples.subarray(from + length - 20, from + length),
      ...samples.subarray(from, from + 20),
    ];
    expect(sharpest(seam)).toBeLessThanOrEqual(sharpest(samples) + 4 * LSB);
  });

  it.each(LOOP_NAMES)('%s is strongest at its own pitch or a multiple of it', (name) => {
    const { samples, start, length, rateHz, hz } = loop(name);
    const part = samples.subarray(Math.ceil(start), Math.ceil(start) + length);
    const power = (f: number) => {
      let re = 0;
      let im = 0;
      part.forEach((x, i) => {
        re += x * Math.cos((2 * Math.PI * f * i) / rateHz);
        im += x * Math.sin((2 * Math.PI * f * i) / rateHz);
      });
      return re * re + im * im;
    };
    const own = Math.max(...Array.from({ length: 25 }, (_, k) => power(hz * (k + 1))));
    const between = Math.max(...Array.from({ length: 25 }, (_, k) => power(hz * (k + 0.3))));
    expect(own).toBeGreaterThan(10 * between);
  });
});

describe('a change of gain, rendered', () => {
  /** A second of a loop with the gain sent from one value to another at `at` s. */
  function rendered(name: LoopName, from: number, to: number, at: number, gain: typeof rampAt): Float64Array {
    const { samples, start, length, rateHz } = loop(name);
    return Float64Array.from({ length: rateHz / 2 }, (_, i) => {
      const t = i / rateHz - at;
      return samples[Math.ceil(start) + (i % length)]! * (t < 0 ? from : gain(from, to, t));
    });
  }
  const jump = (_from: number, to: number) => to;

  const changes = [
    [0, 1],
    [1, 0],
    [0.2, 0.9],
    [0.7, 0.1],
  ] as const;

  it.each(LOOP_NAMES)('makes no click in %s, wherever in its swing the loop stands', (name) => {
    const own = sharpest(loop(name).samples);
    for (const [from, to] of changes) {
      for (let k = 0; k < 12; k += 1) {
        const heard = rendered(name, from, to, 0.2 + k / 1200, rampAt);
        expect(sharpest(heard)).toBeLessThanOrEqual(own * Math.max(from, to) * 1.02 + 2 * LSB);
      }
    }
  });

  it('would click in the hum if the gain jumped: the check can tell', () => {
    const own = sharpest(loop('hum100').samples);
    const worst = Math.max(
      ...Array.from({ length: 12 }, (_, k) => sharpest(rendered('hum100', 0, 1, 0.2 + k / 1200, jump))),
    );
    expect(worst).toBeGreaterThan(5 * own);
  });

  it('is all but done after half a second: a loop may then be stopped unheard', () => {
    expect(rampAt(1, 0, 0.5)).toBeLessThan(1e-5);
  });
});
