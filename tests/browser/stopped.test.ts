import { afterAll, describe, expect, it } from 'vitest';
import { closeBrowser } from './support/page.ts';
import { openBench } from './support/screens.ts';
import { Senses } from './support/senses.ts';

afterAll(closeBrowser);

describe('a critical act', () => {
  it('stops the attempt: a live lamp lead taken by its tip', async () => {
    const { page, hand, close } = await openBench('q-91d2');
    const senses = new Senses(page);
    await hand.drag('mat', 'cradle');
    await hand.press('selector:low');
    await senses.until(/Selector at LOW/);
    const tip = await hand.at('lead:lamp.1:tip');
    await page.mouse.move(tip.x, tip.y);
    await page.mouse.down();
    await hand.wait(900);
    await page.mouse.up();
    const stopped = page.getByRole('alertdialog').or(page.getByRole('dialog'));
    await stopped.waitFor();
    expect(await stopped.textContent()).toMatch(/not yet/);
    await page.getByRole('button', { name: /debrief/i }).click();
    await page.getByRole('heading', { level: 1, name: /debrief/i }).waitFor({ timeout: 30_000 });
    expect(await page.locator('.outcome-stopped').textContent()).toMatch(/not yet/i);
    await close();
  }, 180_000);

  it('is let go of without harm when the press on the tip is not held', async () => {
    const { page, hand, close } = await openBench('q-91d2');
    await hand.drag('mat', 'cradle');
    await hand.press('selector:low');
    const tip = await hand.at('lead:lamp.1:tip');
    await page.mouse.move(tip.x, tip.y);
    await page.mouse.down();
    await hand.wait(100);
    await page.mouse.up();
    await hand.wait(700);
    expect(await page.getByRole('dialog').count()).toBe(0);
    expect(await new Senses(page).words()).not.toMatch(/Lamp probe 1/);
    await close();
  }, 180_000);
});
