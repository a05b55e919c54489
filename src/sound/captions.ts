import type { Observation } from '../bench/observation.ts';
import { soundsBetween } from './events.ts';
import type { ShotName } from './names.ts';

/** What has last been said about the sounds that go on. */
export interface Told {
  readonly level: number;
  readonly harsh: boolean;
  readonly buzz: number;
}

export const NOTHING_TOLD: Told = { level: 0, harsh: false, buzz: 0 };

/** A change of this many steps is worth a word; an ear hears about one. */
const LEVEL_STEP = 2;
const BUZZ_STEP = 2;
const RATTLING = 8;
/** Harshness from which the hum is called a growl, and back. */
const HARSH_FROM = 5;
const SMOOTH_BELOW = 4;

const SHOT_WORDS: Readonly<Record<ShotName, string>> = {
  click: 'A switch clicks',
  tick: 'A probe ticks on metal',
  clack: 'The cut-out opens with a clack',
  arc: 'A spark snaps as a probe leaves the metal',
  chalk: 'Chalk scrapes',
  thud: 'The armature settles into the cradle with a thud',
  slap: 'The strip slaps on to the iron',
};

/** Captions for one observation after another: what they say now, and what to remember for the next. */
export function caption(
  told: Told,
  before: Observation | null,
  now: Observation,
): { readonly told: Told; readonly lines: readonly string[] } {
  const shots = before === null ? [] : soundsBetween(before, now).map((shot) => SHOT_WORDS[shot]);
  const harsh = isHarsh(told.harsh, now);
  const hum = humCaption(told, now.hum.level, harsh);
  const strip = stripCaption(told.buzz, now.strip.buzz);
  return {
    told: {
      level: hum === null ? told.level : now.hum.level,
      harsh,
      buzz: strip === null ? told.buzz : now.strip.buzz,
    },
    lines: [...shots, hum, strip].filter((line): line is string => line !== null),
  };
}

function isHarsh(was: boolean, { hum }: Observation): boolean {
  return hum.level > 0 && hum.harshness >= (was ? SMOOTH_BELOW : HARSH_FROM);
}

function humCaption(told: Told, level: number, harsh: boolean): string | null {
  if (level === 0) return told.level > 0 ? 'The hum stops' : null;
  if (told.level === 0) return harsh ? 'The growler growls harshly' : 'The growler hums';
  if (harsh !== told.harsh) {
    return harsh ? 'The hum turns into a harsh growl' : 'The growl drops to a hum';
  }
  if (Math.abs(level - told.level) < LEVEL_STEP) return null;
  const verb = harsh ? 'growls' : 'hums';
  return `The growler ${verb} ${level > told.level ? 'louder' : 'more quietly'}`;
}

function stripCaption(told: number, buzz: number): string | null {
  if (buzz === 0) return told > 0 ? 'The strip falls silent' : null;
  if (buzz >= RATTLING) return told < RATTLING ? 'The strip rattles on the iron' : null;
  if (told === 0) return buzz <= 2 ? 'The strip buzzes faintly' : 'The strip buzzes';
  if (Math.abs(buzz - told) < BUZZ_STEP) return null;
  return buzz > told ? 'The strip buzzes harder' : 'The strip buzzes more weakly';
}
