import { describe, expect, it } from 'vitest';
import { assess } from '../../src/assess/assess.ts';
import { difficulties, generateScenario, tellable } from '../../src/scenario/generate.ts';
import { parseScenarioText } from '../../src/scenario/parse.ts';
import type { Scenario } from '../../src/scenario/scenario.ts';
import { scenarioTexts } from '../scenario/files.ts';
import { expertAttempt, library } from './attempts.ts';
import { namesTheHidden } from './hiddenAnswers.ts';

/** What the expert did not win, with what the expert said: empty when every mark was earned and no rule broken. */
function notWon(scenario: Scenario) {
  const { attempt, verdicts } = expertAttempt(scenario);
  const { marks, stoppedBy } = assess(attempt, library);
  const lost = marks.filter(({ earned, of }) => earned < of).map(({ id, sentence }) => `${id}: ${sentence}`);
  const broken = attempt.entries.flatMap(({ outcome }) => outcome.breaches.map(({ interlock }) => interlock));
  const unnamed = verdicts.filter(
    (verdict) => verdict.part !== 'armature' && !namesTheHidden(scenario, verdict),
  );
  return lost.length + broken.length + unnamed.length === 0 && stoppedBy === null
    ? []
    : [{ lost, broken, unnamed, stoppedBy, verdicts, hidden: scenario.hidden }];
}

const jobs = [...scenarioTexts()].map(([name, text]): [string, Scenario] => {
  const read = parseScenarioText(text, library);
  if (!read.ok) throw new Error(`${name}: ${JSON.stringify(read.issues)}`);
  return [name, read.value];
});

describe('the expert, from observations alone, wins every mark', () => {
  it('in a library of sixty jobs and more', () => {
    expect(jobs.length).toBeGreaterThanOrEqual(60);
  });
  it.each(jobs)('of %s', (_name, scenario) => {
    expect(notWon(scenario)).toEqual([]);
  });
});

describe('the expert solves jobs the generator makes', () => {
  // A seed the generator was not made with; one difficulty for each family of each part, each in its turn.
  const seed = 'unseen 1';
  const wishes = [...library.values()].flatMap((design, nth) =>
    tellable(design).map((family, at) => {
      const levels = difficulties(design);
      return { seed, part: design.id, family, difficulty: levels[(nth + at) % levels.length]! };
    }),
  );
  it.each(wishes)('$part, $family, $difficulty', (wish) => {
    expect(notWon(generateScenario(wish, library))).toEqual([]);
  });
});
