import type { Page } from 'playwright-core';

/** Acts of all attempts kept in this browser, oldest first, as the store has them. */
export async function keptActs(page: Page): Promise<{ readonly type: string }[]> {
  return page.evaluate(
    () =>
      new Promise<{ type: string }[]>((resolve, reject) => {
        const opening = indexedDB.open('slot-and-riser');
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const reading = opening.result.transaction('entries').objectStore('entries').getAll();
          reading.onerror = () => reject(reading.error);
          reading.onsuccess = () => {
            opening.result.close();
            resolve(reading.result.map((entry) => entry.action));
          };
        };
      }),
  );
}
