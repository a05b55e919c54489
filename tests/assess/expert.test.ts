import { describe, expect, it } from 'vitest';
import { assess } from '../../src/assess/assess.ts';
import { JOB_FRAMES } from '../../src/engine/parts/fieldFrameDesigns.ts';
import {
  BENCH_FAMILIES,
  DIFFICULTIES,
  difficulties,
  generateScenario,
  PLATE_FAMILIES,
  tellable,
  tellableOnFrame,
  type Wish,
} from '../../src/scenario/generate.ts';
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

describe('the expert solves whole jobs, frames and plates the generator makes', () => {
  const seed = 'unseen 2';
  const frames = [...JOB_FRAMES.values()].flatMap((frame, nth) =>
    tellableOnFrame(frame).map((frameFamily, at): Wish => {
      const difficulty = DIFFICULTIES[(nth + at) % DIFFICULTIES.length]!;
      return { seed, about: ['fieldFrame'], frame: frame.id, frameFamily, difficulty };
    }),
  );
  const plates = PLATE_FAMILIES.flatMap((plateFamily, at) =>
    [false, true].map((curedHere): Wish => {
      const difficulty = DIFFICULTIES[(at + (curedHere ? 1 : 0)) % DIFFICULTIES.length]!;
      return { seed, about: ['brushPlate'], plateFamily, curedHere, difficulty };
    }),
  );
  const benches = BENCH_FAMILIES.map((bench): Wish => ({ seed, bench, part: 'wave-23', difficulty: 'easy' }));
  const worn: readonly Wish[] = [
    { seed, wear: 'shallow', part: 'wave-23', family: 'sound' },
    { seed, wear: 'runsOut', part: 'wave-23', family: 'sound' },
    { seed, wear: 'thin', part: 'wave-23', family: 'sound' },
    { seed, wear: 'shortBrush', about: ['fieldFrame', 'brushPlate'], frame: 'field-two-branches' },
  ];
  const cured = (['joint', 'bridge', 'dirty'] as const).map(
    (family): Wish => ({ seed, family, part: 'lap-28', curedHere: true, difficulty: 'easy' }),
  );
  const whole: Wish = { seed, about: ['armature', 'fieldFrame', 'brushPlate'], difficulty: 'easy' };
  const wishes = [...frames, ...plates, ...benches, ...worn, ...cured, whole];
  it.each(wishes.map((wish) => [JSON.stringify(wish), wish] as const))('%s', (_words, wish) => {
    expect(notWon(generateScenario(wish, library))).toEqual([]);
  });
});
