import { chromium } from 'playwright-core';
import { build } from 'vite';
import { describe, expect, inject, it } from 'vitest';
import { FLAGS } from './support/chromium.ts';
import { engineFigures, type Figures, type FiguresInPage } from './support/engineFigures.ts';
import './support/provided.ts';

/**
 * Largest difference between Node and a browser, relative to the figure. Arithmetic is the same everywhere; sines,
 * powers and logarithms may differ in their last digit from one build to another, and some figures are small
 * differences of large ones.
 */
const TOLERANCE = 1e-8;
/** Where the exact answer is nothing, both hold rounding noise: SI units. */
const NOISE = 1e-12;

declare const figuresInPage: FiguresInPage;

/** The engine bundled for a browser, as one script. */
async function bundle(): Promise<string> {
  const built = await build({
    configFile: false,
    logLevel: 'silent',
    publicDir: false,
    build: {
      write: false,
      lib: { entry: 'tests/browser/support/engineFigures.ts', formats: ['es'], fileName: 'figures' },
    },
  });
  const [output] = Array.isArray(built) ? built : [built];
  const [chunk] = output !== undefined && 'output' in output ? output.output : [];
  return chunk?.code ?? '';
}

async function figuresInBrowser(): Promise<Figures> {
  const browser = await chromium.launch({ executablePath: inject('chromium'), args: FLAGS, timeout: 60_000 });
  try {
    const page = await browser.newPage();
    await page.addScriptTag({ content: await bundle(), type: 'module' });
    await page.waitForFunction(() => 'figuresInPage' in globalThis);
    return await page.evaluate(() => figuresInPage());
  } finally {
    await browser.close();
  }
}

describe('the engine in Node and in a browser', () => {
  it(`gives the same figures within ${TOLERANCE}`, async () => {
    const here = engineFigures();
    const there = await figuresInBrowser();
    expect(Object.keys(there)).toEqual(Object.keys(here));
    expect(Object.keys(here).length).toBeGreaterThan(100);
    for (const [name, value] of Object.entries(here)) {
      expect(Number.isFinite(value), name).toBe(true);
      expect(Math.abs(there[name]! - value), name).toBeLessThanOrEqual(TOLERANCE * Math.abs(value) + NOISE);
    }
  });
});
