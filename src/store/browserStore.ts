import { browserAttempts } from './browserAttempts.ts';
import { everything, takeIn } from './browserEverything.ts';
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
    everything: (takenAt) => everything(db, takenAt),
    takeIn: (text, readers) => takeIn(db, text, readers),
  };
}
