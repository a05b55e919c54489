import { mkdirSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { type Browser, chromium, type Page } from 'playwright-core';
import { createServer } from 'vite';

/**
 * Photographs every screen at four sizes and runs axe on each: `npx tsx tools/screens/inspect.ts OUT_FOLDER [only]`.
 * Fails when axe finds anything, when a page scrolls sideways, or when a page complains.
 */
const SIZES = [
  [1440, 900],
  [1024, 768],
  [390, 844],
  [320, 640],
] as const;

interface Scene {
  readonly name: string;
  readonly hash: string;
  readonly query?: string;
  readonly act?: (page: Page) => Promise<void>;
}

const WORDS_OPEN = `settings=${encodeURIComponent('{"wordsPanel":"open"}')}`;
const SCENES: readonly Scene[] = [
  { name: 'jobs', hash: '#/jobs' },
  { name: 'jobs-problem', hash: '#/jobs', query: 'bad' },
  { name: 'job', hash: '#/job/q-0001' },
  { name: 'job-gone', hash: '#/job/none' },
  { name: 'settings', hash: '#/jobs', act: (page) => press(page, 'Settings') },
  { name: 'bench', hash: '#/bench/run-0' },
  { name: 'bench-words', hash: '#/bench/run-0', query: WORDS_OPEN, act: ammeterWork },
  { name: 'bench-warned', hash: '#/bench/run-0', act: warned },
  { name: 'bench-verdict', hash: '#/bench/run-1', act: verdict },
  { name: 'bench-guided', hash: '#/bench/run-2' },
  { name: 'bench-keys', hash: '#/bench/run-0', act: (page) => press(page, 'Keys') },
  { name: 'bench-stopped', hash: '#/bench/run-0', query: WORDS_OPEN, act: stopped },
  {
    name: 'debrief',
    hash: '#/debrief/done',
    act: (page) => press(page, /behind “Every bar/),
  },
  { name: 'debrief-stopped', hash: '#/debrief/stopped' },
];

async function press(page: Page, name: string | RegExp): Promise<void> {
  await page.getByRole('button', { name }).first().click();
}

async function ammeterWork(page: Page): Promise<void> {
  await page.locator('.bench-picture').focus();
  for (const key of ['h', '1', 'ArrowDown', 's', '2', 'ArrowDown', 'ArrowDown', 's'])
    await page.keyboard.press(key);
  await press(page, 'Mark: put the chalk there');
  await page.getByRole('button', { name: /As on the bench/ }).click();
  await page.getByLabel('Needle at').fill('130');
  await press(page, 'Write the line');
}

async function warned(page: Page): Promise<void> {
  await page.locator('.bench-picture').focus();
  await page.keyboard.press('h');
  await page.keyboard.press(']');
  await page.getByText('Work by buttons and words').click();
  await press(page, 'Lift it out');
}

async function verdict(page: Page): Promise<void> {
  await page.getByRole('tab', { name: 'Verdict' }).click();
  await page.getByLabel('Condition').selectOption('badRiserJoint');
  await page.getByLabel(/at one/).check();
  await press(page, 'Hand the job in');
}

async function stopped(page: Page): Promise<void> {
  await press(page, /By the tip… lamp probe 1/);
  await press(page, /Fingers on bare metal/);
}

const [out = '.', only = ''] = process.argv.slice(2);
mkdirSync(out, { recursive: true });
const axe = await readFile(createRequire(import.meta.url).resolve('axe-core'), 'utf8');
const server = await createServer({
  root: import.meta.dirname,
  server: { port: 5192, hmr: false, watch: null },
  logLevel: 'error',
});
await server.listen();
const address = server.resolvedUrls?.local[0] ?? '';
const browser = await chromium.launch({
  executablePath: process.env.CHROME_PATH ?? '/usr/bin/chromium',
  args: [
    '--headless=new',
    '--no-sandbox',
    '--disable-gpu',
    '--disable-quic',
    '--no-first-run',
    '--disable-sync',
  ],
});
const found: string[] = [];
for (const scene of SCENES.filter(({ name }) => name.includes(only))) {
  for (const [width, height] of SIZES) found.push(...(await inspect(browser, scene, width, height)));
}
await browser.close();
await server.close();
console.log(found.length ? found.join('\n') : 'Nothing found.');
process.exitCode = found.length ? 1 : 0;

async function inspect(on: Browser, scene: Scene, width: number, height: number): Promise<string[]> {
  const page = await on.newPage({ viewport: { width, height }, reducedMotion: 'reduce' });
  page.setDefaultTimeout(8000);
  const where = `${scene.name} ${width}`;
  const said: string[] = [];
  page.on('pageerror', (error) => said.push(`${where}: ${error.message}`));
  page.on('console', (message) => {
    if (message.type() === 'error') said.push(`${where}: ${message.text()}`);
  });
  try {
    await page.goto(`${address}?${scene.query ?? ''}${scene.hash}`);
    await page.locator('main').waitFor();
    await scene.act?.(page);
    await page.waitForTimeout(150);
    await page.screenshot({
      path: `${out}/${scene.name}-${width}.png`,
      fullPage: width < 1024 || !/bench/.test(scene.name),
    });
    said.push(...(await wrongWith(page)).map((line) => `${where}: ${line}`));
  } catch (error) {
    said.push(`${where}: ${String(error).slice(0, 600)}`);
  }
  await page.close();
  return said;
}

async function wrongWith(page: Page): Promise<string[]> {
  await page.evaluate(axe);
  const lines = await page.evaluate(async () => {
    const run = (
      window as unknown as {
        axe: { run(on: Document, how: object): Promise<{ violations: AxeViolation[] }> };
      }
    ).axe;
    const { violations } = await run.run(document, {
      runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
    });
    return violations.map(
      ({ id, nodes }) =>
        `axe ${id}: ${nodes
          .map((node) => node.html.slice(0, 120))
          .slice(0, 3)
          .join(' | ')}`,
    );
  });
  const spill = await page.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
  );
  return spill > 0 ? [...lines, `scrolls sideways by ${spill} px`] : lines;
}

interface AxeViolation {
  readonly id: string;
  readonly nodes: readonly { readonly html: string }[];
}
