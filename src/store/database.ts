import { type DBSchema, type IDBPDatabase, type IDBPTransaction, openDB, type StoreNames } from 'idb';
import type { Entry } from '../attempt/entry.ts';
import { type AttemptHead, type AttemptResult, StoreRefused } from './attemptStore.ts';
import type { Kept, KeptKey, Thing } from './store.ts';

const DATABASE = 'slot-and-riser';
const VERSION = 2;

export interface KeptAttempt extends AttemptHead {
  readonly result: AttemptResult | null;
}

export type ShelfName = 'jobs' | 'records' | 'drafts';

export interface Shelves extends DBSchema {
  attempts: { key: string; value: KeptAttempt };
  /** Entries apart from their attempt, so that each act is one small write. Key: [attempt id, entry number]. */
  entries: { key: [string, number]; value: Entry };
  jobs: { key: string; value: Kept & Thing };
  records: { key: string; value: Kept & Thing };
  drafts: { key: string; value: Kept & Thing };
  keys: { key: string; value: KeptKey };
}

export type Database = IDBPDatabase<Shelves>;
export type Writing<Names extends StoreNames<Shelves>[]> = IDBPTransaction<Shelves, Names, 'readwrite'>;

/** Opens the database, bringing one of an earlier version up to this one with all that is in it. */
export function openDatabase(): Promise<Database> {
  return new Promise((resolve, reject) => {
    let givenUp = false;
    const opening = openDB<Shelves>(DATABASE, VERSION, {
      upgrade: (db, from) => addShelves(db, from),
      blocked() {
        givenUp = true;
        reject(new StoreRefused(SENTENCES.blocked));
      },
      // A later version waits in another window: let it have the database rather than make it wait.
      blocking: (_from, _to, event) => (event.target as IDBDatabase).close(),
    });
    opening.then(
      (db) => (givenUp ? db.close() : resolve(db)),
      (error) => reject(refusal(error)),
    );
  });
}

function addShelves(db: Database, from: number): void {
  if (from < 1) {
    db.createObjectStore('attempts', { keyPath: 'id' });
    db.createObjectStore('entries');
  }
  if (from < 2) {
    for (const name of ['jobs', 'records', 'drafts'] as const) db.createObjectStore(name, { keyPath: 'id' });
    db.createObjectStore('keys', { keyPath: 'fingerprint' });
  }
}

export const everyEntryOf = (id: string) => IDBKeyRange.bound([id, 0], [id, Number.MAX_SAFE_INTEGER]);

/**
 * Writes all of something or nothing of it. The promise resolves when the data has reached the disk (`strict`), not
 * the browser's buffer, and rejects with a sentence for the person at the screen.
 * @param work  may wait for requests of its own transaction and for nothing else
 */
export async function durably<Names extends StoreNames<Shelves>[], T>(
  db: Database,
  names: Names,
  work: (tx: Writing<Names>) => Promise<T>,
): Promise<T> {
  try {
    const tx = db.transaction(names, 'readwrite', { durability: 'strict' });
    // Whatever becomes of it is told by the `await` below; this keeps an abort from being told twice.
    tx.done.catch(() => undefined);
    const result = await work(tx).catch((error) => {
      stop(tx);
      throw error;
    });
    await tx.done;
    return result;
  } catch (error) {
    throw refusal(error);
  }
}

/** Undoes what was written so far, when the browser has not done so by itself. */
function stop(tx: { abort(): void }): void {
  try {
    tx.abort();
  } catch {
    // Already aborted: that is how `work` came to fail.
  }
}

const SENTENCES: Readonly<Record<string, string>> = {
  QuotaExceededError:
    'This browser has no room left: export and remove some attempts, then repeat the last act. What was kept before is untouched.',
  ConstraintError:
    'This was already written to from another window or file: carry on there, or reload this page to see it.',
  InvalidStateError:
    'This page has lost its store, because a newer version of it was opened or the browser closed it: reload the page. What was kept before is untouched.',
  blocked:
    'An older version of this page is open in another window and holds the store: close that window, then reload this one.',
};

/** Our own refusals pass as they are; what the browser throws becomes a sentence. */
export function refusal(error: unknown): StoreRefused {
  if (error instanceof StoreRefused) return error;
  const name = error instanceof Error || error instanceof DOMException ? error.name : '';
  return new StoreRefused(SENTENCES[name] ?? `This could not be kept in this browser (${String(error)}).`);
}

export const writtenElsewhere = () => new StoreRefused(SENTENCES.ConstraintError);
