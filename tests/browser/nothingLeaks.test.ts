import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { build, type Plugin, preview } from 'vite';
import { afterAll, beforeAll, describe, expect, inject, it, vi } from 'vitest';
import type { CheckedLibrary } from '../../src/app/library.ts';
import { closeBrowser, openApp } from './support/page.ts';
import './support/provided.ts';
import { toBench } from './support/screens.ts';
import { Senses } from './support/senses.ts';

const JOB = 'q-91d2';
const OTHER_FAULTS = [{ kind: 'groundedBar', bar: 3, ohm: 0.4 }];

/** Gives one job of the library another hidden fault and leaves its public half and all else alone. */
function otherFault(): Plugin {
  return {
    name: 'other-fault',
    enforce: 'post',
    generateBundle: {
      order: 'post',
      handler(_, bundle) {
        const file = bundle['library.json'];
        if (file?.type !== 'asset') throw new Error('The build has no library.json.');
        const library = JSON.parse(String(file.source)) as CheckedLibrary;
        const job = library.scenarios.find((one) => one.public.id === JOB);
        Object.assign(job!.hidden.armature, { faults: OTHER_FAULTS });
        file.source = JSON.stringify(library);
      },
    },
  };
}

let otherUrl = '';
let stop: () => Promise<void> = async () => {};

beforeAll(async () => {
  // The same build as the one beside it: a test run would otherwise leave the service worker out.
  vi.stubEnv('NODE_ENV', 'production');
  const outDir = await mkdtemp(join(tmpdir(), 'slot-and-riser-'));
  await build({ logLevel: 'silent', plugins: [otherFault()], build: { outDir, emptyOutDir: true } });
  vi.unstubAllEnvs();
  const server = await preview({
    logLevel: 'silent',
    build: { outDir },
    preview: { host: '127.0.0.1', port: 0 },
  });
  const address = server.httpServer.address();
  otherUrl = `http://127.0.0.1:${typeof address === 'object' ? address?.port : 0}/`;
  stop = async () => {
    await server.close();
    await rm(outDir, { recursive: true, force: true });
  };
}, 180_000);
afterAll(async () => {
  await stop();
  await closeBrowser();
});

/** Everything of the page that is kept in the browser, by name. */
function keptNames(page: Page): Promise<string[]> {
  return page.evaluate(async () => {
    const names = Object.keys(localStorage).concat(Object.keys(sessionStorage));
    for (const { name } of await indexedDB.databases()) {
      const db = await new Promise<IDBDatabase>((done, failed) => {
        const open = indexedDB.open(name ?? '');
        open.onsuccess = () => done(open.result);
        open.onerror = () => failed(open.error);
      });
      names.push(...[...db.objectStoreNames].map((store) => `${name}/${store}`));
      db.close();
    }
    return names.concat(
      await caches.keys().then((all) => all.map((key) => key.replace(/-[0-9a-f]{16}$/, ''))),
    );
  });
}

/** What a file is called without the mark its contents give it. */
const unmarked = (path: string) => path.replace(/-[\w-]{8}(?=\.\w+$)/, '');

/** What comes with the bench once it stands; the last of it to be asked for. */
const LATE = ['BenchDialogs', 'VerdictLeaf'];
const QUIET_MS = 2000;

/** Waits until the bench has fetched its late pieces and asks for nothing more: a slow machine does so later. */
async function settled(requests: readonly string[]): Promise<void> {
  await vi.waitFor(
    () => {
      for (const piece of LATE) expect(requests.join(' ')).toContain(piece);
    },
    { timeout: 60_000, interval: 100 },
  );
  let before = -1;
  while (before !== requests.length) {
    before = requests.length;
    await new Promise((go) => setTimeout(go, QUIET_MS));
  }
}

async function lookAt(url: string) {
  const { page, requests, close } = await openApp({}, '', url);
  await page.getByRole('heading', { level: 1 }).waitFor();
  const board = await page.locator('body').textContent();
  await page.locator(`a[href="#/job/${JOB}"]`).first().click();
  await page.getByRole('button', { name: /to the bench/i }).waitFor();
  const card = await page.locator('main').first().textContent();
  await page.goBack();
  await toBench(page, JOB);
  await page.evaluate(async () => void (await navigator.serviceWorker.ready));
  await settled(requests);
  const shown = {
    board,
    card,
    senses: await new Senses(page).words(),
    picture: (await page.locator('.bench-picture').screenshot()).toString('base64'),
    kept: await keptNames(page),
    requests: [...new Set(requests.map(unmarked))].sort(),
  };
  await close();
  return shown;
}

describe('two jobs that differ only in their hidden half', () => {
  it('show the same board, card, bench, storage and requests', async () => {
    const one = await lookAt(inject('appUrl'));
    const other = await lookAt(otherUrl);
    expect(other.board).toBe(one.board);
    expect(other.card).toBe(one.card);
    expect(other.senses).toBe(one.senses);
    expect(other.kept).toEqual(one.kept);
    expect(other.requests).toEqual(one.requests);
    expect(other.picture === one.picture).toBe(true);
  }, 300_000);
});
