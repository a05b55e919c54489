/** Sounds that go on, by the frequency they are made for: smooth hum, harsh growl, strip on or near the iron. */
export const LOOP_NAMES = ['hum100', 'hum120', 'growl100', 'growl120', 'buzz100', 'buzz120'] as const;
export type LoopName = (typeof LOOP_NAMES)[number];

/**
 * Sounds that happen once: switch, probe on metal, cut-out, arc of a broken contact, chalk, armature laid into the
 * cradle, strip slapping on to the iron.
 */
export const SHOT_NAMES = ['click', 'tick', 'clack', 'arc', 'chalk', 'thud', 'slap'] as const;
export type ShotName = (typeof SHOT_NAMES)[number];

export type SoundName = LoopName | ShotName;
export const SOUND_NAMES: readonly SoundName[] = [...LOOP_NAMES, ...SHOT_NAMES];

/**
 * A loop's file goes on for a little before and after the part that repeats, so that a browser that resamples it has
 * true neighbours at the seam. Both in ms and whole periods of 100 and 120 Hz.
 */
export const LEAD_MS = 50;
export const LOOP_MS: Readonly<Record<LoopName, number>> = {
  hum100: 500,
  hum120: 500,
  growl100: 1000,
  growl120: 1000,
  buzz100: 1000,
  buzz120: 1000,
};
