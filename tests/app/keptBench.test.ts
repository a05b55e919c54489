import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { keepBench } from '../../src/app/keptBench.ts';
import { ATTEMPT_FORMAT, ATTEMPT_VERSION, type Attempt, type Entry } from '../../src/attempt/entry.ts';
import type { Clock } from '../../src/link/clock.ts';
import { openLocalBench, resumeLocalBench } from '../../src/link/localBench.ts';
import { browserJournal } from '../../src/store/journal.ts';
import { partLibrary } from '../scenario/files.ts';
import { MemoryStorage } from '../store/support/memoryStorage.ts';
import { job } from '../support/jobs.ts';

const parts = partLibrary();
const clock: Clock = { nowMs: () => 0, schedule: () => () => undefined };
const start: Attempt = {
  format: ATTEMPT_FORMAT,
  version: ATTEMPT_VERSION,
  id: 'a-1',
  learner: '',
  mode: 'practice',
  startedAt: '2026-01-05T08:00:00.000Z',
  scenario: job(),
  entries: [],
  endMs: 0,
};

/** A store that keeps a person waiting until it is told to acknowledge. */
class SlowStore {
  readonly entries: Entry[] = [];
  closed: unknown = null;
  acknowledge: () => void = () => undefined;

  append(_: string, entries: readonly Entry[]): Promise<void> {
    return new Promise((resolve) => {
      this.acknowledge = () => {
        this.entries.push(...entries);
        resolve();
      };
    });
  }
  async reached(): Promise<void> {}
  async close(_: string, __: number, result: unknown): Promise<void> {
    this.closed = result;
  }
}

const result = { state: 'handedIn', earned: 1, of: 2 } as const;
const keeping = (store: SlowStore, storage: Storage) => ({
  store,
  journal: browserJournal(storage),
  resultOf: async () => result,
  onTrouble: (error: unknown) => {
    throw error;
  },
});

beforeEach(() => {
  vi.stubGlobal('window', { addEventListener: () => undefined, removeEventListener: () => undefined });
});
afterEach(() => vi.unstubAllGlobals());

describe('an act at a kept bench', () => {
  it('is noted when it is answered, before the store knows of it, until the store has it', async () => {
    const [store, storage] = [new SlowStore(), new MemoryStorage()];
    const kept = keepBench(openLocalBench(start, parts, clock), 0, keeping(store, storage));
    const noted = () => browserJournal(storage).noted().get('a-1');
    expect(kept.port.send({ type: 'armature.place' }).kind).toBe('done');
    expect(noted()?.map(({ action }) => action.type)).toEqual(['armature.place']);
    await Promise.resolve();
    kept.port.send({ type: 'range.turn', to: 30 });
    expect(noted()?.map(({ n }) => n)).toEqual([0, 1]);
    expect(store.entries).toEqual([]);
    store.acknowledge();
    await vi.waitFor(() => expect(noted()?.map(({ n }) => n)).toEqual([1]));
    store.acknowledge();
    await kept.settled();
    expect(noted()).toBeUndefined();
    expect(store.entries.map(({ n }) => n)).toEqual([0, 1]);
    kept.close();
  });

  it('that comes with every frame is noted by itself and goes to the store with the others, or with the next act', async () => {
    const [store, storage] = [new SlowStore(), new MemoryStorage()];
    const kept = keepBench(openLocalBench(start, parts, clock), 0, keeping(store, storage));
    const appended = vi.spyOn(store, 'append');
    const noted = () => browserJournal(storage).noted().get('a-1')?.length;
    for (let n = 1; n <= 5; n++) {
      kept.port.send({ type: 'armature.turn', byDeg: 1 });
      expect(noted()).toBe(n);
    }
    await Promise.resolve();
    expect(appended).not.toHaveBeenCalled();
    kept.port.send({ type: 'range.turn', to: 30 });
    await Promise.resolve();
    expect(appended.mock.calls.map(([, entries]) => entries.length)).toEqual([6]);
    store.acknowledge();
    await vi.waitFor(() => expect(noted()).toBeUndefined());
    kept.port.send({ type: 'armature.turn', byDeg: 1 });
    const settled = kept.settled();
    await vi.waitFor(() => expect(appended).toHaveBeenCalledTimes(2));
    store.acknowledge();
    await settled;
    expect(store.entries).toHaveLength(7);
    kept.close();
  });

  it('that ended the attempt closes its record at the next visit, when the page went before it could', async () => {
    const first = openLocalBench(start, parts, clock);
    first.send({ type: 'job.handIn' });
    const left = first.attempt();
    first.close();
    const again = resumeLocalBench(left, parts, clock);
    if (!again.ok) throw new Error(again.firstDivergence.what);
    const store = new SlowStore();
    const kept = keepBench(again.bench, left.entries.length, keeping(store, new MemoryStorage()));
    await kept.settled();
    expect(store.closed).toEqual(result);
    kept.close();
  });
});
