import { describe, expect, it } from 'vitest';
import { parseScenarioText } from '../../src/scenario/parse.ts';
import type { Scenario } from '../../src/scenario/scenario.ts';
import { partLibrary, scenarioTexts } from '../scenario/files.ts';
import { Beginner } from '../support/beginner.ts';

const LIBRARY = partLibrary();
const JOBS: readonly (readonly [string, Scenario])[] = [...scenarioTexts()].map(([id, text]) => {
  const read = parseScenarioText(text, LIBRARY);
  if (!read.ok) throw new Error(`${id}: ${JSON.stringify(read.issues)}`);
  return [id, read.value];
});

/** Passes of ammeter readings take long; armatures have their own cases beside this. */
const SHORT = JOBS.filter(
  ([, { public: card }]) =>
    process.env.ALL === '1' ||
    (card.parts.some((part) => part !== 'armature') && !card.tests.includes('neighbour')),
);

describe('every job of the library with a field frame or a brush plate, done as guided work', () => {
  it.each(SHORT)('%s is led from the first look to the job handed in', (_id, scenario) => {
    const { me, verdicts } = new Beginner(scenario).follow();
    expect(me.refusal).toBeNull();
    expect(me.everythingBroken.filter((code) => code !== 'overheated')).toEqual([]);
    expect(me.session.stateAt(me.atMs).stage).toBe('handedIn');
    expect(verdicts.map(({ part }) => part)).toEqual([...scenario.public.parts]);
  });
});
