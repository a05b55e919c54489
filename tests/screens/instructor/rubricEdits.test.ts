import { describe, expect, it } from 'vitest';
import { rubricChanges } from '../../../src/assess/procedure/rubricChanges.ts';
import { TEST_KINDS } from '../../../src/bench/paper.ts';
import { parseScenario } from '../../../src/scenario/parse.ts';
import { BUILT_IN_RUBRIC, type Rubric } from '../../../src/scenario/public/rubric.ts';
import {
  choicesFor,
  earlier,
  FIRST_OWN,
  firstOrder,
  ofProcedure,
  rowOf,
  withMarked,
  withOrder,
  withRow,
  withSure,
} from '../../../src/screens/instructor/rubricEdits.ts';
import { job, PARTS } from '../../support/jobs.ts';

/** What the reader of scenario files says of a job marked by this rubric. */
function problems(rubric: Rubric): string[] {
  const scenario = job({ part: 'wave-23', faults: [] });
  const read = parseScenario({ ...scenario, public: { ...scenario.public, rubric } }, PARTS);
  return read.ok ? [] : read.issues.map(({ path }) => path);
}

describe('a rubric changed on the job page', () => {
  it('begins as the built-in one under a name of its own', () => {
    expect(rubricChanges(FIRST_OWN)).toEqual([]);
    expect(problems(FIRST_OWN)).toEqual([]);
  });

  it('offers every row of the built-in rubric, in two groups, where the job has everything', () => {
    const choices = choicesFor({
      parts: ['armature', 'fieldFrame', 'brushPlate'],
      tests: TEST_KINDS.filter((test) => test !== 'megohm' && test !== 'millivolt'),
    });
    const rails = ['megohmPass', 'testerSafe', 'millivoltPass', 'dropSafe'];
    expect(choices).toEqual(BUILT_IN_RUBRIC.criteria.filter(({ criterion }) => !rails.includes(criterion)));
    expect(choices.filter(ofProcedure).length).toBeGreaterThan(15);
    expect(choices.filter((row) => !ofProcedure(row)).map(({ criterion }) => criterion)).toEqual(
      expect.arrayContaining(['condition', 'place', 'disposition']),
    );
  });

  it('offers nothing of parts and tests that the job does not have', () => {
    const choices = choicesFor({ parts: ['fieldFrame'], tests: ['fieldContinuity', 'millivolt'] });
    const ids = choices.map(({ criterion }) => criterion);
    expect(ids).toEqual(
      expect.arrayContaining(['fieldContinuityPass', 'millivoltPass', 'lampProved', 'proven']),
    );
    for (const none of [
      ...[
        'neighbourPass',
        'stripPass',
        'fieldInsulationPass',
        'plateEarthedPass',
        'megohmPass',
        'gaugesRead',
      ],
      ...['lookedFirst', 'chalkedFirst', 'retested', 'partSpared', 'needleSpared'],
    ])
      expect(ids).not.toContain(none);
  });

  it('leaves a criterion out and takes it back as it is built in, in its old place', () => {
    const without = withMarked(FIRST_OWN, 'lampProved', false);
    expect(rowOf(without, 'lampProved')).toBeNull();
    expect(without.criteria).toHaveLength(FIRST_OWN.criteria.length - 1);
    expect(withMarked(without, 'lampProved', true)).toEqual(FIRST_OWN);
  });

  it('keeps changed weights when another criterion is left out', () => {
    const heavier = withRow(FIRST_OWN, { criterion: 'groundPass', weight: 25, threshold: 50 });
    expect(rowOf(withMarked(heavier, 'place', false), 'groundPass')).toEqual({
      criterion: 'groundPass',
      weight: 25,
      threshold: 50,
    });
  });

  it('has an order of the house and a mark for it together, or neither', () => {
    const order = firstOrder(['strip', 'look', 'ground']);
    expect(order).toEqual(['look', 'ground', 'strip']);
    const ordered = withOrder(FIRST_OWN, earlier(order, 2));
    expect(ordered.houseSequence).toEqual(['look', 'strip', 'ground']);
    expect(problems(ordered)).toEqual([]);
    expect(problems(withMarked(ordered, 'place', false))).toEqual([]);
    expect(withOrder(ordered, null)).toEqual(FIRST_OWN);
  });

  it('scores how sure by a rule that is named, or not at all', () => {
    const scored = withSure(FIRST_OWN, 'logarithmic');
    expect(scored.sure).toEqual({ rule: 'logarithmic', weight: 5 });
    expect(problems(scored)).toEqual([]);
    expect(withSure(scored, 'none')).toEqual(FIRST_OWN);
  });

  it('names the row whose weight is no number', () => {
    expect(problems(withRow(FIRST_OWN, { criterion: 'placedOff', weight: Number.NaN }))).toEqual([
      `public.rubric.criteria[${FIRST_OWN.criteria.findIndex(({ criterion }) => criterion === 'placedOff')}].weight`,
    ]);
  });
});
