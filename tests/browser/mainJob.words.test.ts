import type { Page } from 'playwright-core';
import { afterAll, describe, expect, it } from 'vitest';
import { closeBrowser, openApp } from './support/page.ts';
import { decideAndHandIn } from './support/paper.ts';
import { Senses } from './support/senses.ts';

afterAll(closeBrowser);

const BARS = 23;

const press = (page: Page, name: string | RegExp) => page.getByRole('button', { name }).first().click();

/** Puts a lead on the place whose words fit. */
async function touch(page: Page, lead: string, place: RegExp): Promise<void> {
  const where = page.getByLabel(`Where ${lead} goes`);
  const label = (await where.locator('option').allTextContents()).find((text) => place.test(text));
  await where.selectOption({ label: label ?? '' });
  await press(page, `Touch: put ${lead} there`);
}

/** Turns the armature once round under the strip; for each bar, whether the strip did more than hang there. */
async function stripPass(page: Page, senses: Senses): Promise<string[]> {
  const told: string[] = [];
  for (let bar = 0; bar < BARS; bar++) {
    await press(page, /^1 (segment|bar) towards/);
    await page.waitForTimeout(260);
    told.push(/The strip is held .* mm above the core, [^.]*/.exec(await senses.words())?.[0] ?? '');
  }
  return told;
}

describe('bridged bars, found in words alone', () => {
  it('are taken from the board to the debrief without the picture', async () => {
    const { page, complaints, close } = await openApp();
    // Whoever works in words needs no picture: none is hung here at all.
    await page.route(/\/assets\/scene-.*\.js/, (route) => route.abort());
    await page.locator('a[href="#/job/q-7a16"]').first().click();
    await press(page, /to the bench/i);
    await page.getByText('Work by buttons and words').click();
    const senses = new Senses(page);
    await press(page, 'Lay it in the cradle');
    await senses.until(/armature lies in the cradle/);
    await press(page, 'Mark: put the chalk there');

    await press(page, 'Selector low');
    for (const lead of ['lamp probe 1', 'lamp probe 2']) await press(page, `By the handle: take ${lead}`);
    await touch(page, 'lamp probe 1', /tip of lamp probe 2/i);
    await senses.until(/The lamp (?!is dark)/);
    await touch(page, 'lamp probe 1', /shaft/i);
    await touch(page, 'lamp probe 2', /segment|bar/i);
    expect(await senses.until(/Lamp probe 2 on .*The lamp is dark/s)).toMatch(/Lamp probe 1 on the shaft/);
    await touch(page, 'lamp probe 1', /tip of lamp probe 2/i);
    await senses.until(/The lamp (?!is dark)/);
    for (const lead of ['lamp probe 1', 'lamp probe 2']) await press(page, `To the holster: ${lead}`);

    await press(page, 'Take the strip');
    await press(page, 'Hold it over the core');
    await press(page, 'Selector high');
    const told = await stripPass(page, senses);
    expect(new Set(told).size).toBeGreaterThan(1);
    await press(page, 'Selector off');
    await press(page, 'Hang it up');

    await decideAndHandIn(page, {
      condition: /bridg/i,
      next: /clean/i,
      because: 'The strip pulled at some slots, and the lamp stayed dark to the shaft.',
    });
    expect(await page.getByRole('region', { name: /What it was/ }).textContent()).toMatch(/bridg/i);
    const row = page.getByRole('row', { name: /^(Condition|What is wrong)/i }).first();
    expect(await row.textContent()).toMatch(/(\d+(?:\.\d+)?) of \1/);
    expect(complaints.filter((line) => !/scene-|ERR_FAILED|dynamically imported/.test(line))).toEqual([]);
    await close();
  }, 180_000);
});
