import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assess, marksOf } from '../../src/assess/assess.ts';
import { filmOf } from '../../src/assess/film.ts';
import type { Mark } from '../../src/assess/mark.ts';
import { TENTHS, WHOLE, wholeParts } from '../../src/assess/points.ts';
import { parseScenarioText } from '../../src/scenario/parse.ts';
import { BUILT_IN_RUBRIC } from '../../src/scenario/public/rubric.ts';
import type { Scenario } from '../../src/scenario/scenario.ts';
import { holds } from '../property/holds.ts';
import { scenarioTexts } from '../scenario/files.ts';
import { library } from './attempts.ts';
import { perform, type Step, step } from './script.ts';

const jobs = [...scenarioTexts()].map(([name, text]): [string, Scenario] => {
  const read = parseScenarioText(text, library);
  if (!read.ok) throw new Error(`${name}: ${JSON.stringify(read.issues)}`);
  return [name, read.value];
});

/** Little of everything, so that many marks are earned in part. */
function halfWorked({ public: { parts } }: Scenario): Step[] {
  const armature = parts.includes('armature');
  const somewhere = { kind: 'somewhere' } as const;
  return [
    step({ type: 'prepare.check', item: 'eyeProtection' }),
    ...(armature ? [step({ type: 'lens.look', place: 'bar:3' }), step({ type: 'armature.place' })] : []),
    ...[1, 2, 3].map((count) =>
      step({ type: 'sheet.write', line: { test: 'look', part: parts[0]!, count, remark: 'Dark.' } }),
    ),
    ...parts.map((part) => {
      const findings = (['sound', 'grounded'] as const).map((condition) => ({ condition, place: somewhere }));
      const verdict = { part, findings, disposition: 'service', sure: 0.8, because: 'It looks so.' } as const;
      return step({ type: 'verdict.write', verdict });
    }),
    step({ type: 'job.handIn' }),
  ];
}

const broken = (marks: readonly Mark[]) =>
  marks.filter(({ earned, of }) => !Number.isInteger(earned) || !Number.isInteger(of));

describe.each(jobs)('the marks of %s', (_name, scenario) => {
  const attempt = perform(scenario, halfWorked(scenario));
  const film = filmOf(attempt, library);

  it('are whole, each and together, and what a criterion is worth is shared out to the last point', () => {
    const { marks, earned, of } = marksOf(film);
    expect(broken(marks)).toEqual([]);
    expect([earned, of].filter((total) => !Number.isInteger(total))).toEqual([]);
    for (const { criterion, weight } of BUILT_IN_RUBRIC.criteria.slice(-5, -1)) {
      const own = marks.filter(({ id }) => id.replace(/^.*\./, '') === criterion);
      expect(own.length).toBe(scenario.public.parts.length);
      expect(own.reduce((sum, mark) => sum + mark.of, 0)).toBe(weight);
    }
  });

  it('lie no further than a point from what they were in tenths, and only all of it earns all', () => {
    const { points: _, ...before } = attempt;
    const tenths = assess(before, library).marks;
    for (const [nth, mark] of marksOf(film).marks.entries()) {
      const old = tenths[nth]!;
      expect(mark).toMatchObject({ id: old.id, sentence: old.sentence, entries: old.entries });
      expect(Math.abs(mark.earned - (old.earned / old.of) * mark.of)).toBeLessThanOrEqual(1);
      if (old.earned < old.of) expect(mark.earned).toBeLessThan(mark.of);
      if (old.earned === old.of) expect(mark.earned).toBe(mark.of);
    }
  });
});

describe('points, whatever the rubric', () => {
  const weight = fc.double({ min: 0, max: 100, noNaN: true });
  const share = fc.double({ min: 0, max: 1, noNaN: true });

  it('are split into whole parts, each less than one off', () => {
    holds(
      'whole parts',
      500,
      fc.property(fc.array(weight, { minLength: 1, maxLength: 60 }), (exact) => {
        const parts = wholeParts(exact);
        const total = exact.reduce((sum, one) => sum + one, 0);
        expect(parts.reduce((sum, one) => sum + one, 0)).toBe(Math.round(total));
        for (const [nth, part] of parts.entries()) {
          expect(Number.isInteger(part)).toBe(true);
          expect(Math.abs(part - exact[nth]!)).toBeLessThan(1);
        }
      }),
    );
  });

  it('are whole for a rubric that is not, and no more is earned for less done', () => {
    const rows = fc.array(weight, { minLength: 1, maxLength: 40 });
    const property = fc.property(
      rows,
      fc.integer({ min: 1, max: 3 }),
      share,
      share,
      (weights, parts, a, b) => {
        const criteria = weights.map((one, nth) => ({ criterion: `c${nth}`, weight: one }));
        const rubric = WHOLE.rubricOf({ ...BUILT_IN_RUBRIC, criteria });
        for (const row of rubric.criteria) {
          const worths = Array.from({ length: parts }, (_, nth) => WHOLE.worth(row.weight, parts, nth));
          expect(worths.reduce((sum, { of }) => sum + of, 0)).toBe(row.weight);
          for (const { of, earned, scored } of worths) {
            const [less, more] = [Math.min(a, b), Math.max(a, b)];
            expect([earned(less), earned(more), scored(a)].every(Number.isInteger)).toBe(true);
            expect(earned(less)).toBeLessThanOrEqual(earned(more));
            expect([earned(0), earned(1), scored(1)]).toEqual([0, of, of]);
          }
        }
      },
    );
    holds('whole rubrics', 200, property);
  });

  it('of a rubric in whole points are as it says', () => {
    expect(WHOLE.rubricOf(BUILT_IN_RUBRIC)).toEqual(BUILT_IN_RUBRIC);
  });

  it('fall to the first parts where they cannot be shared alike', () => {
    expect([0, 1, 2].map((nth) => WHOLE.worth(10, 3, nth).of)).toEqual([4, 3, 3]);
    expect([0, 1].map((nth) => WHOLE.worth(15, 2, nth).of)).toEqual([8, 7]);
    expect(TENTHS.worth(10, 3, 0).of).toBe(3.3);
  });
});
