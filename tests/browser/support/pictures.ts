import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import pixelmatch from 'pixelmatch';
import type { Page } from 'playwright-core';
import { PNG } from 'pngjs';
import { build, type Rolldown } from 'vite';
import type { Layout, Rect } from '../../../src/scene/layout.ts';
import type { DrawMoment, Moment } from './scenePage.ts';

declare const drawMoment: DrawMoment;

const FOLDER = 'tests/browser/pictures';
const ADDRESS = 'http://localhost:9/';

/** Files of the scene bundled for a page of its own. */
async function bundle(): Promise<Map<string, string>> {
  const built = (await build({
    configFile: false,
    logLevel: 'silent',
    publicDir: false,
    base: './',
    build: {
      write: false,
      rolldownOptions: {
        input: 'tests/browser/support/scenePage.ts',
        output: { entryFileNames: 'page.js' },
      },
    },
  })) as Rolldown.RolldownOutput;
  return new Map(built.output.flatMap((file) => (file.type === 'chunk' ? [[file.fileName, file.code]] : [])));
}

/** A page that draws moments of the bench. */
export async function openScenePage(page: Page): Promise<void> {
  const files = await bundle();
  await page.route(`${ADDRESS}**`, (route) => {
    const name = new URL(route.request().url()).pathname.slice(1);
    const code = files.get(name);
    if (code !== undefined) return route.fulfill({ contentType: 'text/javascript', body: code });
    return route.fulfill({
      contentType: 'text/html',
      body: '<body style="margin:0;background:#071c20"><script type="module" src="/page.js"></script>',
    });
  });
  await page.goto(ADDRESS);
  await page.waitForFunction(() => 'drawMoment' in globalThis);
}

/** The part of a moment that a picture is of. */
export async function pictureOf(page: Page, moment: Moment, where: (l: Layout) => Rect): Promise<PNG> {
  const layout = await page.evaluate((wanted) => drawMoment(wanted), moment);
  const { x, y, w, h } = where(layout);
  const clip = { x: Math.round(x), y: Math.round(y), width: Math.round(w), height: Math.round(h) };
  return PNG.sync.read(await page.screenshot({ clip }));
}

/** Share of the pixels that are clearly of another colour, 0..1. */
export function apart(a: PNG, b: PNG): number {
  if (a.width !== b.width || a.height !== b.height) return 1;
  const differing = pixelmatch(a.data, b.data, undefined, a.width, a.height, { threshold: 0.12 });
  return differing / (a.width * a.height);
}

/** The kept picture of that name; with PICTURES=keep the one drawn now is kept instead. */
export function kept(name: string, drawn: PNG): PNG {
  const file = `${FOLDER}/${name}.png`;
  if (process.env.PICTURES === 'keep') {
    mkdirSync(FOLDER, { recursive: true });
    writeFileSync(file, PNG.sync.write(drawn));
  }
  if (!existsSync(file))
    throw new Error(`No picture is kept as ${file}: look at it, and run with PICTURES=keep.`);
  return PNG.sync.read(readFileSync(file));
}
