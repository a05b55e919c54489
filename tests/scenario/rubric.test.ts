import { describe, expect, it } from 'vitest';
import { parseNewJob, parseScenario } from '../../src/scenario/parse.ts';
import { BUILT_IN_RUBRIC, rubricOf, THRESHOLDS } from '../../src/scenario/public/rubric.ts';
import { partLibrary, scenarioTexts } from './files.ts';

const library = partLibrary();
// biome-ignore lint/suspicious/noExplicitAny: a rubric broken on purpose fits no type
type Loose = Record<string, any>;

const withRubric = (rubric: unknown) => {
  const file = JSON.parse(scenarioTexts().get('q-91d2')!);
  return parseScenario({ ...file, version: 3, public: { ...file.public, rubric } }, library);
};
function broken(change: (rubric: Loose) => void): string[] {
  const rubric: Loose = JSON.parse(JSON.stringify(BUILT_IN_RUBRIC));
  change(rubric);
  const read = withRubric(rubric);
  return read.ok ? [] : read.issues.map(({ path, sentence }) => `${path}: ${sentence}`);
}

it('a new job is worth whole points; one kept before may have tenths', () => {
  const file = JSON.parse(scenarioTexts().get('q-91d2')!);
  const criteria = [{ criterion: 'groundPass', weight: 7.5 }];
  const rubric = { ...BUILT_IN_RUBRIC, criteria, sure: { rule: 'brier', weight: 0.5 } };
  const job = { ...file, version: 3, public: { ...file.public, rubric } };
  expect(parseScenario(job, library).ok).toBe(true);
  const read = parseNewJob(job, library);
  expect(read.ok ? [] : read.issues).toEqual([
    { path: 'public.rubric.criteria[0].weight', sentence: 'Expected whole points, but 7.5 came.' },
    { path: 'public.rubric.sure.weight', sentence: 'Expected whole points, but 0.5 came.' },
  ]);
});

describe('a rubric in a scenario file', () => {
  it('is read as it stands, and its job is marked by it', () => {
    const rubric = { ...BUILT_IN_RUBRIC, name: 'Evening class', version: 4 };
    const read = withRubric(rubric);
    if (!read.ok) throw new Error(JSON.stringify(read.issues));
    expect(rubricOf(read.value.public)).toEqual(rubric);
  });

  it('may weigh, drop and tighten, and bring an order of its own', () => {
    const own = (rubric: Loose) => {
      rubric.criteria = [
        { criterion: 'groundPass', weight: 30, threshold: 80 },
        { criterion: 'houseSequence', weight: 5 },
      ];
      rubric.houseSequence = ['look', 'ground', 'strip'];
      rubric.sure = { rule: 'logarithmic', weight: 10 };
    };
    expect(broken(own)).toEqual([]);
  });

  it.each<[string, (rubric: Loose) => void, string]>([
    [
      'an unknown criterion',
      (r) => (r.criteria[2].criterion = 'politeness'),
      'public.rubric.criteria[2].criterion: Expected a known criterion (lookedFirst, ',
    ],
    [
      'a criterion twice',
      (r) => (r.criteria[3].criterion = 'lookedFirst'),
      'public.rubric.criteria[3].criterion: Expected each criterion once, but "lookedFirst" came again.',
    ],
    [
      'a weight below nothing',
      (r) => (r.criteria[0].weight = -1),
      'public.rubric.criteria[0].weight: Expected a number of at least 0, but -1 came.',
    ],
    [
      'a weight that is no number',
      (r) => (r.criteria[0].weight = 'much'),
      'public.rubric.criteria[0].weight: Expected a number, but "much" came.',
    ],
    [
      'a threshold where there is none',
      (r) => (r.criteria[0].threshold = 3),
      'public.rubric.criteria[0].threshold: Expected this left out, since "lookedFirst" has none, but 3 came.',
    ],
    [
      'a threshold out of range',
      (r) => (r.criteria[5].threshold = 101),
      'public.rubric.criteria[5].threshold: Expected 0 to 100 %, but 101 came.',
    ],
    [
      'nothing worth anything',
      (r) => (r.criteria = [{ criterion: 'lookedFirst', weight: 0 }]),
      'public.rubric.criteria: Expected at least one criterion worth more than 0 points, but none came.',
    ],
    [
      'an order that is not marked',
      (r) => (r.houseSequence = ['look', 'strip']),
      'public.rubric.houseSequence: Expected a criterion "houseSequence" to mark it by, but none came.',
    ],
    [
      'a mark for an order that is not there',
      (r) => r.criteria.push({ criterion: 'houseSequence', weight: 2 }),
      'public.rubric.houseSequence: Expected the order of the tests, since "houseSequence" is marked, but nothing came.',
    ],
    [
      'an improper scoring rule',
      (r) => (r.sure = { rule: 'linear', weight: 5 }),
      'public.rubric.sure.rule: Expected "brier" or "logarithmic", but "linear" came.',
    ],
    [
      'a word on what is critical',
      (r) => (r.critical = []),
      'public.rubric.critical: No field of this name is known here: expected it left out.',
    ],
    ['no name', (r) => delete r.name, 'public.rubric.name: This is missing: expected text, nothing came.'],
  ])('is refused with the place: %s', (_, change, sentence) => {
    const [first = ''] = broken(change);
    expect(first.slice(0, sentence.length)).toBe(sentence);
  });
});

it('every threshold of the built-in rubric lies in its own range', () => {
  const withOne = BUILT_IN_RUBRIC.criteria.filter(({ threshold }) => threshold !== undefined);
  expect(withOne.map(({ criterion }) => criterion).sort()).toEqual(Object.keys(THRESHOLDS).sort());
  for (const { criterion, threshold } of withOne) {
    expect(threshold).toBeGreaterThanOrEqual(THRESHOLDS[criterion]!.least);
    expect(threshold).toBeLessThanOrEqual(THRESHOLDS[criterion]!.most);
  }
});
