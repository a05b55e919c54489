import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { beforeEach, describe, expect, it } from 'vitest';
import type { Attempt, Entry } from '../../src/attempt/entry.ts';
import { type AttemptHead, type AttemptResult, StoreRefused } from '../../src/store/attemptStore.ts';
import { openBrowserStore } from '../../src/store/browserStore.ts';

const head = {
  format: 'slot-and-riser/attempt',
  version: 1,
  id: 'a-1',
  mode: 'practice',
  learner: '',
  startedAt: '2026-01-05T08:00:00.000Z',
  scenario: { public: { id: 'q-0000', card: { unit: 'Dynamo' } } },
  endMs: 0,
} as unknown as AttemptHead;

const entry = (n: number) => ({ n, atMs: n * 100, action: { type: 'armature.hold' } }) as unknown as Entry;

const handedIn: AttemptResult = { state: 'handedIn', earned: 7, of: 10 };

describe('attempts kept in the browser', () => {
  beforeEach(() => {
    globalThis.indexedDB = new IDBFactory();
  });

  it('gives back every entry in order after the page is opened again', async () => {
    const store = await openBrowserStore();
    await store.begin(head);
    for (let n = 0; n < 12; n++) await store.append('a-1', [entry(n)]);
    const reopened = (await (await openBrowserStore()).read('a-1')) as Attempt;
    expect(reopened.entries.map((e) => e.n)).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11]);
    expect(reopened.scenario).toEqual(head.scenario);
  });

  it('never ends a record before its last act, wherever the page is closed', async () => {
    const store = await openBrowserStore();
    await store.begin(head);
    await store.append('a-1', [entry(0), entry(1)]);
    expect(((await store.read('a-1')) as Attempt).endMs).toBe(entry(1).atMs);
  });

  it('refuses a second window that writes the same entry, and keeps the first', async () => {
    const one = await openBrowserStore();
    const two = await openBrowserStore();
    await one.begin(head);
    await one.append('a-1', [entry(0)]);
    await expect(two.append('a-1', [{ ...entry(0), atMs: 999 }])).rejects.toThrow(StoreRefused);
    expect(((await one.read('a-1')) as Attempt).entries).toEqual([entry(0)]);
  });

  it('lists attempts with the job they belong to and how they ended', async () => {
    const store = await openBrowserStore();
    await store.begin(head);
    await store.reached('a-1', 4000);
    await store.reached('a-1', 3000);
    await store.close('a-1', 5000, handedIn);
    expect(await store.list()).toEqual([
      expect.objectContaining({
        id: 'a-1',
        scenarioId: 'q-0000',
        unit: 'Dynamo',
        endMs: 5000,
        result: handedIn,
      }),
    ]);
  });

  it('refuses to add a file of an attempt that is already here', async () => {
    const store = await openBrowserStore();
    const whole = { ...head, entries: [entry(0)] } as Attempt;
    await store.add(whole, handedIn);
    await expect(store.add(whole, handedIn)).rejects.toThrow(/already/);
  });

  it('removes an attempt with all its entries and no one else’s', async () => {
    const store = await openBrowserStore();
    await store.add({ ...head, entries: [entry(0)] } as Attempt, null);
    await store.add({ ...head, id: 'a-2', entries: [entry(0), entry(1)] } as Attempt, null);
    await store.remove('a-1');
    await expect(store.read('a-1')).rejects.toThrow(/no attempt a-1/);
    expect(((await store.read('a-2')) as Attempt).entries).toHaveLength(2);
  });
});
