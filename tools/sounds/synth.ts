import { seeded } from '../../src/engine/math/random.ts';

/** Building blocks of the bench's sounds. Time in s, frequency in Hz; everything repeats from its seed. */

export const RATE_HZ = 22_050;

export type Wave = (t: number) => number;

/** Whole seconds of a wave, from `from` for `length` seconds. */
export function sample(wave: Wave, from: number, length: number): Float64Array {
  return Float64Array.from({ length: Math.round(length * RATE_HZ) }, (_, i) => wave(from + i / RATE_HZ));
}

/** Sum of harmonics of a frequency: amplitudes of the first, second, ... with phases from the seed. */
export function harmonics(baseHz: number, amplitudes: readonly number[], seed: string): Wave {
  const random = seeded(seed);
  const parts = amplitudes.map((amplitude, i) => ({
    amplitude,
    w: 2 * Math.PI * baseHz * (i + 1),
    phase: 2 * Math.PI * random(),
  }));
  return (t) => parts.reduce((sum, { amplitude, w, phase }) => sum + amplitude * Math.sin(w * t + phase), 0);
}

/** Noise that repeats exactly after `periodS`: lines at its multiples between two frequencies, phases from the seed. */
export function periodicNoise(periodS: number, lowHz: number, highHz: number, seed: string): Wave {
  const random = seeded(seed);
  const lines: { w: number; phase: number }[] = [];
  for (let k = Math.ceil(lowHz * periodS); k <= highHz * periodS; k += 1) {
    // Every third line or so: still noise to the ear, and a third of the work.
    if (random() < 0.35) lines.push({ w: (2 * Math.PI * k) / periodS, phase: 2 * Math.PI * random() });
  }
  const level = 1 / Math.sqrt(Math.max(1, lines.length / 2));
  return (t) => level * lines.reduce((sum, { w, phase }) => sum + Math.sin(w * t + phase), 0);
}

/** One way a struck piece of metal rings. */
export interface Mode {
  readonly hz: number;
  readonly amplitude: number;
  /** Time in which it falls to 1/e, s. */
  readonly decayS: number;
}

/** A piece of metal struck at time zero; silent before. A blow takes `attackS` to build up. */
export function struck(modes: readonly Mode[], attackS: number): Wave {
  return (t) => {
    if (t < 0) return 0;
    const attack = t >= attackS ? 1 : Math.sin((Math.PI / 2) * (t / attackS)) ** 2;
    return (
      attack *
      modes.reduce(
        (sum, m) => sum + m.amplitude * Math.exp(-t / m.decayS) * Math.sin(2 * Math.PI * m.hz * t),
        0,
      )
    );
  };
}

/** Noise with a sharp start and an exponential end. */
export function burst(lowHz: number, highHz: number, decayS: number, seed: string): Wave {
  const noise = periodicNoise(0.5, lowHz, highHz, seed);
  return (t) => (t < 0 ? 0 : noise(t) * Math.exp(-t / decayS) * Math.min(1, t / 0.0005));
}

/** Scaled to a root mean square; a peak above 0.95 would be cut off by the file and is refused. */
export function toRms(samples: Float64Array, rms: number): Float64Array {
  const now = Math.sqrt(samples.reduce((sum, x) => sum + x * x, 0) / samples.length);
  const scaled = samples.map((x) => (x * rms) / now);
  if (peak(scaled) > 0.95)
    throw new Error(`The peak ${peak(scaled).toFixed(2)} is too high for a level of ${rms}.`);
  return scaled;
}

/** Scaled to a peak, with the last 5 ms faded out. */
export function toPeak(samples: Float64Array, highest: number): Float64Array {
  const scale = highest / peak(samples);
  const fade = 0.005 * RATE_HZ;
  return samples.map((x, i) => x * scale * Math.min(1, (samples.length - 1 - i) / fade));
}

function peak(samples: Float64Array): number {
  return samples.reduce((most, x) => Math.max(most, Math.abs(x)), 0);
}
