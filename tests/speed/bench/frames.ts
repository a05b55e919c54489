import { setTimeout as pause } from 'node:timers/promises';
import type { Browser, Page } from 'playwright-core';
import type { Hand } from '../../browser/support/hand.ts';
import { keptActs } from '../../browser/support/kept.ts';
import { type Used, usedWhile } from '../../browser/support/rest.ts';
import { toBench } from '../../browser/support/screens.ts';
import { longestTimers, quantile, scriptPerFrame } from './trace.ts';

export interface FrameSpeed {
  readonly frames: number;
  /** Script of the page from one frame to the next: input, physics, words and drawing; processor time, ms. */
  readonly medianMs: number;
  readonly p95Ms: number;
  /** The same machine doing a fixed sum in the same page, ms. */
  readonly witnessMs: number;
  /** Three seconds in which nobody does anything: bench off, and bench on. */
  readonly idleOff: Used;
  readonly idleOn: Used;
}

const JOB = 'q-7a16';
const SECONDS = 6;
const CATEGORIES = ['devtools.timeline', 'v8.execute', 'disabled-by-default-devtools.timeline'];

/** An armature with a fault is turned to and fro by its front, the strip held over it, the growler on HIGH. */
export async function frameSpeed(browser: Browser, url: string): Promise<FrameSpeed> {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 } });
  const page = await context.newPage();
  await page.goto(url);
  const hand = await toBench(page, JOB);
  await hand.drag('mat', 'cradle');
  await hand.wait(800);
  const idleOff = await usedWhile(page, () => hand.wait(3000));
  await hand.drag('strip', 'strip-at:180');
  await hand.press('selector:high');
  await hand.wait(1500);
  const idleOn = await usedWhile(page, () => hand.wait(3000));
  await turn(hand, 1);
  await browser.startTracing(page, { categories: CATEGORIES });
  await turn(hand, SECONDS);
  const perFrame = scriptPerFrame((await browser.stopTracing()).toString());
  const turns = (await keptActs(page)).filter(({ type }) => type === 'armature.turn').length;
  if (turns < 20) throw new Error(`The armature was turned ${turns} times only: nothing was measured.`);
  const witnessMs = await fixedSum(browser, page);
  await context.close();
  return {
    frames: perFrame.length,
    medianMs: quantile(perFrame, 0.5),
    p95Ms: quantile(perFrame, 0.95),
    witnessMs,
    idleOff,
    idleOn,
  };
}

/** By the browser's own input: a test library puts script of its own on the page for every move with a button down. */
async function turn(hand: Hand, seconds: number): Promise<void> {
  const session = await hand.page.context().newCDPSession(hand.page);
  const { x, y } = await hand.at('core:turn');
  const mouse = (type: 'mouseMoved' | 'mousePressed' | 'mouseReleased', dy: number) =>
    session.send('Input.dispatchMouseEvent', {
      type,
      x: x - 60,
      y: y + dy,
      button: 'left',
      buttons: type === 'mouseReleased' ? 0 : 1,
      clickCount: type === 'mouseMoved' ? 0 : 1,
    });
  await hand.page.mouse.move(x - 60, y);
  await mouse('mousePressed', 0);
  const end = Date.now() + seconds * 1000;
  for (let step = 0; Date.now() < end; step++) {
    await mouse('mouseMoved', 90 * Math.sin(step / 14));
    await pause(8);
  }
  await mouse('mouseReleased', 0);
  await session.detach();
}

/** A witness for the browser: a fixed sum of square roots and sorting, nothing of ours in it; processor time, ms. */
async function fixedSum(browser: Browser, page: Page): Promise<number> {
  await browser.startTracing(page, { categories: CATEGORIES });
  for (let run = 0; run < 9; run++) {
    await page.evaluate(
      () =>
        new Promise<void>((done) => {
          setTimeout(() => {
            let sum = 0;
            for (let i = 1; i < 2_000_000; i++) sum += Math.sqrt(i) % 1;
            const numbers = Array.from({ length: 50_000 }, (_, i) => (i * 7919) % 50_021);
            numbers.sort((a, b) => a - b);
            if (sum + numbers[0]! >= 0) done();
          });
        }),
    );
  }
  return quantile(longestTimers((await browser.stopTracing()).toString(), 9), 0.5);
}
