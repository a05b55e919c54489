import { describe, expect, it } from 'vitest';
import { CRITERIA as PROCEDURE } from '../../src/assess/procedure/rubric.ts';
import { parseCriteriaText, WORKSHOP_CRITERIA } from '../../src/records/criteria.ts';
import { judgementsFor, parseDraft, recordOf, startDraft } from '../../src/records/draft.ts';
import { recordIssues } from '../../src/records/recordRules.ts';
import { altered } from './support/alter.ts';
import { recordOver } from './support/attempt.ts';

const draft = startDraft({
  id: 'd-1',
  attempts: ['a-1', 'a-2'],
  learner: 'T. Okafor',
  assessor: 'R. Lindqvist',
  criteria: WORKSHOP_CRITERIA,
});

describe('a draft', () => {
  it('is not a record before something was decided', () => {
    expect(recordOf(draft, [])).toMatchObject({ ok: false, issues: [{ path: 'outcome' }] });
  });

  it('becomes a record over its evidence, still held to the rules', () => {
    const { evidence } = recordOver([{ attempt: 'a-1', seal: '0'.repeat(64) }]);
    const made = recordOf({ ...draft, outcome: 'notYet', supervisedBy: 'nobody' }, evidence);
    expect(made.ok && recordIssues(made.value).map(({ path }) => path)).toEqual(['learner.identifiedBy']);
  });

  it('asks who supervised an assessed attempt, and nobody of a practice one', () => {
    const { evidence } = recordOver([{ attempt: 'a-1', seal: '0'.repeat(64) }]);
    const inMode = (mode: 'assessed' | 'practice') => {
      const made = recordOf({ ...draft, outcome: 'notYet' }, [{ ...evidence[0]!, mode }]);
      if (!made.ok) throw new Error(JSON.stringify(made.issues));
      return made.value;
    };
    const asked = (mode: 'assessed' | 'practice') =>
      recordIssues(inMode(mode)).some(({ path }) => path === 'supervisedBy');
    expect([asked('assessed'), asked('practice')]).toEqual([true, false]);
    expect(inMode('practice').evidence[0]).not.toHaveProperty('supervision');
  });

  it('comes back from a file, and is refused with the place when it is no draft', () => {
    expect(parseDraft(JSON.parse(JSON.stringify(draft)))).toEqual({ ok: true, value: draft });
    for (const [path, to] of [
      ['outcome', 'perhaps'],
      ['criteria.judgements[0].met', 'yes'],
      ['attempts', []],
    ] as const)
      expect(parseDraft(altered(draft, path, to))).toMatchObject({ ok: false, issues: [{ path }] });
  });
});

describe('criteria as data', () => {
  it('of the workshop name marks that exist', () => {
    const diagnosis = ['condition', 'place', 'disposition', 'supported', 'proven'];
    const named = WORKSHOP_CRITERIA.criteria.flatMap(({ marks }) => marks);
    expect(
      named.filter((mark) => !PROCEDURE.has(mark) && !diagnosis.includes(mark.replace(/^\w+\./, ''))),
    ).toEqual([]);
  });

  it('come back from a file', () => {
    const read = parseCriteriaText(JSON.stringify(WORKSHOP_CRITERIA));
    expect(read).toEqual({ ok: true, value: WORKSHOP_CRITERIA });
    expect(judgementsFor(WORKSHOP_CRITERIA).judgements.every(({ met }) => met === 'notSeen')).toBe(true);
  });

  it('are refused with the place', () => {
    const twice = altered(WORKSHOP_CRITERIA, 'criteria[1].id', 'prepare');
    expect(parseCriteriaText(JSON.stringify(twice))).toMatchObject({ issues: [{ path: 'criteria[1].id' }] });
    const empty = altered(WORKSHOP_CRITERIA, 'criteria', []);
    expect(parseCriteriaText(JSON.stringify(empty))).toMatchObject({ issues: [{ path: 'criteria' }] });
    expect(parseCriteriaText('{')).toMatchObject({ ok: false });
  });
});
