import type { Observation } from '../../../bench/observation.ts';

/** What there is to hear, in words: the caption under the bench. */
export function captions(seen: Observation): string {
  const parts = [hum(seen), strip(seen), seen.supply === 'cutOut' ? 'the cut-out has let go' : null];
  const heard = parts.filter((part) => part !== null);
  return heard.length ? heard.join('; ') : 'quiet';
}

function hum({ hum: { level, harshness } }: Observation): string | null {
  if (level === 0) return null;
  const loud = level <= 6 ? 'a low hum' : level <= 12 ? 'a steady hum' : 'a loud hum';
  if (harshness >= 7) return `${loud} that growls harshly`;
  return harshness >= 4 ? `${loud} with a rattle in it` : loud;
}

function strip({ strip: { buzz } }: Observation): string | null {
  if (buzz === 0) return null;
  if (buzz <= 2) return 'the strip whispers';
  return buzz <= 5 ? 'the strip buzzes' : 'the strip rattles on the iron';
}
