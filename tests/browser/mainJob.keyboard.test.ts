import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, describe, expect, it } from 'vitest';
import { closeBrowser, openApp } from './support/page.ts';
import { Senses } from './support/senses.ts';

afterAll(closeBrowser);

/** Goes on with the Tab key until the focus is on something of that name, as someone without a mouse does. */
async function tabTo(page: Page, name: RegExp, most = 250): Promise<void> {
  for (let press = 0; press < most; press++) {
    await page.keyboard.press('Tab');
    const focused = await page.evaluate(() => {
      const at = document.activeElement;
      if (
        at instanceof HTMLInputElement ||
        at instanceof HTMLSelectElement ||
        at instanceof HTMLTextAreaElement
      ) {
        return [at.ariaLabel ?? '', ...[...(at.labels ?? [])].map((label) => label.textContent)].join(' ');
      }
      return at?.matches('a, button, summary')
        ? (at.ariaLabel ?? at.textContent ?? '')
        : (at?.className ?? '');
    });
    if (name.test(focused)) return;
  }
  throw new Error(`The Tab key never came to ${name}.`);
}

/** The name of the unit on a job card, as it stands on the board. */
function unitOf(id: string): RegExp {
  const { card } = JSON.parse(readFileSync(`scenarios/${id}.json`, 'utf8')).public as {
    card: { unit: string };
  };
  return new RegExp(card.unit.replace(/[.*+?^${}()|[\]\\]/g, '\\$&'));
}

/** Goes on to the first choice of a group and with the arrow key to the one wanted. */
async function choose(page: Page, group: RegExp, wanted: RegExp): Promise<void> {
  await tabTo(page, group);
  for (let press = 0; press < 12; press++) {
    const label = await page.evaluate(
      () => (document.activeElement as HTMLInputElement).labels?.[0]?.textContent ?? '',
    );
    const checked = await page.evaluate(() => (document.activeElement as HTMLInputElement).checked);
    if (wanted.test(label)) {
      if (!checked) await page.keyboard.press('Space');
      return;
    }
    await page.keyboard.press('ArrowDown');
  }
  throw new Error(`No choice called ${wanted}.`);
}

async function keys(page: Page, ...presses: string[]): Promise<void> {
  for (const press of presses) {
    await page.keyboard.press(press);
    await page.waitForTimeout(120);
  }
}

describe('a grounded armature, found with the keyboard alone', () => {
  it('is taken from the board to the debrief', async () => {
    const { page, complaints, close } = await openApp();
    const senses = new Senses(page);
    await page.getByRole('heading', { level: 1 }).waitFor();
    await tabTo(page, unitOf('q-e3b9'));
    await keys(page, 'Enter');
    await page.getByRole('button', { name: /to the bench/i }).waitFor();
    await tabTo(page, /to the bench/i);
    await keys(page, 'Enter');
    await page.locator('.bench-picture canvas').waitFor({ timeout: 60_000 });

    await tabTo(page, /Work by buttons and words/);
    if (!(await page.getByRole('button', { name: /in the cradle/i }).isVisible())) await keys(page, 'Enter');
    await tabTo(page, /in the cradle/i);
    await keys(page, 'Enter');
    await senses.until(/armature lies in the cradle/);

    await tabTo(page, /bench-picture/);
    await keys(page, 'm', 'l', '3', '4', 'p');
    await senses.until(/The lamp (?!is dark)/);
    await keys(page, '3', 'a', '4', 'ArrowUp');
    await senses.until(/Lamp probe 2 on .*(segment|bar)/);
    const lit = await senses.until(/The lamp (?!is dark)/);
    expect(lit).toMatch(/Lamp probe 1 on the shaft/);
    await keys(page, '4', 'p');
    await senses.until(/The lamp (?!is dark)/);
    await keys(page, '3', 'b', '4', 'b', 'o');
    await senses.until(/Selector at OFF/);

    await tabTo(page, /^.*Test sheet/);
    await keys(page, 'ArrowRight');
    await tabTo(page, /^\s*Condition/);
    // A list is chosen from by typing the beginning of a choice.
    const choice = await page.getByLabel('Condition').locator('option[value=grounded]').textContent();
    await page.keyboard.type((choice ?? '').slice(0, 6));
    expect(await page.getByLabel('Condition').inputValue()).toBe('grounded');
    await choose(page, /service/i, /specialist/i);
    await tabTo(page, /Because/);
    await page.keyboard.type('The lamp lit from shaft to bar between two proofs.');
    await tabTo(page, /Hand the job in/);
    await keys(page, 'Enter');
    await page.getByRole('button', { name: 'Hand it in' }).waitFor();
    await tabTo(page, /Hand it in/);
    await keys(page, 'Enter');
    await page.getByRole('heading', { level: 1, name: /debrief/i }).waitFor({ timeout: 30_000 });
    expect(await page.getByRole('region', { name: /What it was/ }).textContent()).toMatch(/ground|earth/i);
    expect(complaints).toEqual([]);
    await close();
  }, 300_000);
});
