import { afterAll, describe, expect, it } from 'vitest';
import type { Hand } from './support/hand.ts';
import { closeBrowser } from './support/page.ts';
import { openBench } from './support/screens.ts';

afterAll(closeBrowser);

function drawn(hand: Hand): Promise<number> {
  return hand.page.evaluate(() => {
    const host = document.querySelector('.bench-picture') as Element & { drawing(): { frames: number } };
    return host.drawing().frames;
  });
}

/** Pictures drawn while nobody does anything. */
async function drawnAtRest(hand: Hand): Promise<number> {
  await hand.wait(1500);
  const before = await drawn(hand);
  await hand.wait(1500);
  return (await drawn(hand)) - before;
}

describe('a bench at rest', () => {
  it('draws nothing, off or on, and draws again at the first act', async () => {
    const { hand, close } = await openBench('q-91d2');
    await hand.drag('mat', 'cradle');
    expect(await drawnAtRest(hand)).toBe(0);
    const before = await drawn(hand);
    await hand.press('selector:high');
    await expect.poll(() => drawn(hand)).toBeGreaterThan(before);
    expect(await drawnAtRest(hand)).toBe(0);
    await close();
  });
});
