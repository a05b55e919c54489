import { afterAll, describe, expect, it } from 'vitest';
import type { Hand } from './support/hand.ts';
import { closeBrowser } from './support/page.ts';
import { drawn, type Used, usedWhile } from './support/rest.ts';
import { openBench } from './support/screens.ts';

afterAll(closeBrowser);

/** Nobody does anything. */
async function usedAtRest(hand: Hand): Promise<Used> {
  await hand.wait(1500);
  return usedWhile(hand.page, () => hand.wait(1500));
}

/** Soon; words and heat still change now and then, each with a frame of its own. */
const comesToRest = (hand: Hand) =>
  expect.poll(() => usedAtRest(hand), { timeout: 20_000 }).toEqual({ pictures: 0, frames: 0 });

describe('a bench at rest', () => {
  it('draws nothing, off or on, and draws again at the first act', async () => {
    const { hand, close } = await openBench('q-91d2');
    await hand.drag('mat', 'cradle');
    await comesToRest(hand);
    const before = await drawn(hand.page);
    await hand.press('selector:high');
    await expect.poll(() => drawn(hand.page)).toBeGreaterThan(before);
    await comesToRest(hand);
    await close();
  });
});
