import 'fake-indexeddb/auto';
import { IDBFactory, IDBObjectStore } from 'fake-indexeddb';
import { openDB } from 'idb';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { Attempt } from '../../src/attempt/entry.ts';
import { StoreRefused } from '../../src/store/attemptStore.ts';
import { openBrowserStore } from '../../src/store/browserStore.ts';
import { attempt, entry, head } from './support.ts';

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory();
});
afterEach(() => {
  vi.restoreAllMocks();
});

const entriesOf = async (id = 'a-1') =>
  ((await (await openBrowserStore()).read(id)) as Attempt).entries.map(({ n }) => n);

describe('what is acknowledged is kept, and what fails leaves nothing behind', () => {
  it('refuses an act for an attempt that was removed, or has ended', async () => {
    const store = await openBrowserStore();
    await expect(store.append('a-1', [entry(0)])).rejects.toThrow(/no attempt a-1/);
    await expect(store.reached('a-1', 10)).rejects.toThrow(/no attempt a-1/);
    await store.begin(head);
    await store.close('a-1', 10, { state: 'handedIn', earned: 1, of: 2 });
    await expect(store.append('a-1', [entry(0)])).rejects.toThrow(/handed in or stopped/);
    expect(await entriesOf()).toEqual([]);
  });

  it('refuses a log with a hole', async () => {
    const store = await openBrowserStore();
    await store.begin(head);
    await store.append('a-1', [entry(0), entry(1)]);
    await expect(store.append('a-1', [entry(3)])).rejects.toThrow(/Expected entry 2, but 3 came/);
    await expect(store.append('a-1', [entry(2), entry(4)])).rejects.toThrow(/Expected entry 3, but 4 came/);
    expect(await entriesOf()).toEqual([0, 1]);
  });

  it('keeps none of several acts when one of them cannot be written', async () => {
    const store = await openBrowserStore();
    await store.begin(head);
    const unwritable = { ...entry(1), action: { type: () => 'a function has no stored form' } };
    await expect(store.append('a-1', [entry(0), unwritable as never])).rejects.toThrow(StoreRefused);
    expect(await entriesOf()).toEqual([]);
    await store.append('a-1', [entry(0)]);
    expect(await entriesOf()).toEqual([0]);
  });

  it('says in a sentence that the disk is full, and keeps what was there', async () => {
    const store = await openBrowserStore();
    await store.add(attempt('a-1', 3), null);
    const full = vi.spyOn(IDBObjectStore.prototype, 'add').mockImplementation(() => {
      throw new DOMException('full', 'QuotaExceededError');
    });
    await expect(store.append('a-1', [entry(3)])).rejects.toThrow(/no room left.*untouched/);
    await expect(store.add(attempt('a-2', 3), null)).rejects.toThrow(/no room left/);
    full.mockRestore();
    expect(await entriesOf()).toEqual([0, 1, 2]);
    expect((await store.list()).map(({ id }) => id)).toEqual(['a-1']);
    await store.append('a-1', [entry(3)]);
    expect(await entriesOf()).toEqual([0, 1, 2, 3]);
  });
});

describe('the database', () => {
  it('brings one of version 1 up with all that is in it', async () => {
    const old = await openDB('slot-and-riser', 1, {
      upgrade(db) {
        db.createObjectStore('attempts', { keyPath: 'id' });
        db.createObjectStore('entries');
      },
    });
    await old.put('attempts', { ...head, result: null });
    await old.put('entries', entry(0), ['a-1', 0]);
    old.close();
    expect(await entriesOf()).toEqual([0]);
    const store = await openBrowserStore();
    await store.jobs.put({ id: 'j-1', title: 'Job', changedAt: '', value: {} }, 0);
    expect(await store.jobs.list()).toHaveLength(1);
  });

  it('says which window to close while one of an older version holds it', async () => {
    const old = await openDB('slot-and-riser', 1, {
      upgrade(db) {
        db.createObjectStore('attempts', { keyPath: 'id' });
        db.createObjectStore('entries');
      },
    });
    await expect(openBrowserStore()).rejects.toThrow(/older version.*close that window/);
    old.close();
  });

  it('makes way for a newer version and asks for a reload', async () => {
    const store = await openBrowserStore();
    const newer = await openDB('slot-and-riser', 3);
    await expect(store.begin(head)).rejects.toThrow(/reload the page/);
    newer.close();
  });
});

describe('things kept whole', () => {
  const job = { id: 'j-1', title: 'Dynamo', changedAt: '2026-01-05T08:00:00Z', value: { a: 1 } };

  it('come back as they were put, with a count of their changes', async () => {
    const { jobs } = await openBrowserStore();
    expect(await jobs.put(job, 0)).toBe(1);
    expect(await jobs.put({ ...job, value: { a: 2 } }, 1)).toBe(2);
    expect(await jobs.read('j-1')).toEqual({ ...job, value: { a: 2 }, revision: 2 });
    expect(await jobs.list()).toEqual([
      { id: 'j-1', title: 'Dynamo', changedAt: job.changedAt, revision: 2 },
    ]);
    await jobs.remove('j-1');
    await expect(jobs.read('j-1')).rejects.toThrow(/no j-1/);
  });

  it('are not overwritten unseen from a second window', async () => {
    const one = (await openBrowserStore()).jobs;
    const two = (await openBrowserStore()).jobs;
    await one.put(job, 0);
    await two.put({ ...job, value: 'two' }, 1);
    await expect(one.put({ ...job, value: 'one' }, 1)).rejects.toThrow(
      /“Dynamo” was changed in another window/,
    );
    expect((await one.read('j-1')).value).toBe('two');
    await expect(two.put(job, 0)).rejects.toThrow(/changed in another window/);
    await one.remove('j-1');
    await expect(two.put(job, 2)).rejects.toThrow(/removed in another window/);
  });

  it('lie on shelves of their own', async () => {
    const store = await openBrowserStore();
    await store.jobs.put(job, 0);
    await store.drafts.put({ ...job, value: 'draft' }, 0);
    expect((await store.jobs.read('j-1')).value).toEqual({ a: 1 });
    expect(await store.records.list()).toEqual([]);
  });
});
