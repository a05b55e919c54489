import type { Entry } from '../attempt/entry.ts';
import { type AttemptStore, StoreRefused } from './attemptStore.ts';
import { holdAttempt } from './windows.ts';

/**
 * Acts the store has not acknowledged yet. The database takes milliseconds to bring an act to disk, and a page that
 * goes away meanwhile takes what is under way with it; what is noted here stands at once, and the next page makes it
 * good. An act that the page has answered is thus never lost with the page.
 */
export interface Journal {
  /** All that is not acknowledged of an attempt, in place of what was noted before; nothing: nothing is. */
  note(id: string, entries: readonly Entry[]): void;
  /** What the page before left unacknowledged, by attempt. */
  noted(): ReadonlyMap<string, readonly Entry[]>;
}

const KEY = 'slot-and-riser/journal/';

export function browserJournal(storage: Storage): Journal {
  return {
    note(id, entries) {
      try {
        if (entries.length === 0) storage.removeItem(KEY + id);
        else storage.setItem(KEY + id, JSON.stringify(entries));
      } catch (error) {
        // No room, or none allowed: the database itself still keeps every act that it is given the time for.
        console.warn('The act could not be noted at once:', error);
      }
    },
    noted() {
      const keys = Array.from({ length: storage.length }, (_, nth) => storage.key(nth) ?? '');
      const ids = keys.filter((key) => key.startsWith(KEY)).map((key) => key.slice(KEY.length));
      return new Map(ids.map((id) => [id, readNote(storage.getItem(KEY + id))]));
    },
  };
}

function readNote(text: string | null): readonly Entry[] {
  try {
    const noted: unknown = JSON.parse(text ?? '[]');
    return Array.isArray(noted) ? noted.filter((one) => Number.isInteger(one?.n)) : [];
  } catch {
    return [];
  }
}

export type KeptLogs = Pick<AttemptStore, 'list' | 'read' | 'append'>;

/** Writes what the page before left of any attempt, but for one that another window is working on. */
export async function makeAllGood(journal: Journal, store: KeptLogs): Promise<void> {
  for (const id of journal.noted().keys()) {
    const letGo = await holdAttempt(id);
    if (letGo === null) continue;
    await makeGood(id, journal, store).finally(letGo);
  }
}

/** The same of one attempt, held by whoever calls. Whoever reads it then parses these acts like all others. */
export async function makeGood(id: string, journal: Journal, store: KeptLogs): Promise<void> {
  const noted = journal.noted().get(id);
  if (noted === undefined) return;
  const kept = (await store.list()).find((one) => one.id === id);
  try {
    if (kept !== undefined && kept.result === null) await store.append(id, await missing(id, noted, store));
  } catch (error) {
    // Not for lack of trying: it stays noted, and is tried again by the next page.
    if (error instanceof StoreRefused) return;
    throw error;
  }
  journal.note(id, []);
}

async function missing(id: string, noted: readonly Entry[], store: KeptLogs): Promise<Entry[]> {
  const { entries } = (await store.read(id)) as { readonly entries: readonly unknown[] };
  return noted.filter(({ n }) => n >= entries.length);
}
