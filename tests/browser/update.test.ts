import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { keptActs } from './support/kept.ts';
import { closeBrowser, openApp } from './support/page.ts';
import { decideAndHandIn } from './support/paper.ts';
import { toBench } from './support/screens.ts';
import { Senses } from './support/senses.ts';
import { serveTwoVersions, type TwoVersions } from './support/twoVersions.ts';

const MARKER = 'next';
let served: TwoVersions;

beforeAll(async () => {
  served = await serveTwoVersions(MARKER);
});
afterAll(async () => {
  await closeBrowser();
  await served.close();
});

const version = (page: Page) =>
  page.evaluate(() => document.querySelector<HTMLMetaElement>('meta[name=version]')?.content ?? 'first');

const keptTypes = async (page: Page) => (await keptActs(page)).map(({ type }) => type);

/** The browser fetches the new version and keeps it in waiting. */
async function newVersionWaits(page: Page): Promise<void> {
  await page.evaluate(async () => void (await (await navigator.serviceWorker.ready).update()));
  await page.waitForFunction(async () => (await navigator.serviceWorker.ready).waiting !== null, undefined, {
    timeout: 30_000,
    polling: 200,
  });
}

/** Visits, in windows one after another: a new version waits until the last window of the old one is really gone. */
async function nextVisit(context: BrowserContext, url: string): Promise<Page> {
  for (let visit = 1; ; visit++) {
    const page = await context.newPage();
    await page.goto(url);
    await page.getByRole('heading', { level: 1 }).waitFor();
    if (visit === 8 || (await version(page)) !== 'first') return page;
    await page.close();
    await new Promise((later) => setTimeout(later, 1000));
  }
}

describe('a new version in the middle of an attempt', () => {
  it('waits until the next visit, and nothing of the attempt is lost', async () => {
    const { page, context, complaints, close } = await openApp({}, '', served.url);
    await page.evaluate(async () => void (await navigator.serviceWorker.ready));
    await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
    const hand = await toBench(page, 'q-91d2');
    await hand.drag('mat', 'cradle');
    const senses = new Senses(page);
    await senses.until(/armature lies in the cradle/);

    served.release();
    await newVersionWaits(page);
    await hand.press('selector:low');
    await senses.until(/Selector at LOW/);
    await expect.poll(() => keptTypes(page)).toContain('selector.turn');
    await page.reload();
    expect(await version(page)).toBe('first');
    await senses.until(/Selector at LOW/);
    await hand.ready();
    await hand.press('selector:off');
    await senses.until(/Selector at OFF/);
    // The marks and the debrief are scripts of the first version that the server no longer has.
    await decideAndHandIn(page, {
      condition: /riser/i,
      next: /resolder/i,
      because: 'To be seen after the update.',
    });
    await hand.wait(300);
    const acts = await keptTypes(page);
    expect(acts).toEqual(
      expect.arrayContaining(['armature.place', 'selector.turn', 'verdict.write', 'job.handIn']),
    );
    await page.close();

    const again = await nextVisit(context, served.url);
    expect(await version(again)).toBe(MARKER);
    expect(await keptTypes(again)).toEqual(acts);
    await again.locator('a[href^="#/debrief/"]').first().click();
    await again.getByRole('heading', { level: 1, name: /debrief/i }).waitFor({ timeout: 30_000 });
    expect(complaints).toEqual([]);
    await close();
  });
});
