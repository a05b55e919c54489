import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type BrowserContext, chromium, type Page } from 'playwright-core';
import { build } from 'vite';
import { afterEach, beforeAll, describe, expect, inject, it } from 'vitest';
import { FLAGS } from './support/chromium.ts';
import './support/provided.ts';
import type { StorePage } from './support/storePage.ts';

declare const storePage: StorePage;

/** Never asked for: every request for it is answered by the test. Loopback, so that the browser grants its locks. */
const ADDRESS = 'http://localhost:9/';
/** The page's scripts by file name: parts of the store are fetched when they are wanted. */
let scripts: ReadonlyMap<string, string> = new Map();
let profile = '';
let context: BrowserContext | null = null;

beforeAll(async () => {
  const built = await build({
    configFile: false,
    logLevel: 'silent',
    publicDir: false,
    build: {
      write: false,
      lib: { entry: 'tests/browser/support/storePage.ts', formats: ['es'], fileName: 'page' },
    },
  });
  const [output] = Array.isArray(built) ? built : [built];
  const files = output !== undefined && 'output' in output ? output.output : [];
  scripts = new Map(files.flatMap((file) => (file.type === 'chunk' ? [[file.fileName, file.code]] : [])));
  expect(scripts.has('page.js')).toBe(true);
});

afterEach(async () => {
  await context?.close().catch(() => undefined);
  if (profile !== '') await rm(profile, { recursive: true, force: true, maxRetries: 5 });
  profile = '';
});

async function open(): Promise<BrowserContext> {
  if (profile === '') profile = await mkdtemp(join(tmpdir(), 'slot-and-riser-'));
  context = await chromium.launchPersistentContext(profile, {
    executablePath: inject('chromium'),
    args: FLAGS,
  });
  await context.route(`${ADDRESS}**`, (route) => {
    const body = scripts.get(new URL(route.request().url()).pathname.slice(1));
    return body === undefined
      ? route.fulfill({ contentType: 'text/html', body: '<script type="module" src="/page.js"></script>' })
      : route.fulfill({ contentType: 'text/javascript', body });
  });
  return context;
}

async function window(from: BrowserContext): Promise<Page> {
  const page = await from.newPage();
  await page.goto(ADDRESS);
  await page.waitForFunction(() => 'storePage' in globalThis);
  return page;
}

/** Numbers of the entries kept, as a fresh page finds them. */
const keptIn = (page: Page) =>
  page.evaluate(async () => {
    const store = await storePage.openBrowserStore();
    return ((await store.read('a-1')) as { entries: { n: number }[] }).entries.map(({ n }) => n);
  });

describe('acts kept in a real browser', () => {
  it('are all there after the browser crashed in the middle of writing, once they were acknowledged', async () => {
    const first = await open();
    const page = await window(first);
    let acknowledged = -1;
    await page.exposeFunction('acknowledge', (n: number) => {
      acknowledged = n;
    });
    page
      .evaluate(async () => {
        const store = await storePage.openBrowserStore();
        await store.begin(storePage.head);
        for (let n = 0; ; n++) {
          await store.append('a-1', [storePage.entry(n)]);
          await (globalThis as unknown as { acknowledge(n: number): Promise<void> }).acknowledge(n);
        }
      })
      .catch(() => undefined);
    await expect.poll(() => acknowledged, { timeout: 30_000 }).toBeGreaterThan(25);
    const gone = new Promise((resolve) => first.on('close', resolve));
    const session = await first.newCDPSession(page);
    session.send('Browser.crash').catch(() => undefined);
    await gone;

    const kept = await keptIn(await window(await open()));
    expect(kept.length).toBeGreaterThan(acknowledged);
    expect(kept).toEqual(kept.map((_, n) => n));
  });

  it('are refused in a sentence when the disk is full, and those before them stay', async () => {
    const page = await window(await open());
    const session = await page.context().newCDPSession(page);
    const origin = new URL(ADDRESS).origin;
    await session.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 1_000_000 });
    const said = await page.evaluate(async () => {
      const store = await storePage.openBrowserStore();
      await store.add(storePage.attempt('a-1', 3), null);
      // Noise, since the browser presses what it stores.
      const noise = Array.from({ length: 50 }, () => crypto.getRandomValues(new Uint8Array(60_000)).join());
      const long = { ...storePage.entry(3), noise };
      return store.append('a-1', [long]).then(
        () => 'kept',
        (error: Error) => error.message,
      );
    });
    expect(said).toMatch(/no room left/);
    expect(await keptIn(page)).toEqual([0, 1, 2]);
    await page.evaluate(async () => {
      const store = await storePage.openBrowserStore();
      await store.append('a-1', [storePage.entry(3)]);
    });
    expect(await keptIn(page)).toEqual([0, 1, 2, 3]);
  });

  it('come from one window at a time, and the second gets its turn when the first goes away', async () => {
    const both = await open();
    const one = await window(both);
    const two = await window(both);
    const hold = (page: Page) => page.evaluate(async () => (await storePage.holdAttempt('a-1')) !== null);
    expect(await hold(one)).toBe(true);
    expect(await hold(two)).toBe(false);
    await one.close();
    await expect.poll(() => hold(two)).toBe(true);
  });

  it('know how much room there is', async () => {
    const page = await window(await open());
    const found = await page.evaluate(() => storePage.room());
    expect(found?.mostBytes).toBeGreaterThan(1e6);
    expect(found?.usedBytes).toBeGreaterThanOrEqual(0);
  });
});
