import { browserAttempts } from './browserAttempts.ts';
import { browserKeys, browserShelf } from './browserShelf.ts';
import { openDatabase } from './database.ts';
import type { Store } from './store.ts';

/** Everything kept in this browser's IndexedDB. */
export async function openBrowserStore(): Promise<Store> {
  const db = await openDatabase();
  return {
    ...browserAttempts(db),
    jobs: browserShelf(db, 'jobs'),
    records: browserShelf(db, 'records'),
    drafts: browserShelf(db, 'drafts'),
    keys: browserKeys(db),
    // Seldom wanted, and never at the bench.
    everything: async (takenAt) => (await import('./browserEverything.ts')).everything(db, takenAt),
    takeIn: async (text, readers) => (await import('./browserEverything.ts')).takeIn(db, text, readers),
  };
}
