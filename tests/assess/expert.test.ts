import { describe, expect, it } from 'vitest';
import { parseScenarioText } from '../../src/scenario/parse.ts';
import type { Scenario } from '../../src/scenario/scenario.ts';
import { scenarioTexts } from '../scenario/files.ts';
import { library } from './attempts.ts';
import { notWon } from './won.ts';

const jobs = [...scenarioTexts()].map(([name, text]): [string, Scenario] => {
  const read = parseScenarioText(text, library);
  if (!read.ok) throw new Error(`${name}: ${JSON.stringify(read.issues)}`);
  return [name, read.value];
});
// One kind of armature after the other: what its faults would show is worked out once.
const kindOf = ([, { public: shown }]: [string, Scenario]) => `${shown.armature} ${shown.mains}`;
jobs.sort((one, other) => kindOf(one).localeCompare(kindOf(other)));

describe('the expert, from observations alone, wins every mark', () => {
  it('in a library of sixty jobs and more', () => {
    expect(jobs.length).toBeGreaterThanOrEqual(60);
  });
  // The first job of a kind works out what all its faults would show, and a whole unit weighs three parts.
  it.each(jobs)(
    'of %s',
    (_name, scenario) => {
      expect(notWon(scenario)).toEqual([]);
    },
    120_000,
  );
});
