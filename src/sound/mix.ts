import type { Observation } from '../bench/observation.ts';

/** Gains of the sounds that go on, 0..1: smooth hum, harsh growl, buzz of the strip. */
export interface Mix {
  readonly hum: number;
  readonly harsh: number;
  readonly buzz: number;
}

export const SILENCE: Mix = { hum: 0, harsh: 0, buzz: 0 };

const LOUDEST_LEVEL = 20;
/** Levels of the hum in a tenfold gain: the observation counts loudness in even steps, as an ear does. */
const LEVELS_PER_TENFOLD = 15;
const LOUDEST_BUZZ = 8;
const BUZZ_STEPS_PER_TENFOLD = 8;
/** The rattling strip, beside the loudest hum. */
const BUZZ_AT_MOST = 0.8;

/**
 * How loud each loop sounds for what the bench gives an ear. The hum turns from smooth to harsh at equal power, so
 * that its loudness follows the level alone.
 */
export function mix(seen: Pick<Observation, 'hum' | 'strip'>): Mix {
  const { level, harshness } = seen.hum;
  const loudness = level <= 0 ? 0 : 10 ** ((level - LOUDEST_LEVEL) / LEVELS_PER_TENFOLD);
  const turn = (Math.PI / 2) * (harshness / 10);
  return {
    hum: loudness * Math.cos(turn),
    harsh: loudness * Math.sin(turn),
    buzz: buzzGain(seen.strip.buzz),
  };
}

function buzzGain(buzz: number): number {
  return buzz <= 0 ? 0 : BUZZ_AT_MOST * 10 ** ((buzz - LOUDEST_BUZZ) / BUZZ_STEPS_PER_TENFOLD);
}
