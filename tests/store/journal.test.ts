import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import type { Attempt } from '../../src/attempt/entry.ts';
import { openBrowserStore } from '../../src/store/browserStore.ts';
import { browserJournal, type Journal, makeAllGood } from '../../src/store/journal.ts';
import type { Store } from '../../src/store/store.ts';
import { MemoryStorage } from './support/memoryStorage.ts';
import { attempt, entry } from './support.ts';

let storage: Storage;
let journal: Journal;
let store: Store;

beforeEach(async () => {
  globalThis.indexedDB = new IDBFactory();
  store = await openBrowserStore();
  storage = new MemoryStorage();
  journal = browserJournal(storage);
});

const kept = async (id = 'a-1') => ((await store.read(id)) as Attempt).entries.map(({ n }) => n);

describe('acts that were noted and never acknowledged', () => {
  it('are in the store after the next page has started, and are noted no more', async () => {
    await store.add(attempt('a-1', 2), null);
    journal.note('a-1', [entry(2), entry(3)]);
    await makeAllGood(browserJournal(storage), store);
    expect(await kept()).toEqual([0, 1, 2, 3]);
    expect(storage).toHaveLength(0);
  });

  it('are not written twice when they had reached the disk and only the word of it had not come', async () => {
    await store.add(attempt('a-1', 3), null);
    journal.note('a-1', [entry(2), entry(3)]);
    await makeAllGood(journal, store);
    expect(await kept()).toEqual([0, 1, 2, 3]);
  });

  it('of an attempt that is gone or over are dropped', async () => {
    await store.add(attempt('a-2', 1), { state: 'handedIn', earned: 1, of: 2 });
    journal.note('a-1', [entry(0)]);
    journal.note('a-2', [entry(1)]);
    await makeAllGood(journal, store);
    expect(await kept('a-2')).toEqual([0]);
    expect(journal.noted().size).toBe(0);
  });

  it('stay noted where they could not be written, and where another window has the attempt', async () => {
    await store.add(attempt('a-1', 0), null);
    journal.note('a-1', [entry(1)]);
    await makeAllGood(journal, store);
    expect(journal.noted().get('a-1')).toHaveLength(1);
    journal.note('a-1', [entry(0)]);
    vi.stubGlobal('navigator', {
      locks: { request: async (_: string, __: unknown, held: (lock: null) => unknown) => held(null) },
    });
    await makeAllGood(journal, store);
    vi.unstubAllGlobals();
    expect(await kept()).toEqual([]);
    await makeAllGood(journal, store);
    expect(await kept()).toEqual([0]);
  });

  it('that cannot be read stop nothing, and a browser that notes nothing stops no act', async () => {
    await store.add(attempt('a-1', 1), null);
    storage.setItem('slot-and-riser/journal/a-1', '{');
    await makeAllGood(journal, store);
    expect(await kept()).toEqual([0]);
    vi.spyOn(storage, 'setItem').mockImplementation(() => {
      throw new DOMException('full', 'QuotaExceededError');
    });
    const warned = vi.spyOn(console, 'warn').mockImplementation(() => undefined);
    expect(() => journal.note('a-1', [entry(1)])).not.toThrow();
    expect(warned).toHaveBeenCalledOnce();
    vi.restoreAllMocks();
  });
});
