import type { Page } from 'playwright-core';
import { Hand } from './hand.ts';
import { type Opened, openApp } from './page.ts';

/** Takes a job from the board to the bench the way a newcomer does: two presses. */
export async function toBench(page: Page, jobId: string): Promise<Hand> {
  await page.locator(`a[href="#/job/${jobId}"]`).first().click();
  return fromCard(page);
}

/** The second of them. */
export async function fromCard(page: Page): Promise<Hand> {
  await page
    .getByRole('button', { name: /to the bench/i })
    .first()
    .click();
  return new Hand(page).ready();
}

export async function openBench(jobId: string): Promise<Opened & { hand: Hand }> {
  const opened = await openApp();
  return { ...opened, hand: await toBench(opened.page, jobId) };
}
