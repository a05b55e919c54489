import { readFileSync } from 'node:fs';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { giveFile } from './support/files.ts';
import { closeBrowser, type Opened, openApp } from './support/page.ts';

let opened: Opened;
beforeAll(async () => {
  opened = await openApp();
  await opened.page.getByRole('heading', { level: 1 }).waitFor();
});
afterAll(async () => {
  await opened.close();
  await closeBrowser();
});

const scenario = JSON.parse(readFileSync('scenarios/q-91d2.json', 'utf8')) as Record<string, never>;
const attempt = (changes: object) => ({
  format: 'slot-and-riser/attempt',
  version: 1,
  id: 'a-bad',
  mode: 'practice',
  learner: '',
  startedAt: '2026-01-05T08:00:00.000Z',
  scenario,
  entries: [],
  endMs: 0,
  ...changes,
});

/** Hands a file over through the page's own picker and gives back what the page says of it. */
async function hand(page: Page, content: string): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'slot-and-riser-'));
  const file = join(folder, 'attempt.json');
  await writeFile(file, content);
  await giveFile(page, page.getByRole('button', { name: 'Open an attempt from a file' }), file);
  const said = page.locator('.notice-problem').last();
  await said.waitFor({ timeout: 30_000 });
  const words = (await said.textContent()) ?? '';
  await said.getByRole('button').first().click();
  await rm(folder, { recursive: true });
  return words;
}

describe('a file that cannot be read is named with its place, and the app goes on', () => {
  const cases: readonly (readonly [what: string, text: () => string, expected: RegExp])[] = [
    ['not JSON', () => 'carbon across the mica', /JSON/],
    ['cut off', () => JSON.stringify(attempt({})).slice(0, 200), /JSON|ends|cut/i],
    ['another version', () => JSON.stringify(attempt({ version: 99 })), /version.*99/is],
    [
      'an act nobody knows',
      () => JSON.stringify(attempt({ entries: [{ n: 0, atMs: 0, action: { type: 'lead.throw' } }] })),
      /entries\[0\]/,
    ],
    ['fifty megabytes', () => ' '.repeat(50_000_000), /MB/],
  ];
  it.each(cases)('%s', async (_, text, expected) => {
    const words = await hand(opened.page, text());
    expect(words).toMatch(expected);
    expect(await opened.page.locator('a[href^="#/job/"]').count()).toBeGreaterThan(3);
    expect(opened.complaints).toEqual([]);
  });
});
