import { describe, expect, it } from 'vitest';
import type { AssessorDesk, CheckedFile } from '../../../src/screens/assessor/desk.ts';
import { takeIn } from '../../../src/screens/assessor/takeIn.ts';

/** A desk that keeps what is called good, finds what is called altered altered, and cannot read the rest. */
function deskWith(kept: string[]): Pick<AssessorDesk, 'check'> {
  return {
    check: async ({ name }) => {
      if (name.startsWith('other'))
        return { ok: false, issues: [{ path: 'format', sentence: 'Expected an attempt.' }] };
      const verdict = name.startsWith('altered') ? 'broken' : 'holds';
      return {
        ok: true,
        value: {
          verification: {
            checks: [{ what: 'seal', verdict, where: 'entries[3]', sentence: 'Was altered.' }],
          },
          keep: async () => {
            kept.push(name);
            return { ok: true, value: 'Kept 1 attempt.' };
          },
        } as unknown as CheckedFile,
      };
    },
  };
}

const file = (name: string) => new File(['{}'], name);

describe('learners’ files taken in together', () => {
  it('are all kept, and it is said of each', async () => {
    const kept: string[] = [];
    const answer = await takeIn([file('good-1.json'), file('good-2.json')], deskWith(kept));
    expect(kept).toEqual(['good-1.json', 'good-2.json']);
    expect(answer).toEqual({ ok: true, value: 'good-1.json: Kept 1 attempt. good-2.json: Kept 1 attempt.' });
  });

  it('are kept but for those that were altered or are something else, each named', async () => {
    const kept: string[] = [];
    const files = ['altered.json', 'good.json', 'other.json'].map(file);
    const answer = await takeIn(files, deskWith(kept));
    expect(kept).toEqual(['good.json']);
    expect(answer).toEqual({
      ok: false,
      issues: [
        { path: 'altered.json: entries[3]', sentence: 'Was altered.' },
        { path: 'other.json: format', sentence: 'Expected an attempt.' },
        { path: '', sentence: 'good.json: Kept 1 attempt.' },
      ],
    });
  });
});
