import { describe, expect, it } from 'vitest';
import { assess, marksOf } from '../../src/assess/assess.ts';
import { DIAGNOSIS_TITLES } from '../../src/assess/diagnosis/marks.ts';
import { PROVEN_ID } from '../../src/assess/diagnosis/proven.ts';
import { sureScore } from '../../src/assess/diagnosis/sure.ts';
import { filmOf } from '../../src/assess/film.ts';
import { CRITERIA, canCount } from '../../src/assess/procedure/rubric.ts';
import { criterionTitle, rubricChanges } from '../../src/assess/procedure/rubricChanges.ts';
import { BUILT_IN_RUBRIC, HOUSE_SEQUENCE, type Rubric } from '../../src/scenario/public/rubric.ts';
import type { JobOptions } from '../support/benchDriver.ts';
import { attemptOf, expertAttempt, library, scenarioWith } from './attempts.ts';
import { PartsWorker } from './partsWork.ts';
import { perform, step } from './script.ts';

const built = BUILT_IN_RUBRIC;
const { attempt } = expertAttempt(scenarioWith([{ kind: 'openCoil', coil: 7 }]));
const film = filmOf(attempt, library);
const markBy = (rubric: Rubric, id: string) => marksOf(film, rubric).marks.find((mark) => mark.id === id);
const reweighed = (id: string, change: { weight?: number; threshold?: number }): Rubric => ({
  ...built,
  criteria: built.criteria.map((row) => (row.criterion === id ? { ...row, ...change } : row)),
});

describe('the built-in rubric', () => {
  it('marks every criterion the bench knows but the order of the house, and no other', () => {
    const known = [...CRITERIA.keys(), ...Object.keys(DIAGNOSIS_TITLES), PROVEN_ID].filter(
      (id) => id !== HOUSE_SEQUENCE,
    );
    expect(built.criteria.map(({ criterion }) => criterion).sort()).toEqual(known.sort());
  });
});

describe('what can count for a job', () => {
  /** Marked only where there was occasion for it. */
  const OCCASIONAL = [...CRITERIA.values()].filter(({ arises }) => arises !== undefined).map(({ id }) => id);
  const plain = (id: string) => id.replace(/^(fieldFrame|brushPlate)\./, '');

  it.each([
    ['an armature', film],
    [
      'field frame and brush plate',
      (() => {
        const parts: JobOptions = {
          parts: ['fieldFrame', 'brushPlate'],
          tests: ['fieldContinuity', 'plateInsulation', 'gauges'],
        };
        const me = new PartsWorker(parts);
        return filmOf(attemptOf(me.session, me.scenario, me.atMs + 500), library);
      })(),
    ],
  ])('of %s is what the marks are of', (_, one) => {
    const card = one.scenario.public;
    const can = built.criteria
      .filter(({ criterion }) => canCount(criterion, card))
      .map((row) => row.criterion);
    const marked = new Set(marksOf(one, built).marks.map(({ id }) => plain(id)));
    for (const id of marked) expect(can).toContain(id);
    for (const id of can) if (!OCCASIONAL.includes(id)) expect(marked).toContain(id);
  });
});

describe('a rubric of one’s own', () => {
  it('changes what a criterion is worth and nothing else', () => {
    const before = marksOf(film, built);
    const after = marksOf(film, reweighed('lampProved', { weight: 20 }));
    expect(after.of - before.of).toBe(12);
    expect(after.marks.filter(({ id }) => id !== 'lampProved')).toEqual(
      before.marks.filter(({ id }) => id !== 'lampProved'),
    );
  });

  it('leaves out what it does not list, diagnosis too', () => {
    const criteria = built.criteria.filter(({ criterion }) => !['lampProved', 'place'].includes(criterion));
    const ids = marksOf(film, { ...built, criteria }).marks.map(({ id }) => id);
    expect(ids).not.toContain('lampProved');
    expect(ids).not.toContain('place');
    expect(ids).toContain('condition');
  });

  it('sets its own threshold', () => {
    const tried = markBy(built, 'spacedLargest')!;
    expect(tried.earned).toBe(tried.of);
    expect(markBy(reweighed('spacedLargest', { threshold: 12 }), 'spacedLargest')!.earned).toBe(0);
  });

  it('is the one carried by the scenario', () => {
    const own = { ...attempt, scenario: { ...attempt.scenario } };
    own.scenario.public = { ...own.scenario.public, rubric: reweighed('stripPass', { weight: 33 }) };
    expect(assess(own, library).marks.find(({ id }) => id === 'stripPass')!.of).toBe(33);
  });

  it('cannot soften a critical act', () => {
    const gentle: Rubric = { ...built, criteria: [{ criterion: 'recordedFirst', weight: 100 }] };
    const scenario = scenarioWith([], { mode: 'practice', rubric: gentle });
    const stopped = perform(scenario, [
      step({ type: 'armature.place' }),
      step({ type: 'selector.turn', to: 'high' }),
      step({ type: 'armature.lift' }),
    ]);
    expect(assess(stopped, library).stoppedBy?.breach).toMatchObject({
      interlock: 'liftedLive',
      critical: true,
    });
  });
});

describe('an order of the house', () => {
  const ordered = (houseSequence: Rubric['houseSequence']) => {
    const criteria = [...built.criteria, { criterion: HOUSE_SEQUENCE, weight: 6 }];
    const scenario = { ...attempt.scenario };
    const rubric: Rubric = { ...built, criteria, ...(houseSequence ? { houseSequence } : {}) };
    scenario.public = { ...scenario.public, rubric };
    return assess({ ...attempt, scenario }, library).marks.find(({ id }) => id === HOUSE_SEQUENCE);
  };

  it('earns by the steps that were kept', () => {
    const done = ['look', 'spaced', 'neighbour', 'ground', 'strip'] as const;
    const all = ordered(done)!;
    const reversed = ordered([...done].reverse())!;
    expect(all.earned + reversed.earned).toBe(6);
    expect(reversed.sentence).toMatch(/^The order of the house is the strip test, .* of 4 steps\.$/);
  });

  it('is not marked where a job has fewer than two of its tests', () => {
    expect(ordered(['look', 'fieldContinuity'])).toBeUndefined();
  });
});

describe('how sure, scored', () => {
  const steps = Array.from({ length: 99 }, (_, n) => (n + 1) / 100);

  it.each(['brier', 'logarithmic'] as const)(
    'by the %s rule pays best for saying what one believes',
    (rule) => {
      for (const believed of [0.05, 0.3, 0.5, 0.72, 0.95]) {
        const expected = (said: number) =>
          believed * sureScore(rule, said, true).share + (1 - believed) * sureScore(rule, said, false).share;
        const best = steps.reduce((one, other) => (expected(other) > expected(one) ? other : one));
        expect(best).toBeCloseTo(believed, 6);
      }
    },
  );

  it.each(['brier', 'logarithmic'] as const)('by the %s rule gives nought to all of the points', (rule) => {
    const shares = [0, ...steps, 1].flatMap((sure) =>
      [true, false].map((r) => sureScore(rule, sure, r).share),
    );
    expect(Math.min(...shares)).toBeCloseTo(0, 12);
    expect(Math.max(...shares)).toBeCloseTo(1, 12);
  });

  it('says how the points came about', () => {
    expect(sureScore('brier', 0.8, false).sentence).toBe(
      '80 % sure, and the verdict was not right: off by 0.8, squared 0.64, which leaves 0.36 of the points.',
    );
  });

  it('is a mark only where the rubric asks for it', () => {
    expect(markBy(built, 'sure')).toBeUndefined();
    const mark = markBy({ ...built, sure: { rule: 'brier', weight: 8 } }, 'sure')!;
    expect(mark).toMatchObject({ group: 'diagnosis', of: 8, title: 'How sure, scored by the Brier rule' });
    expect(mark.earned).toBeGreaterThan(4);
  });
});

describe('what was changed', () => {
  it('is nothing for the built-in rubric, under whatever name', () => {
    expect(rubricChanges(built)).toEqual([]);
    expect(rubricChanges({ ...built, name: 'Ours', version: 3 })).toEqual([]);
  });

  it('is said row by row', () => {
    const changed: Rubric = {
      name: 'Evening class',
      version: 2,
      criteria: [
        ...reweighed('groundPass', { weight: 12, threshold: 90 }).criteria.filter(
          ({ criterion }) => criterion !== 'keptCool',
        ),
        { criterion: HOUSE_SEQUENCE, weight: 1 },
      ],
      houseSequence: ['look', 'ground'],
      sure: { rule: 'brier', weight: 5 },
    };
    expect(rubricChanges(changed)).toEqual([
      'Marked by “Evening class”, version 2.',
      `“${criterionTitle('groundPass')}” is worth 12 points; built in: 10.`,
      `“${criterionTitle('groundPass')}”: Least share to be tested before anything is earned 90 %; built in: 0.`,
      '“Tests in the order of the house” is marked, 1 point; built in: not marked.',
      '“Nothing overheated” is not marked; built in: 2 points.',
      'How sure is scored by the Brier rule, 5 points; built in: not scored.',
      'Order of the house: looking and the ground test.',
    ]);
  });
});
