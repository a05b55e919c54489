import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { giveFile } from './support/files.ts';
import { axeFindings, smallTargets, spill, unseenFocus } from './support/fit.ts';
import { closeBrowser, type Opened, openApp } from './support/page.ts';
import { decideAndHandIn } from './support/paper.ts';
import { toBench } from './support/screens.ts';

let opened: Opened;
let page: Page;
/** Addresses of an attempt at the bench and of one handed in. */
let bench = '';
let debrief = '';

/** One attempt left at the bench, one handed in: what the screens show then is what a class sees. */
beforeAll(async () => {
  opened = await openApp({ reducedMotion: 'reduce' });
  page = opened.page;
  page.setDefaultTimeout(30_000);
  await toBench(page, 'q-47ab');
  await decideAndHandIn(page, {
    condition: /ground|earth/i,
    next: /specialist/i,
    because: 'To see the debrief.',
  });
  debrief = hashOf(page);
  await page.goto(page.url().replace(/#.*/, '#/jobs'));
  const hand = await toBench(page, 'q-91d2');
  await hand.drag('mat', 'cradle');
  bench = hashOf(page);
});
afterAll(async () => {
  await opened?.close();
  await closeBrowser();
});

const hashOf = (on: Page) => new URL(on.url()).hash;
const tab = (name: RegExp) => () => page.getByRole('tab', { name }).click();
const press = (name: string | RegExp) => () => page.getByRole('button', { name }).first().click();

/** Picks the attempt that was handed in and begins to assess it. */
async function review(): Promise<void> {
  await page.locator('main table input[type=checkbox]').first().check();
  await page.getByRole('button', { name: 'Assess this attempt' }).click();
  await page.waitForFunction(() => location.hash.includes('/review/'));
  await page.locator('.as-picture canvas').waitFor();
}

/** Presses what opens a dialog, whose code may only now be on its way. */
const opens = (name: string) => async () => {
  await press(name)();
  await page.getByRole('dialog').waitFor();
};

/** Has a record checked that was signed, with its attempt beside it, and opens it. */
async function checkFile(): Promise<void> {
  const picker = page.getByRole('button', { name: 'Open a file…' });
  await giveFile(page, picker, 'tests/cli/old/signed-in-tenths.json');
  await page.locator('.as-checks').waitFor();
  await page.getByText('Read the record as it stands').click();
}

/** Hands in a file that is no attempt. */
async function badFile(): Promise<void> {
  const picker = page.getByRole('button', { name: 'Open an attempt from a file' });
  await giveFile(page, picker, 'tests/cli/old/signed-in-tenths.json');
  await page.locator('.notice-problem').waitFor();
}

async function ownJob(): Promise<void> {
  await press('Make a job')();
  await page.getByLabel('A rubric of this job’s own').check();
  await page.locator('.in-effects table').first().waitFor();
}

async function verdict(): Promise<void> {
  await tab(/Verdict/)();
  await page.getByLabel('Condition').waitFor();
}

/** Letters at twice their size (WCAG 1.4.4). */
const TWICE = 'html { font-size: 200% !important }';

interface Screen {
  readonly name: string;
  readonly hash: () => string;
  readonly act?: () => Promise<void>;
  /** Drawn work rather than text: not asked to reflow into 320 px. */
  readonly drawn?: boolean;
}

const SCREENS: readonly Screen[] = [
  { name: 'jobs', hash: () => '#/jobs' },
  { name: 'job card', hash: () => '#/job/q-7a16' },
  { name: 'settings', hash: () => '#/jobs', act: opens('Settings') },
  { name: 'bench with its test sheet', hash: () => bench, drawn: true },
  {
    name: 'bench in words',
    hash: () => bench,
    drawn: true,
    act: () => page.getByText('Work by buttons and words').click(),
  },
  { name: 'verdict', hash: () => bench, drawn: true, act: verdict },
  { name: 'job card at the bench', hash: () => bench, drawn: true, act: tab(/Job card/) },
  { name: 'keys', hash: () => bench, drawn: true, act: opens('Keys') },
  { name: 'debrief', hash: () => debrief },
  { name: 'instructor', hash: () => '#/instructor' },
  { name: 'assessor', hash: () => '#/assessor' },
  { name: 'instructor sets a fault', hash: () => '#/instructor/set', drawn: true },
  { name: 'assessor reviews', hash: () => '#/assessor', drawn: true, act: review },
  { name: 'assessor checks and keys', hash: () => '#/assessor/check' },
  { name: 'a file that was checked', hash: () => '#/assessor/check', act: checkFile },
  { name: 'a file that could not be read', hash: () => '#/jobs', act: badFile },
  { name: 'a job of one’s own', hash: () => '#/instructor', act: ownJob },
];

async function show(screen: Screen): Promise<void> {
  await page.goto('about:blank');
  await page.goto(`${inject('appUrl')}${screen.hash()}`);
  await page.getByRole('heading', { level: 1 }).first().waitFor();
  await screen.act?.();
  await page.waitForTimeout(250);
}

describe('the checks', () => {
  it('find what is wrong with a page', async () => {
    const bad = await opened.context.newPage();
    await bad.setContent(`<html lang="en"><title>bad</title><main><h1>Bad</h1><div style="width:3000px">wide</div>
      <p style="color:#999;background:#fff">pale</p>
      <button style="all:unset;width:9px;height:9px">a</button><button style="all:unset;width:9px;height:9px">b</button></main>`);
    expect((await axeFindings(bad)).join()).toMatch(/color-contrast/);
    expect(await smallTargets(bad)).toHaveLength(2);
    expect(await unseenFocus(bad, 2)).toHaveLength(2);
    expect(await spill(bad)).toBeGreaterThan(100);
    await bad.close();
  });
});

describe('everyone', () => {
  it.each(SCREENS)('can use: $name', async (screen) => {
    await page.setViewportSize({ width: 1440, height: 900 });
    await show(screen);
    expect(await axeFindings(page)).toEqual([]);
    expect(await smallTargets(page)).toEqual([]);
    expect(await unseenFocus(page)).toEqual([]);
    await page.setViewportSize({ width: screen.drawn ? 390 : 320, height: 800 });
    await page.waitForTimeout(250);
    expect(await spill(page)).toBeLessThanOrEqual(0);
    expect(await smallTargets(page)).toEqual([]);
    if (screen.drawn) return;
    await page.addStyleTag({ content: TWICE });
    for (const width of [390, 320]) {
      await page.setViewportSize({ width, height: 800 });
      await page.waitForTimeout(250);
      expect({ width, spill: await spill(page) }).toEqual({ width, spill: 0 });
    }
  });
});
