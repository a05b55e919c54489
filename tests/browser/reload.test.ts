import { afterAll, describe, expect, it } from 'vitest';
import { Hand } from './support/hand.ts';
import { closeBrowser } from './support/page.ts';
import { openBench } from './support/screens.ts';
import { Senses } from './support/senses.ts';
import { Tray } from './support/tray.ts';

afterAll(closeBrowser);

describe('an attempt in the middle of its work', () => {
  it('stands as it was left after the page is loaded again', async () => {
    const { page, hand, complaints, close } = await openBench('q-91d2');
    const senses = new Senses(page);
    await hand.drag('mat', 'cradle');
    const bar = (await hand.within('side')).find((id) => id.startsWith('bar:'))!;
    await hand.press('chalk');
    await hand.press(bar, 'side');
    await hand.drag('lead:ammeter.1:handle', bar, 'end');
    await hand.press('range:30');
    await hand.press('selector:high');
    await senses.until(/Selector at HIGH/);
    await hand.wait(500);
    const left = await senses.words();

    await page.reload();
    const again = await new Hand(page).ready();
    expect(await new Senses(page).words()).toBe(left);
    await again.press('selector:off');
    await new Senses(page).until(/Selector at OFF/);
    expect(complaints).toEqual([]);
    await close();
  }, 180_000);

  it('has every act that was answered, also when the page goes in the same instant', async () => {
    const { page, complaints, close } = await openBench('q-91d2');
    const tray = new Tray(page);
    await tray.open('Before power');
    const items = [/rings and watch/, /floor is dry/];
    await tray.press(items[0]!);
    // Pressed and gone in one task: nothing has had the time to reach the disk.
    await Promise.all([
      page.waitForEvent('load'),
      page.evaluate((words) => {
        const named = new RegExp(words);
        const button = [...document.querySelectorAll('button')].find((one) =>
          named.test(one.textContent ?? ''),
        );
        button!.click();
        location.reload();
      }, items[1]!.source),
    ]);
    await new Hand(page).ready();
    const prepared = await page.evaluate(
      () =>
        new Promise<string[]>((resolve, reject) => {
          const asked = indexedDB.open('slot-and-riser');
          asked.onerror = () => reject(asked.error);
          asked.onsuccess = () => {
            const all = asked.result.transaction('entries').objectStore('entries').getAll();
            all.onsuccess = () => resolve(all.result.map(({ action }) => action.item));
          };
        }),
    );
    expect(prepared).toEqual(['ringsOff', 'dryFloor']);
    expect(complaints).toEqual([]);
    await close();
  }, 180_000);
});
