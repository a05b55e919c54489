import { describe, expect, it } from 'vitest';
import { fileName, placeName } from '../../src/screens/shared/issuePlace.ts';
import { dayWords, withDays } from '../../src/screens/shared/time.ts';

describe('a place in a file', () => {
  it.each([
    ['entries[40].action.type', 'Act 40'],
    ['attempts[0].attempt.entries[17].action.byDeg', 'Attempt 1, act 17'],
    ['okafor.json: attempts[1].entries[3].n', 'Attempt 2, act 3'],
    ['attempts[0].attempt.scenario.hidden.seed', 'Attempt 1, the hidden half of the job'],
    ['scenario.public.card.unit', 'The job card'],
    ['public.rubric.criteria[2].weight', 'The rubric, row 3'],
    ['hidden.armature.faults[1].bar', 'The armature, fault 2'],
    ['signed.record.outcome', 'The signed record, the decision'],
    ['version', 'The version of the file'],
    ['line 3, column 14', ''],
    ['', ''],
  ])('%s is called “%s”', (path, name) => {
    expect(placeName(path)).toBe(name);
  });

  it('a file of the library is called by what it holds', () => {
    expect(fileName('scenarios/parts/lap-24.json')).toBe('A kind of armature of the library');
    expect(fileName('scenarios/q-0a6d.json')).toBe('A job of the library');
  });

  it('what was opened here is called as it came', () => {
    for (const where of ['This attempt', 'okafor.json']) expect(fileName(where)).toBe(where);
  });
});

describe('moments in a sentence', () => {
  it('are said as people say them, whatever their zone', () => {
    for (const iso of ['2026-03-02T11:00:00Z', '2026-03-02T08:30:00.000Z', '2026-03-02T08:30:00+01:00']) {
      const said = withDays(`Signed by R. Lindqvist at ${iso}. So it is.`);
      expect(said).toBe(`Signed by R. Lindqvist at ${dayWords(iso)}. So it is.`);
      expect(said).not.toContain('T0');
    }
  });

  it('stay as they came where a file is quoted', () => {
    const sentence = 'Expected a date and time such as "2031-05-06T08:30:00Z", but "2031-05-06T08:30" came.';
    expect(withDays(sentence)).toBe(sentence);
  });
});
