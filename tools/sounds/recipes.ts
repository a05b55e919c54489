import { seeded } from '../../src/engine/math/random.ts';
import {
  LEAD_MS,
  LOOP_MS,
  LOOP_NAMES,
  type LoopName,
  type ShotName,
  type SoundName,
} from '../../src/sound/names.ts';
import {
  burst,
  harmonics,
  periodicNoise,
  RATE_HZ,
  sample,
  struck,
  toPeak,
  toRms,
  type Wave,
} from './synth.ts';
import type { Pcm } from './wav.ts';

/** How each sound of the bench is made. */

/** Loudness of every loop at gain 1: root mean square. */
const LOOP_RMS = 0.16;
const SHOT_PEAK = 0.8;

export function makeSound(name: SoundName): Pcm {
  const samples = isLoop(name) ? makeLoop(name) : makeShot(name);
  return { rateHz: RATE_HZ, samples };
}

function isLoop(name: SoundName): name is LoopName {
  return (LOOP_NAMES as readonly string[]).includes(name);
}

function makeLoop(name: LoopName): Float64Array {
  const hz = name.endsWith('100') ? 100 : 120;
  const periodS = LOOP_MS[name] / 1000;
  const lead = LEAD_MS / 1000;
  const wave = loopWave(name, hz, periodS);
  return toRms(sample(wave, -lead, periodS + 2 * lead), LOOP_RMS);
}

function loopWave(name: LoopName, hz: number, periodS: number): Wave {
  if (name.startsWith('hum')) return hum(hz);
  return name.startsWith('growl') ? growl(hz, periodS) : buzz(hz, periodS);
}

/** Laminations pulling together twice a period of the mains, and a trace of the mains itself. */
function hum(hz: number): Wave {
  const body = harmonics(hz, [1, 0.5, 0.26, 0.17, 0.08, 0.06, 0.03], `hum ${hz}`);
  const mains = harmonics(hz / 2, [0.07], `mains ${hz}`);
  return (t) => body(t) + mains(t);
}

/** Many strong harmonics, beating a little with the mains, and loose parts that rattle once a pull. */
function growl(hz: number, periodS: number): Wave {
  const amplitudes = Array.from({ length: 26 }, (_, i) => (i % 2 === 0 ? 1 : 0.75) / (i + 1) ** 0.75);
  const body = harmonics(hz, amplitudes, `growl ${hz}`);
  const noise = periodicNoise(periodS, 600, 4000, `rattle ${hz}`);
  const gate = (t: number) => Math.max(0, Math.sin(2 * Math.PI * hz * t)) ** 6;
  return (t) =>
    Math.tanh(0.5 * (body(t) * (1 + 0.25 * Math.sin(Math.PI * hz * t)) + 1.6 * gate(t) * noise(t)));
}

/** A steel strip beating on iron at every pull, no two blows quite alike, in a pattern that closes on itself. */
function buzz(hz: number, periodS: number): Wave {
  const random = seeded(`buzz ${hz}`);
  const blows = Array.from({ length: Math.round(hz * periodS) }, (_, k) => ({
    at: (k + 0.12 * (random() - 0.5)) / hz,
    force: 0.6 + 0.8 * random() ** 2,
  }));
  const ring = struck(
    [
      { hz: 870, amplitude: 1, decayS: 0.004 },
      { hz: 1490, amplitude: 0.8, decayS: 0.003 },
      { hz: 2610, amplitude: 0.6, decayS: 0.002 },
      { hz: 4150, amplitude: 0.35, decayS: 0.0012 },
    ],
    0.0002,
  );
  const memory = 0.04;
  const body = harmonics(hz, [0.12, 0.2, 0.12, 0.06], `strip ${hz}`);
  return (t) => {
    const now = ((t % periodS) + periodS) % periodS;
    const blowsNow = blows.reduce((sum, { at, force }) => {
      const since = (((now - at) % periodS) + periodS) % periodS;
      return since < memory ? sum + force * ring(since) : sum;
    }, 0);
    return Math.tanh(0.8 * blowsNow) + body(t);
  };
}

const SHOTS: Readonly<Record<ShotName, { readonly lengthS: number; readonly wave: () => Wave }>> = {
  click: { lengthS: 0.14, wave: click },
  tick: { lengthS: 0.06, wave: tick },
  clack: { lengthS: 0.3, wave: clack },
  arc: { lengthS: 0.16, wave: arc },
  chalk: { lengthS: 0.3, wave: chalk },
  thud: { lengthS: 0.45, wave: thud },
  slap: { lengthS: 0.22, wave: slap },
};

function makeShot(name: ShotName): Float64Array {
  const { lengthS, wave } = SHOTS[name];
  return toPeak(sample(wave(), 0, lengthS), SHOT_PEAK);
}

/** The spring of a rotary switch lets go, the contact lands. */
function click(): Wave {
  const spring = struck([{ hz: 2300, amplitude: 0.5, decayS: 0.004 }], 0.0003);
  const contact = struck(
    [
      { hz: 620, amplitude: 1, decayS: 0.012 },
      { hz: 1750, amplitude: 0.7, decayS: 0.006 },
    ],
    0.0004,
  );
  return (t) => spring(t) + contact(t - 0.035);
}

function tick(): Wave {
  return struck(
    [
      { hz: 3200, amplitude: 1, decayS: 0.005 },
      { hz: 5100, amplitude: 0.6, decayS: 0.003 },
    ],
    0.0002,
  );
}

/** A latched spring contact flies open and bounces once. */
function clack(): Wave {
  const blow = struck(
    [
      { hz: 310, amplitude: 1, decayS: 0.03 },
      { hz: 745, amplitude: 0.8, decayS: 0.018 },
      { hz: 1640, amplitude: 0.5, decayS: 0.008 },
    ],
    0.0005,
  );
  return (t) => blow(t) + 0.4 * blow(t - 0.038);
}

function arc(): Wave {
  const snap = burst(800, 9000, 0.008, 'arc');
  const sizzle = burst(2500, 9000, 0.04, 'sizzle');
  return (t) => snap(t) + 0.25 * sizzle(t - 0.004);
}

/** Chalk sticks and slips as it draws. */
function chalk(): Wave {
  const grains = periodicNoise(0.5, 1800, 7000, 'chalk');
  const stick = harmonics(34, [0.5, 0.35, 0.2], 'stick');
  return (t) => grains(t) * Math.max(0, 0.5 + stick(t)) * Math.sin(Math.PI * Math.min(1, t / 0.28)) ** 0.5;
}

/** A few kilograms of iron laid on iron by hand. */
function thud(): Wave {
  const body = struck(
    [
      { hz: 82, amplitude: 1, decayS: 0.09 },
      { hz: 163, amplitude: 0.8, decayS: 0.06 },
      { hz: 420, amplitude: 0.35, decayS: 0.03 },
      { hz: 1240, amplitude: 0.15, decayS: 0.05 },
    ],
    0.003,
  );
  return (t) => body(t) + 0.35 * body(t - 0.06);
}

function slap(): Wave {
  return struck(
    [
      { hz: 630, amplitude: 0.8, decayS: 0.02 },
      { hz: 1730, amplitude: 1, decayS: 0.03 },
      { hz: 3390, amplitude: 0.6, decayS: 0.015 },
    ],
    0.0003,
  );
}
