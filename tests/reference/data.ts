import { readFileSync } from 'node:fs';

/** A reference file beside this one. */
export function referenceData<T>(name: string): T {
  return JSON.parse(readFileSync(new URL(`./data/${name}`, import.meta.url), 'utf8')) as T;
}
