import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { WORKSHOP_CRITERIA } from '../../../src/records/criteria.ts';
import { type Draft, startDraft } from '../../../src/records/draft.ts';
import type { Parsed } from '../../../src/scenario/scenario.ts';
import { readPoints } from '../../../src/screens/assessor/review/ChangeMark.tsx';
import { DraftKeeper } from '../../../src/screens/assessor/review/useDraft.ts';

const draft = startDraft({
  id: 'd-1',
  attempts: ['a-1'],
  learner: 'T. Okafor',
  assessor: '',
  criteria: WORKSHOP_CRITERIA,
});

/** A desk that keeps drafts with a count of changes, slowly, and can be told to refuse. */
function slowDesk() {
  const kept: { draft: Draft; since: number }[] = [];
  const state = { refuses: false };
  const save = async (given: Draft, since: number): Promise<Parsed<number>> => {
    await new Promise((done) => setTimeout(done, 1000));
    if (state.refuses) return { ok: false, issues: [{ path: '', sentence: 'Full.' }] };
    kept.push({ draft: given, since });
    return { ok: true, value: since + 1 };
  };
  return { kept, save, state };
}

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

describe('a draft being worked on', () => {
  it('is kept once typing pauses, the newest state only', async () => {
    const { kept, save } = slowDesk();
    const keeper = new DraftKeeper(draft, 1, save, () => undefined);
    for (const assessor of ['R', 'R.', 'R. L']) keeper.change({ assessor });
    expect(keeper.saving).toBe('saving');
    await vi.advanceTimersByTimeAsync(2000);
    expect(kept.map(({ draft: one, since }) => [one.assessor, since])).toEqual([['R. L', 1]]);
    expect(keeper.saving).toBe('saved');
  });

  it('never has two saves under way, and counts on from the last one kept', async () => {
    const { kept, save } = slowDesk();
    const keeper = new DraftKeeper(draft, 4, save, () => undefined);
    keeper.change({ assessor: 'one' });
    await vi.advanceTimersByTimeAsync(700);
    keeper.change({ assessor: 'two' });
    await vi.advanceTimersByTimeAsync(700);
    expect(kept).toHaveLength(0);
    await vi.advanceTimersByTimeAsync(3000);
    expect(kept.map(({ draft: one, since }) => [one.assessor, since])).toEqual([
      ['one', 4],
      ['two', 5],
    ]);
  });

  it('says when it could not be kept, and keeps it with the next change', async () => {
    const { kept, save, state } = slowDesk();
    const keeper = new DraftKeeper(draft, 1, save, () => undefined);
    state.refuses = true;
    keeper.change({ assessor: 'one' });
    const settled = keeper.settled();
    await vi.advanceTimersByTimeAsync(2000);
    expect(await settled).toBe(false);
    expect(keeper.issues).toEqual([{ path: '', sentence: 'Full.' }]);
    state.refuses = false;
    keeper.change({ supervisedBy: 'two' });
    await vi.advanceTimersByTimeAsync(2000);
    expect(kept[0]).toMatchObject({ draft: { assessor: 'one', supervisedBy: 'two' }, since: 1 });
    expect(keeper.saving).toBe('saved');
  });

  it('is settled at once when nothing was changed', async () => {
    const { kept, save } = slowDesk();
    expect(await new DraftKeeper(draft, 1, save, () => undefined).settled()).toBe(true);
    expect(kept).toEqual([]);
  });
});

describe('points as typed', () => {
  it('are read with comma or point, to one decimal, within what there is', () => {
    expect(readPoints(' 7,5 ', 10)).toBe(7.5);
    expect(readPoints('7.25', 10)).toBe(7.3);
    expect(readPoints('0', 10)).toBe(0);
    for (const wrong of ['', ' ', '-1', '10.1', 'ten', 'NaN', 'Infinity'])
      expect(readPoints(wrong, 10)).toBeNull();
  });
});
