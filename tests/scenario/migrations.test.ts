import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parseScenario, parseScenarioText } from '../../src/scenario/parse.ts';
import { BUILT_IN_RUBRIC, rubricOf } from '../../src/scenario/public/rubric.ts';
import { partLibrary } from './files.ts';

const library = partLibrary();
const old = (version: number) =>
  readFileSync(new URL(`old/version-${version}.json`, import.meta.url), 'utf8');

describe('a file of an older version', () => {
  it('of version 1 is read: its one part becomes the list of parts', () => {
    const read = parseScenarioText(old(1), library);
    if (!read.ok) throw new Error(JSON.stringify(read.issues));
    expect(read.value.version).toBe(3);
    expect(read.value.public.parts).toEqual(['armature']);
    expect(read.value.public).not.toHaveProperty('part');
    const before = JSON.parse(old(1));
    expect(read.value.hidden).toEqual(before.hidden);
    expect(read.value.public).toMatchObject({ id: before.public.id, card: before.public.card });
  });

  it('of version 2 is read: nothing in it changes, and it is marked by the built-in rubric', () => {
    const read = parseScenarioText(old(2), library);
    if (!read.ok) throw new Error(JSON.stringify(read.issues));
    expect(read.value).toEqual({ ...JSON.parse(old(2)), version: 3 });
    expect(rubricOf(read.value.public)).toBe(BUILT_IN_RUBRIC);
  });

  it('of version 1 with something wrong in it is refused by the place, not by its age', () => {
    const broken = JSON.parse(old(1));
    broken.public.mode = 'asleep';
    const read = parseScenario(broken, library);
    expect(read.ok ? [] : read.issues.map(({ path }) => path)).toEqual(['public.mode']);
  });

  it('of version 1 without a public half is still one sentence', () => {
    const read = parseScenario({ format: 'slot-and-riser/scenario', version: 1 }, library);
    expect(read.ok ? [] : read.issues.map(({ path }) => path)).toEqual(['public', 'hidden']);
  });

  it('is refused when no step leads from its version', () => {
    const read = parseScenario({ ...JSON.parse(old(1)), version: 0 }, library);
    expect(read.ok ? '' : read.issues[0]!.sentence).toBe('Expected version 3 or an older one, but 0 came.');
  });
});
