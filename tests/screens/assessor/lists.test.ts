import { describe, expect, it } from 'vitest';
import type { Entry } from '../../../src/attempt/entry.ts';
import type { Action } from '../../../src/bench/action.ts';
import type { SignedRecord } from '../../../src/records/sign.ts';
import {
  byPerson,
  chosen,
  FIRST_WISHES,
  type ListWishes,
  whyNotOneSet,
} from '../../../src/screens/assessor/attemptTable.ts';
import type { FinishedAttempt } from '../../../src/screens/assessor/desk.ts';
import { spansOf, sumsOf } from '../../../src/screens/assessor/lanes.ts';
import { assessorsOf, compare } from '../../../src/screens/assessor/pairs.ts';
import { readAssessorRoute, writeAssessorRoute } from '../../../src/screens/assessor/route.ts';
import { recordOver } from '../../records/support/attempt.ts';

const base: FinishedAttempt = {
  id: 'a-1',
  learner: 'T. Okafor',
  jobId: 'q-1',
  job: 'Dynamo, canal boat',
  mode: 'assessed',
  startedAt: '2026-03-02T08:00:00Z',
  endMs: 600_000,
  state: 'handedIn',
  earned: 10,
  of: 40,
  record: null,
};
const attempts: FinishedAttempt[] = [
  base,
  { ...base, id: 'a-2', learner: ' t.  okafor ', startedAt: '2026-03-03T08:00:00Z', earned: 30 },
  { ...base, id: 'a-3', learner: 'M. Brandt', job: 'Starter, mower', mode: 'practice', state: 'stopped' },
  { ...base, id: 'a-4', learner: '', record: { id: 'r', outcome: 'notYet', assessor: 'R. L.' }, endMs: 1 },
];
const ids = (wishes: Partial<ListWishes>) =>
  chosen(attempts, { ...FIRST_WISHES, judged: 'all', ...wishes }).map(({ id }) => id);

describe('the list of attempts', () => {
  it('is filtered by words, mode, state and whether it was judged', () => {
    expect(ids({ find: 'OKAFOR dyn' })).toEqual(['a-2', 'a-1']);
    expect(ids({ mode: 'practice' })).toEqual(['a-3']);
    expect(ids({ state: 'stopped' })).toEqual(['a-3']);
    expect(ids({ judged: 'signed' })).toEqual(['a-4']);
    expect(ids({ judged: 'open' })).not.toContain('a-4');
    expect(ids({ find: 'nobody' })).toEqual([]);
  });

  it('is sorted both ways, newest first among equals', () => {
    expect(ids({ sort: 'share', falling: true })[0]).toBe('a-2');
    expect(ids({ sort: 'share', falling: false }).at(-1)).toBe('a-2');
    expect(ids({ sort: 'minutes', falling: false })).toEqual(['a-4', 'a-2', 'a-1', 'a-3']);
    expect(ids({ sort: 'job', falling: false }).at(-1)).toBe('a-3');
  });

  it('knows one person by their name, however it was typed, and makes no set of two people', () => {
    expect(byPerson(attempts).map(({ name, attempts: own }) => [name, own.length])).toEqual([
      ['T. Okafor', 2],
      ['M. Brandt', 1],
      ['No name given', 1],
    ]);
    expect(whyNotOneSet(attempts.slice(0, 2))).toBeNull();
    expect(whyNotOneSet(attempts.slice(0, 3))).toMatch(/different people/);
    expect(whyNotOneSet([attempts[3]!])).toBeNull();
    expect(whyNotOneSet([attempts[3]!, { ...attempts[3]!, id: 'a-5' }])).toMatch(/no name/);
    expect(whyNotOneSet([])).toMatch(/at least one/);
  });
});

describe('the lanes of work', () => {
  const entry = (n: number, atMs: number, action: Action) => ({ n, atMs, action }) as Entry;
  const spans = spansOf(
    [
      entry(0, 0, { type: 'lens.look', place: 'bar:1' }),
      entry(1, 2000, { type: 'armature.turn', byDeg: 5 }),
      entry(2, 3000, { type: 'lead.take', lead: 'ammeter.1', grip: 'handle' }),
      entry(3, 4000, { type: 'armature.turn', byDeg: 5 }),
      entry(4, 30_000, { type: 'armature.turn', byDeg: 5 }),
      entry(5, 31_000, { type: 'lead.take', lead: 'lamp.1', grip: 'handle' }),
    ],
    33_000,
  );

  it('give a turn of the armature to the test it is turned for, and leave pauses empty', () => {
    expect(spans).toEqual([
      { lane: 'look', fromMs: 0, toMs: 2000, acts: 1 },
      { lane: 'bench', fromMs: 2000, toMs: 3000, acts: 1 },
      { lane: 'ammeter', fromMs: 3000, toMs: 12_000, acts: 2 },
      { lane: 'ammeter', fromMs: 30_000, toMs: 31_000, acts: 1 },
      { lane: 'lamp', fromMs: 31_000, toMs: 33_000, acts: 1 },
    ]);
  });

  it('tell the rail’s tools and remedies from lamp and bench', () => {
    const acts: Action[] = [
      { type: 'lead.take', lead: 'tester.1', grip: 'handle' },
      { type: 'tester.press', on: true },
      { type: 'gauge.read', gauge: 'undercut' },
      { type: 'remedy.do', remedy: 'undercut' },
      { type: 'part.takeUp', part: 'brushPlate' },
      { type: 'lead.take', lead: 'lamp.1', grip: 'handle' },
    ];
    const worked = spansOf(
      acts.map((act, n) => entry(n, n * 1000, act)),
      7000,
    );
    expect(worked.map(({ lane, acts: count }) => [lane, count])).toEqual([
      ['tools', 3],
      ['remedy', 1],
      ['bench', 1],
      ['lamp', 1],
    ]);
  });

  it('add up', () => {
    expect(sumsOf(spans)).toMatchObject({ ammeter: { acts: 3, ms: 10_000 }, paper: { acts: 0, ms: 0 } });
  });
});

describe('two assessors side by side', () => {
  const signed = (
    key: string,
    seals: readonly string[],
    outcome: 'competent' | 'notYet',
    signedAt: string,
  ): SignedRecord =>
    ({
      record: {
        ...recordOver(seals.map((seal) => ({ attempt: `a-${seal}`, seal }))),
        assessor: `Assessor ${key}`,
        outcome,
        signedAt,
        signedWith: { publicKey: '', fingerprint: key },
      },
    }) as unknown as SignedRecord;
  const records = [
    signed('k1', ['s1', 's2'], 'competent', '2026-03-01'),
    signed('k1', ['s3'], 'competent', '2026-03-02'),
    signed('k1', ['s3'], 'notYet', '2026-03-03'),
    signed('k2', ['s2', 's1'], 'notYet', '2026-03-04'),
    signed('k2', ['s3'], 'notYet', '2026-03-05'),
    signed('k2', ['s4'], 'competent', '2026-03-06'),
  ];

  it('are told apart by their keys', () => {
    expect(assessorsOf(records)).toEqual([
      { key: 'k1', name: 'Assessor k1' },
      { key: 'k2', name: 'Assessor k2' },
    ]);
  });

  it('are compared where both judged the same attempts, the newest judgement counting', () => {
    const { outcomes, criteria } = compare(records, 'k1', 'k2');
    expect(outcomes.map(({ first, second }) => [first, second])).toEqual([
      ['competent', 'notYet'],
      ['notYet', 'notYet'],
    ]);
    expect(criteria).toHaveLength(2);
    expect(criteria[0]).toMatchObject({ first: 'met', second: 'met', about: 'T. Okafor: Tests safely' });
  });
});

describe('the assessor’s addresses', () => {
  it('come back as they were written', () => {
    for (const route of [
      { page: 'attempts' },
      { page: 'agreement' },
      { page: 'review', id: 'd 1/ü' },
      { page: 'record', id: 'r-1' },
    ] as const)
      expect(readAssessorRoute(writeAssessorRoute(route).replace('#/assessor', ''))).toEqual(route);
  });

  it('lead to the list when they are unknown', () => {
    for (const rest of ['', '/', '/nothing', '/review', '/review/'])
      expect(readAssessorRoute(rest)).toEqual({ page: 'attempts' });
    expect(readAssessorRoute('/record/%E0%A4%A')).toEqual({ page: 'record', id: '%E0%A4%A' });
  });
});
