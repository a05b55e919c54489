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

/** Jobs handed out as guided work, and those of the mat; other passes of ammeter readings would take long. */
const LED = JOBS.filter(
  ([, { public: card }]) => card.mode === 'guided' || !card.tests.includes('neighbour'),
);

describe('the guide, followed through jobs of the library', () => {
  it.each(LED)('%s is led from the first look to the job handed in', (_id, scenario) => {
    const { me, verdicts } = new Beginner(scenario).follow();
    expect(me.refusal).toBeNull();
    // What a short is left to heat is heard of afterwards: the guide lets it cool, and goes on.
    expect(me.everythingBroken.filter((code) => code !== 'overheated')).toEqual([]);
    expect(me.session.stateAt(me.atMs).stage).toBe('handedIn');
    expect(verdicts.map(({ part }) => part)).toEqual([...scenario.public.parts]);
  });
});
