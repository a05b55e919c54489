import type { Hand } from './hand.ts';
import type { Senses } from './senses.ts';

/** Tips together: the lamp must light. */
export async function prove(hand: Hand, senses: Senses): Promise<void> {
  if (!/Lamp probe 2/.test(await senses.words())) await hand.press('lead:lamp.2:handle');
  await hand.drag('lead:lamp.1:handle', 'tip:lamp.2');
  await senses.until(/The lamp (?!is dark)/);
  await hand.wait(400);
}

/** Lamp leads back where they hang, and the bench off. */
export async function putLampAway(hand: Hand): Promise<void> {
  await hand.drag('lead:lamp.1:handle', 'holster:lamp.1');
  await hand.drag('lead:lamp.2:handle', 'holster:lamp.2');
  await hand.press('selector:off');
}

export type Lamp = 'lit' | 'dark';

/** Lamp probes on two places of a part that lies in front, watched until the lamp has made up its mind. */
export async function lampBetween(hand: Hand, senses: Senses, one: string, other: string): Promise<Lamp> {
  const words = await senses.words();
  if (!words.includes('Lamp probe 1 on') || !isOn(words, one)) await hand.drag('lead:lamp.1:handle', one);
  await hand.drag('lead:lamp.2:handle', other);
  return watchLamp(hand, senses);
}

const NAMES: Readonly<Record<string, string>> = {
  'field:terminal': 'Lamp probe 1 on the motor terminal',
  'field:case': 'Lamp probe 1 on the case',
  'plate:metal': 'Lamp probe 1 on the bare plate',
};

function isOn(words: string, place: string): boolean {
  return words.includes(NAMES[place] ?? '\u0000');
}

/** Time in which a filament lights, and in which one that was alight goes dark, ms. */
const LIGHTS_MS = 1000;
const DARKENS_MS = 2600;

/** What the lamp does, seen long enough to be sure of it. @param from what it did before */
export async function watchLamp(hand: Hand, senses: Senses, from: Lamp = 'lit'): Promise<Lamp> {
  await hand.wait(from === 'lit' ? DARKENS_MS : LIGHTS_MS);
  return /The lamp is dark/.test(await senses.words()) ? 'dark' : 'lit';
}
