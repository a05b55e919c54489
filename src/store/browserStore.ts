import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { Attempt, Entry } from '../attempt/entry.ts';
import {
  type AttemptHead,
  type AttemptResult,
  type AttemptStore,
  type AttemptSummary,
  StoreRefused,
} from './attemptStore.ts';

const DATABASE = 'slot-and-riser';
const VERSION = 1;

interface Kept extends AttemptHead {
  readonly result: AttemptResult | null;
}

interface Shelves extends DBSchema {
  attempts: { key: string; value: Kept };
  /** Entries apart from their attempt, so that each act is one small write. Key: [attempt id, entry number]. */
  entries: { key: [string, number]; value: Entry };
}

type Database = IDBPDatabase<Shelves>;

/** Attempts in this browser's IndexedDB, each act written as it is done. */
export async function openBrowserStore(): Promise<AttemptStore> {
  const db = await openDB<Shelves>(DATABASE, VERSION, {
    upgrade(fresh) {
      fresh.createObjectStore('attempts', { keyPath: 'id' });
      fresh.createObjectStore('entries');
    },
  });
  return {
    list: () => list(db),
    begin: (head) => put(db, { ...head, result: null }),
    append: (id, entries) => append(db, id, entries),
    reached: (id, endMs) => amend(db, id, (kept) => ({ ...kept, endMs: Math.max(kept.endMs, endMs) })),
    close: (id, endMs, result) =>
      amend(db, id, (kept) => ({ ...kept, endMs: Math.max(kept.endMs, endMs), result })),
    read: (id) => read(db, id),
    add: (attempt, result) => add(db, attempt, result),
    remove: (id) => remove(db, id),
  };
}

const everyEntryOf = (id: string) => IDBKeyRange.bound([id, 0], [id, Number.MAX_SAFE_INTEGER]);

/** `strict`: the promise resolves when the data has reached the disk, not the browser's buffer. */
const DURABLE = { durability: 'strict' } as const;

async function list(db: Database): Promise<readonly AttemptSummary[]> {
  const kept = await db.getAll('attempts');
  return kept.map(({ scenario, ...head }) => ({ ...head, scenarioId: scenario.public.id }));
}

function put(db: Database, kept: Kept): Promise<void> {
  return told(async () => {
    const tx = db.transaction('attempts', 'readwrite', DURABLE);
    await Promise.all([tx.store.add(kept), tx.done]);
  });
}

/** `add` and not `put`: a second window that writes the same entry number is refused instead of overwriting. */
function append(db: Database, id: string, entries: readonly Entry[]): Promise<void> {
  return told(async () => {
    const tx = db.transaction('entries', 'readwrite', DURABLE);
    await Promise.all([...entries.map((entry) => tx.store.add(entry, [id, entry.n])), tx.done]);
  });
}

function amend(db: Database, id: string, change: (kept: Kept) => Kept): Promise<void> {
  return told(async () => {
    const tx = db.transaction('attempts', 'readwrite', DURABLE);
    const kept = await tx.store.get(id);
    if (kept) await tx.store.put(change(kept));
    await tx.done;
  });
}

async function read(db: Database, id: string): Promise<unknown> {
  const tx = db.transaction(['attempts', 'entries'], 'readonly');
  const kept = await tx.objectStore('attempts').get(id);
  if (!kept) throw new StoreRefused(`There is no attempt ${id} in this browser.`);
  const { result: _, ...head } = kept;
  return { ...head, entries: await tx.objectStore('entries').getAll(everyEntryOf(id)) };
}

function add(db: Database, { entries, ...head }: Attempt, result: AttemptResult | null): Promise<void> {
  return told(async () => {
    const tx = db.transaction(['attempts', 'entries'], 'readwrite', DURABLE);
    const writes = entries.map((entry) => tx.objectStore('entries').add(entry, [head.id, entry.n]));
    await Promise.all([tx.objectStore('attempts').add({ ...head, result }), ...writes, tx.done]);
  });
}

function remove(db: Database, id: string): Promise<void> {
  return told(async () => {
    const tx = db.transaction(['attempts', 'entries'], 'readwrite', DURABLE);
    const gone = [tx.objectStore('attempts').delete(id), tx.objectStore('entries').delete(everyEntryOf(id))];
    await Promise.all([...gone, tx.done]);
  });
}

const SENTENCES: Readonly<Record<string, string>> = {
  QuotaExceededError:
    'This browser has no room left for attempts: export and remove some, then repeat the last act. What was kept before is untouched.',
  ConstraintError:
    'This attempt was already written to from another window or file: carry on there, or reload this page to see it.',
};

async function told(work: () => Promise<void>): Promise<void> {
  try {
    await work();
  } catch (error) {
    const name = error instanceof DOMException ? error.name : '';
    throw new StoreRefused(
      SENTENCES[name] ?? `The attempt could not be kept in this browser (${String(error)}).`,
    );
  }
}
