import { mkdirSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { type Browser, chromium, type Page } from 'playwright-core';
import { createServer } from 'vite';
import { SCENES, type Scene } from './scenes.ts';

/**
 * Photographs the desks at three sizes and runs axe on each: `npx tsx tools/desks/inspect.ts OUT_FOLDER [only]`.
 * Fails when axe finds anything, when a page scrolls sideways, or when a page complains.
 */
const SIZES = [
  [1440, 900],
  [1024, 768],
  [390, 844],
] as const;

const [out = '.', only = ''] = process.argv.slice(2);
mkdirSync(out, { recursive: true });
const axe = await readFile(createRequire(import.meta.url).resolve('axe-core'), 'utf8');
const server = await createServer({ configFile: `${import.meta.dirname}/vite.config.ts`, logLevel: 'error' });
await server.listen();
const browser = await chromium.launch({
  executablePath: process.env.CHROME_PATH ?? '/usr/bin/chromium',
  args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-sync'],
});
const found: string[] = [];
for (const [width, height] of SIZES)
  for (const scene of SCENES.filter(({ name }) => name.includes(only)))
    found.push(...(await inspect(browser, scene, width, height)));
await browser.close();
await server.close();
console.log(found.length > 0 ? found.join('\n') : 'Nothing found.');
process.exitCode = found.length > 0 ? 1 : 0;

async function inspect(on: Browser, scene: Scene, width: number, height: number): Promise<string[]> {
  const context = await on.newContext({ viewport: { width, height }, reducedMotion: 'reduce' });
  const page = await context.newPage();
  page.setDefaultTimeout(60_000);
  const where = `${scene.name} ${width}`;
  const said: string[] = [];
  page.on('pageerror', (error) => said.push(`${where}: ${error.message}`));
  page.on('console', (message) => {
    if (message.type() === 'error') said.push(`${where}: ${message.text()}`);
  });
  try {
    await page.goto(`http://localhost:5193/${scene.hash}`);
    await page.locator('main').waitFor();
    await scene.act?.(page);
    await page.waitForTimeout(400);
    await page.screenshot({
      path: `${out}/${scene.name}-${width}.png`,
      fullPage: scene.whole ?? width < 1024,
    });
    said.push(...(await wrongWith(page)).map((line) => `${where}: ${line}`));
  } catch (error) {
    said.push(`${where}: ${String(error).split('\n').slice(0, 3).join(' ')}`);
    await page.screenshot({ path: `${out}/${scene.name}-${width}-failed.png` });
  }
  await context.close();
  return said;
}

async function wrongWith(page: Page): Promise<string[]> {
  await page.evaluate(axe);
  const lines = await page.evaluate(async () => {
    const { axe: tool } = window as unknown as {
      axe: { run(on: Document, how: object): Promise<{ violations: AxeViolation[] }> };
    };
    const { violations } = await tool.run(document, {
      runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
    });
    return violations.map(
      ({ id, nodes }) =>
        `axe ${id}: ${nodes
          .map((node) => node.html.slice(0, 140))
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
