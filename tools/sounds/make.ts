import { mkdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { SOUND_NAMES } from '../../src/sound/names.ts';
import { makeSound } from './recipes.ts';
import { encodeWav } from './wav.ts';

/** Writes every sound of the bench into assets/sounds: `npx tsx tools/sounds/make.ts`. */
const folder = fileURLToPath(new URL('../../assets/sounds/', import.meta.url));
mkdirSync(folder, { recursive: true });
for (const name of SOUND_NAMES) {
  const bytes = encodeWav(makeSound(name));
  writeFileSync(`${folder}${name}.wav`, bytes);
  console.log(`${name}.wav ${(bytes.length / 1024).toFixed(1)} kB`);
}
