import { afterAll, describe, expect, it } from 'vitest';
import { closeBrowser, openApp } from './support/page.ts';
import { toBench } from './support/screens.ts';

afterAll(closeBrowser);

describe('without a network, after one visit', () => {
  it('the board is there and a job can be taken to the bench', async () => {
    const { page, context, complaints, close } = await openApp();
    await page.evaluate(async () => void (await navigator.serviceWorker.ready));
    await context.setOffline(true);
    await page.reload();
    await page.getByRole('heading', { level: 1 }).waitFor();
    const hand = await toBench(page, 'q-91d2');
    expect(await hand.within()).toContain('selector:high');
    expect(complaints).toEqual([]);
    await close();
  }, 120_000);
});
