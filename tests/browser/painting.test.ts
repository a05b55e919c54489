import { PNG } from 'pngjs';
import { afterAll, describe, expect, it } from 'vitest';
import type { Hand } from './support/hand.ts';
import { closeBrowser, type Opened, openApp } from './support/page.ts';
import { apart } from './support/pictures.ts';
import { fromCard, toBench } from './support/screens.ts';

afterAll(closeBrowser);

const PAINTER = /paintingWorker-.*\.js/;
const HERE = /paintOrder-.*\.js/;
/** Share of pixels that may differ: a worker may smooth an edge otherwise than the page. */
const TOLERANCE = 0.005;

async function shown(hand: Hand): Promise<PNG> {
  await hand.page.mouse.move(2, 2);
  await hand.wait(700);
  return PNG.sync.read(await hand.page.locator('.bench-picture canvas').screenshot());
}

async function atBench(prepare: (opened: Opened) => Promise<unknown>): Promise<Opened & { hand: Hand }> {
  const opened = await openApp();
  await prepare(opened);
  await opened.page.reload();
  return { ...opened, hand: await toBench(opened.page, 'q-91d2') };
}

const asItComes = () => atBench(async () => {});
const withoutOffscreen = () =>
  atBench(({ context }) =>
    context.addInitScript(() => Reflect.deleteProperty(globalThis, 'OffscreenCanvas')),
  );
const withPainterGone = () => atBench(({ context }) => context.route(PAINTER, (route) => route.abort()));

describe('the still pictures of the bench', () => {
  it.each([
    ['where workers cannot paint', withoutOffscreen],
    ['when the painter does not come', withPainterGone],
  ])('are the same %s', async (_, open) => {
    const usual = await asItComes();
    const other = await open();
    expect(usual.requests.some((path) => PAINTER.test(path))).toBe(true);
    expect(usual.requests.some((path) => HERE.test(path))).toBe(false);
    expect(other.requests.some((path) => HERE.test(path))).toBe(true);
    const first = await shown(usual.hand);
    expect(apart(await shown(other.hand), first)).toBeLessThan(TOLERANCE);
    // A scale that is printed only when its range is chosen.
    for (const { hand } of [usual, other]) await hand.press('range:3');
    const after = await shown(usual.hand);
    expect(apart(after, first)).toBeGreaterThan(TOLERANCE);
    expect(apart(await shown(other.hand), after)).toBeLessThan(TOLERANCE);
    await usual.close();
    await other.close();
  });

  it('fit the window that was wanted last, however often it changes while they are painted', async () => {
    const { page, hand, close, complaints } = await asItComes();
    for (const width of [1300, 900, 1200, 1024]) await page.setViewportSize({ width, height: 768 });
    await hand.wait(1500);
    const fits = await page.evaluate(() => {
      const host = document.querySelector('.bench-picture') as HTMLElement & { places(): { x: number }[] };
      const canvas = host.querySelector('canvas')!;
      return (
        Math.abs(canvas.getBoundingClientRect().width - host.clientWidth) < 2 &&
        host.places().every(({ x }) => x < host.clientWidth)
      );
    });
    expect(fits).toBe(true);
    expect(await hand.within()).toContain('lead:lamp.1:handle');
    expect(complaints).toEqual([]);
    await close();
  });

  it.each([
    { width: 1440, height: 900 },
    { width: 1024, height: 768 },
    { width: 390, height: 844 },
  ])('are painted while the card is read, in the size they will have, $width px wide', async (viewport) => {
    const { page, context, close } = await openApp({ viewport });
    await context.addInitScript(() => {
      const asked: string[][] = [];
      Object.assign(globalThis, { asked });
      const post = Worker.prototype.postMessage;
      Worker.prototype.postMessage = function (this: Worker, message: unknown, ...rest: []) {
        const { orders = [] } = message as { readonly orders?: readonly { readonly name: string }[] };
        asked.push(orders.map(({ name }) => name));
        return post.call(this, message, ...rest);
      };
    });
    const rooms = () =>
      page.evaluate(
        () =>
          (globalThis as unknown as { readonly asked: string[][] }).asked
            .flat()
            .filter((name) => name === 'room').length,
      );
    await page.reload();
    await page.locator('a[href="#/job/q-91d2"]').first().click();
    await expect.poll(rooms).toBe(1);
    const hand = await fromCard(page);
    expect(await hand.within()).toContain('lead:lamp.1:handle');
    expect(await rooms()).toBe(1);
    await close();
  });
});
