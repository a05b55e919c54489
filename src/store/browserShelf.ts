import { StoreRefused } from './attemptStore.ts';
import { type Database, durably, type ShelfName } from './database.ts';
import type { KeyShelf, Shelf, Thing } from './store.ts';

/** Things kept whole, each with a count of its changes so that two windows cannot overwrite each other unseen. */
export function browserShelf(db: Database, name: ShelfName): Shelf {
  return {
    async list() {
      return (await db.getAll(name)).map(({ value: _, ...kept }) => kept);
    },
    async read(id) {
      const kept = await db.get(name, id);
      if (kept === undefined) throw new StoreRefused(`There is no ${id} in this browser.`);
      return kept;
    },
    put: (thing, since) => put(db, name, thing, since),
    async remove(id) {
      await durably(db, [name], (tx) => tx.objectStore(name).delete(id));
    },
  };
}

function put(db: Database, name: ShelfName, thing: Thing, since: number): Promise<number> {
  return durably(db, [name], async (tx) => {
    const kept = await tx.objectStore(name).get(thing.id);
    if ((kept?.revision ?? 0) !== since) throw new StoreRefused(conflict(thing, kept === undefined));
    await tx.objectStore(name).put({ ...thing, revision: since + 1 });
    return since + 1;
  });
}

function conflict(thing: Thing, isGone: boolean): string {
  return isGone
    ? `“${thing.title}” was removed in another window: save it under a new name to keep it.`
    : `“${thing.title}” was changed in another window since you opened it: that change was kept. Save yours under another name, or open it afresh.`;
}

/** Keys by fingerprint. The browser keeps the private half as an object that can sign and not be read. */
export function browserKeys(db: Database): KeyShelf {
  return {
    list: () => db.getAll('keys'),
    async add(key) {
      await durably(db, ['keys'], (tx) => tx.objectStore('keys').add(key));
    },
    async rename(fingerprint, owner) {
      await durably(db, ['keys'], async (tx) => {
        const kept = await tx.objectStore('keys').get(fingerprint);
        if (kept === undefined) throw new StoreRefused(`There is no key ${fingerprint} in this browser.`);
        await tx.objectStore('keys').put({ ...kept, owner });
      });
    },
    async remove(fingerprint) {
      await durably(db, ['keys'], (tx) => tx.objectStore('keys').delete(fingerprint));
    },
  };
}
