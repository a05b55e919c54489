import 'fake-indexeddb/auto';
import { IDBFactory, IDBObjectStore } from 'fake-indexeddb';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { openBrowserStore } from '../../src/store/browserStore.ts';
import { sameJson } from '../../src/store/everything.ts';
import type { Store, Thing } from '../../src/store/store.ts';
import { attempt, readers } from './support.ts';

const AT = '2026-03-02T12:00:00.000Z';
const thing = (id: string, value: unknown): Thing => ({ id, title: `Title ${id}`, changedAt: AT, value });

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory();
});
afterEach(() => {
  vi.restoreAllMocks();
});

async function filled(): Promise<Store> {
  const store = await openBrowserStore();
  await store.add(attempt('a-1', 4), { state: 'handedIn', earned: 3, of: 5 });
  await store.add(attempt('a-2', 0), null);
  await store.jobs.put(thing('j-1', { hidden: 'yes' }), 0);
  await store.records.put(thing('r-1', { signed: true }), 0);
  await store.drafts.put(thing('d-1', [1, 2]), 0);
  await store.drafts.put(thing('d-1', [1, 2, 3]), 1);
  return store;
}

/** A browser nobody has used. */
function elsewhere(): Promise<Store> {
  globalThis.indexedDB = new IDBFactory();
  return openBrowserStore();
}

describe('everything in one file', () => {
  it('comes back whole in another browser, and says the same again from there', async () => {
    const text = await (await filled()).everything(AT);
    const other = await elsewhere();
    expect(await other.takeIn(text, readers)).toEqual({
      ok: true,
      value: { added: 5, already: 0, leftOut: [] },
    });
    expect(JSON.parse(await other.everything(AT))).toEqual(JSON.parse(text));
    expect(await other.read('a-1')).toEqual(attempt('a-1', 4));
    expect((await other.drafts.read('d-1')).value).toEqual([1, 2, 3]);
  });

  it('changes nothing where everything is already', async () => {
    const store = await filled();
    const text = await store.everything(AT);
    expect(await store.takeIn(text, readers)).toMatchObject({ value: { added: 0, already: 5, leftOut: [] } });
    expect(await store.everything(AT)).toBe(text);
  });

  it('keeps what is here when the file has something else of the same name, and says so', async () => {
    const text = await (await filled()).everything(AT);
    const other = await elsewhere();
    await other.add(attempt('a-1', 2), null);
    await other.jobs.put(thing('j-1', 'mine'), 0);
    const taken = await other.takeIn(text, readers);
    expect(taken).toMatchObject({
      value: {
        added: 3,
        leftOut: [
          { path: 'attempts[0].attempt', sentence: expect.stringContaining('the attempt of a learner') },
          { path: 'jobs[0].value', sentence: expect.stringContaining('“Title j-1”, as it is in the file') },
        ],
      },
    });
    expect(await other.read('a-1')).toEqual(attempt('a-1', 2));
    expect((await other.jobs.read('j-1')).value).toBe('mine');
  });

  it('leaves out what cannot be read, with its place, and takes in the rest', async () => {
    const file = JSON.parse(await (await filled()).everything(AT));
    file.attempts[1].attempt.id = 7;
    const taken = await (await elsewhere()).takeIn(JSON.stringify(file), readers);
    expect(taken).toMatchObject({
      ok: true,
      value: { added: 4, leftOut: [{ path: 'attempts[1].attempt.id', sentence: expect.any(String) }] },
    });
  });

  it.each([
    ['no JSON', 'nonsense', 'line 1, column 1'],
    ['cut off', '{"format":"slot-and-riser/everything"', 'line 1, column 38'],
    ['another format', '{"format":"x"}', 'format'],
    ['empty', '', ''],
  ])('is refused as a whole when it is no such file: %s', async (_, text, path) => {
    const store = await filled();
    const before = await store.everything(AT);
    const taken = await store.takeIn(text, readers);
    expect(taken).toMatchObject({ ok: false });
    expect(taken.ok ? null : taken.issues[0]?.path).toBe(path);
    expect(await store.everything(AT)).toBe(before);
  });

  it('takes in nothing at all when the disk fills up on the way', async () => {
    const text = await (await filled()).everything(AT);
    const other = await elsewhere();
    const before = await other.everything(AT);
    const add = IDBObjectStore.prototype.add;
    let room = 3;
    vi.spyOn(IDBObjectStore.prototype, 'add').mockImplementation(function (this: IDBObjectStore, ...given) {
      if (room-- <= 0) throw new DOMException('full', 'QuotaExceededError');
      return add.apply(this, given as never);
    });
    await expect(other.takeIn(text, readers)).rejects.toThrow(/no room left/);
    expect(await other.everything(AT)).toBe(before);
  });
});

describe('sameness of JSON', () => {
  it('agrees with writing and reading, whatever the order of names', () => {
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 3 }), fc.jsonValue({ maxDepth: 3 }), (one, other) => {
        expect(sameJson(one, JSON.parse(JSON.stringify(one)))).toBe(true);
        expect(sameJson({ one, other }, { other, one })).toBe(true);
        if (JSON.stringify(one) !== JSON.stringify(other) && !sameJson(one, other))
          expect(sameJson([one], [other])).toBe(false);
      }),
    );
    expect(sameJson({ a: 1, b: undefined }, { a: 1 })).toBe(true);
    expect(sameJson([], {})).toBe(false);
    expect(sameJson({ a: 1 }, { a: 1, b: 2 })).toBe(false);
  });
});
