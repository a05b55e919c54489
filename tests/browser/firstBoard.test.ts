import { afterAll, describe, expect, it } from 'vitest';
import { closeBrowser, openApp } from './support/page.ts';
import { toBench } from './support/screens.ts';

afterAll(closeBrowser);

const SCRIPT = /core-.*\.js/;
const JOB = 'q-7a16';

/** A page whose script is held back until it is let come. */
async function beforeTheScript() {
  const opened = await openApp();
  let letCome = () => {};
  const held = new Promise<void>((go) => {
    letCome = go;
  });
  await opened.context.route(SCRIPT, async (route) => {
    await held;
    await route.continue();
  });
  await opened.page.reload({ waitUntil: 'commit' });
  return { ...opened, letCome };
}

const words = (text: string | null) => text?.replace(/\s+/g, ' ').trim();

describe('the board before the script has come', () => {
  it('hangs there with every card, and is the one the script puts up', async () => {
    const { page, letCome, complaints, close } = await beforeTheScript();
    const cards = page.locator('.slip');
    await cards.first().waitFor();
    const before = words(await page.locator('#app').textContent());
    const first = await cards.first().elementHandle();
    letCome();
    await page.waitForFunction(() => document.title.startsWith('Jobs'));
    expect(await cards.count()).toBeGreaterThan(10);
    expect(words(await page.locator('#app').textContent())).toBe(before);
    expect(await first?.evaluate((card) => card.isConnected)).toBe(true);
    expect(complaints).toEqual([]);
    await close();
  });

  it('gives a card that is pressed, as soon as the script is there', async () => {
    const { page, letCome, complaints, close } = await beforeTheScript();
    await page.locator(`a[href="#/job/${JOB}"]`).click();
    letCome();
    await page.getByRole('button', { name: /to the bench/i }).waitFor();
    expect(await page.locator('.slip').count()).toBe(0);
    expect(complaints).toEqual([]);
    await close();
  });

  it('keeps the press of a button until something can come of it', async () => {
    const { page, letCome, close } = await beforeTheScript();
    await page.getByRole('button', { name: 'Settings' }).click();
    expect(await page.getByRole('dialog').count()).toBe(0);
    letCome();
    await page.getByRole('dialog').waitFor();
    await close();
  });

  it.each(['#/assessor', '#/instructor', `#/job/${JOB}`])(
    'is not shown to who goes to %s',
    async (address) => {
      const { page, letCome, close } = await beforeTheScript();
      await page.goto(`${page.url().split('#')[0]}?again${address}`, { waitUntil: 'commit' });
      await page.locator('.slip').last().waitFor({ state: 'attached' });
      // Nothing is shown before the styles have come, and they hide it.
      await page.locator('.slip').first().waitFor({ state: 'hidden' });
      expect(await page.locator('.slip').count()).toBeGreaterThan(10);
      letCome();
      await page.getByRole('heading', { level: 1 }).waitFor();
      await close();
    },
  );

  it('is not shown to who has been at a bench, whose board has more to tell', async () => {
    const { page, letCome, close } = await beforeTheScript();
    letCome();
    await toBench(page, JOB);
    await page.getByRole('button', { name: 'Leave' }).click();
    await page.reload({ waitUntil: 'commit' });
    await page.locator('.slip').first().waitFor({ state: 'attached' });
    await page.getByRole('link', { name: /carry on/i }).waitFor();
    await close();
  });

  it('still says so when the app cannot start', async () => {
    const { page, context, letCome, close } = await beforeTheScript();
    await context.route(/library\.json/, (route) => route.fulfill({ status: 500, body: '' }));
    await page.goto(`${page.url()}?again#/assessor`, { waitUntil: 'commit' });
    letCome();
    await page.getByText('could not start here').waitFor();
    await close();
  });
});
