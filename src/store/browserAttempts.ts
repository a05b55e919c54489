import type { Attempt, Entry } from '../attempt/entry.ts';
import { type AttemptResult, type AttemptStore, type AttemptSummary, StoreRefused } from './attemptStore.ts';
import {
  type Database,
  durably,
  everyEntryOf,
  type KeptAttempt,
  type Writing,
  writtenElsewhere,
} from './database.ts';

/** Attempts in the browser's database, each act written as it is done. */
export function browserAttempts(db: Database): AttemptStore {
  return {
    list: () => list(db),
    begin: (head) => begin(db, { ...head, result: null }),
    append: (id, entries) => append(db, id, entries),
    reached: (id, endMs) => amend(db, id, (kept) => ({ ...kept, endMs: Math.max(kept.endMs, endMs) })),
    close: (id, endMs, result) =>
      amend(db, id, (kept) => ({ ...kept, endMs: Math.max(kept.endMs, endMs), result })),
    read: (id) => read(db, id),
    add: (attempt, result) => add(db, attempt, result),
    remove: (id) => remove(db, id),
  };
}

const gone = (id: string) => new StoreRefused(`There is no attempt ${id} in this browser.`);

async function list(db: Database): Promise<readonly AttemptSummary[]> {
  const kept = await db.getAll('attempts');
  return kept.map(({ scenario, ...head }) => ({
    ...head,
    scenarioId: scenario.public.id,
    unit: scenario.public.card.unit,
  }));
}

async function begin(db: Database, kept: KeptAttempt): Promise<void> {
  await durably(db, ['attempts'], (tx) => tx.objectStore('attempts').add(kept));
}

/**
 * A second window that goes on with the same attempt finds its number taken and is refused; the first one's act stays.
 * Everything is asked for in one go and looked at afterwards: one way to the disk and back, and what turns out to be
 * wrong undoes the whole.
 */
async function append(db: Database, id: string, entries: readonly Entry[]): Promise<void> {
  await durably(db, ['attempts', 'entries'], async (tx) => {
    const [kept, last] = await Promise.all([
      tx.objectStore('attempts').get(id),
      tx.objectStore('entries').openKeyCursor(everyEntryOf(id), 'prev'),
      addEntries(tx, id, entries),
    ]);
    if (kept === undefined) throw gone(id);
    if (kept.result !== null)
      throw new StoreRefused(`Attempt ${id} was handed in or stopped: nothing can be added to it.`);
    const due = last === null ? 0 : last.key[1] + 1;
    for (const [nth, entry] of entries.entries()) {
      if (entry.n < due + nth) throw writtenElsewhere();
      if (entry.n > due + nth) throw new StoreRefused(`Expected entry ${due + nth}, but ${entry.n} came.`);
    }
    // A record never ends before its last act, wherever the page is closed.
    const endMs = Math.max(kept.endMs, entries.at(-1)?.atMs ?? 0);
    await tx.objectStore('attempts').put({ ...kept, endMs });
  });
}

/** One that cannot be written must fail together with the others, not leave them behind unwatched: hence `async`. */
export async function addEntries(
  tx: Pick<Writing<['entries']>, 'objectStore'>,
  id: string,
  entries: readonly Entry[],
): Promise<void> {
  const log = tx.objectStore('entries');
  await Promise.all(entries.map(async (entry) => log.add(entry, [id, entry.n])));
}

async function amend(db: Database, id: string, change: (kept: KeptAttempt) => KeptAttempt): Promise<void> {
  await durably(db, ['attempts'], async (tx) => {
    const kept = await tx.objectStore('attempts').get(id);
    if (kept === undefined) throw gone(id);
    await tx.objectStore('attempts').put(change(kept));
  });
}

async function read(db: Database, id: string): Promise<unknown> {
  const tx = db.transaction(['attempts', 'entries'], 'readonly');
  const kept = await tx.objectStore('attempts').get(id);
  if (!kept) throw gone(id);
  const { result: _, ...head } = kept;
  return { ...head, entries: await tx.objectStore('entries').getAll(everyEntryOf(id)) };
}

async function add(db: Database, { entries, ...head }: Attempt, result: AttemptResult | null): Promise<void> {
  await durably(db, ['attempts', 'entries'], async (tx) => {
    await tx.objectStore('attempts').add({ ...head, result });
    await addEntries(tx, head.id, entries);
  });
}

async function remove(db: Database, id: string): Promise<void> {
  await durably(db, ['attempts', 'entries'], async (tx) => {
    await tx.objectStore('attempts').delete(id);
    await tx.objectStore('entries').delete(everyEntryOf(id));
  });
}
