import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { beforeEach, describe, expect, it } from 'vitest';
import { createInstructorDesk } from '../../src/app/instructor/desk.ts';
import { createSafe } from '../../src/app/safe.ts';
import type { Parsed } from '../../src/scenario/scenario.ts';
import { openBrowserStore } from '../../src/store/browserStore.ts';
import type { Store } from '../../src/store/store.ts';
import { expertRun, library as parts } from '../records/support/expertRun.ts';

const attempt = { ...expertRun('q-0a6d'), id: 'a-1', learner: 'T. Okafor' };
let store: Store;

beforeEach(async () => {
  globalThis.indexedDB = new IDBFactory();
  store = await openBrowserStore();
});

async function got<T>(answer: Promise<Parsed<T>>): Promise<T> {
  const found = await answer;
  if (!found.ok) throw new Error(JSON.stringify(found.issues));
  return found.value;
}

async function elsewhere(): Promise<Store> {
  globalThis.indexedDB = new IDBFactory();
  return openBrowserStore();
}
const asFile = ({ name, text }: { name: string; text: string }) => new File([text], name);

describe('everything of this browser', () => {
  it('goes into one file and comes back in another browser, real attempts and jobs among it', async () => {
    await store.add(attempt, { state: 'handedIn', earned: 1, of: 2 });
    const desk = createInstructorDesk({ library: { parts, scenarios: new Map(), problems: [] }, store });
    const id = await got(desk.begin('lap-28'));
    const file = await got(createSafe(store, parts).saveAll());
    expect(file.name).toMatch(/^slot-and-riser-\d{4}-\d\d-\d\d\.json$/);

    const other = await elsewhere();
    const safe = createSafe(other, parts);
    expect(await got(safe.takeIn(asFile(file)))).toEqual({ said: '2 things added.', leftOut: [] });
    expect((await other.list()).map((one) => one.id)).toEqual(['a-1']);
    expect((await other.jobs.list()).map((one) => one.id)).toEqual([id]);
    expect(await got(safe.takeIn(asFile(file)))).toEqual({
      said: '0 things added, 2 things here already and the same.',
      leftOut: [],
    });
  });

  it('says which things clash, keeps what is here, and takes in the rest', async () => {
    await store.add(attempt, null);
    await store.add({ ...attempt, id: 'a-2' }, null);
    const file = await got(createSafe(store, parts).saveAll());
    const other = await elsewhere();
    await other.add({ ...attempt, endMs: attempt.endMs + 5 }, null);
    const taken = await got(createSafe(other, parts).takeIn(asFile(file)));
    expect(taken.said).toBe('1 thing added, some left out, as told below.');
    expect(taken.leftOut).toEqual([
      {
        path: 'attempts[0].attempt',
        sentence: expect.stringMatching(/^Something else .* the attempt of T\. Okafor begun .* left out\.$/),
      },
    ]);
    expect(await other.read('a-1')).toMatchObject({ endMs: attempt.endMs + 5 });
  });

  it('refuses a file of something else and leaves everything as it was', async () => {
    const answer = await createSafe(store, parts).takeIn(new File(['{"format":"x"}'], 'x.json'));
    expect(answer).toMatchObject({ ok: false, issues: [{ path: 'format' }] });
    expect(await store.list()).toEqual([]);
  });
});
