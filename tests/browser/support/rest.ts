import type { Page } from 'playwright-core';

export interface Used {
  /** Pictures of the bench drawn. */
  readonly pictures: number;
  /** Frames that any script on the page asked for, drawn or not. */
  readonly frames: number;
}

/** What the page of a bench uses while something goes on. */
export async function usedWhile(page: Page, what: () => Promise<void>): Promise<Used> {
  const before = await drawn(page);
  const counting = await page.evaluateHandle(() => {
    const count = { frames: 0, real: globalThis.requestAnimationFrame };
    globalThis.requestAnimationFrame = (call) => {
      count.frames += 1;
      return count.real.call(globalThis, call);
    };
    return count;
  });
  await what();
  const frames = await counting.evaluate((count) => {
    globalThis.requestAnimationFrame = count.real;
    return count.frames;
  });
  return { pictures: (await drawn(page)) - before, frames };
}

/** Pictures drawn so far. */
export function drawn(page: Page): Promise<number> {
  return page.evaluate(() => {
    const host = document.querySelector('.bench-picture') as Element & { drawing(): { frames: number } };
    return host.drawing().frames;
  });
}
