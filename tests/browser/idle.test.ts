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

/** Pictures drawn while nobody does anything, and frames that any script on the page asks for. */
async function usedAtRest(hand: Hand): Promise<{ pictures: number; frames: number }> {
  await hand.wait(1500);
  const before = await drawn(hand);
  const framesAsked = await hand.page.evaluateHandle(() => {
    const asked = { frames: 0 };
    const real = globalThis.requestAnimationFrame;
    globalThis.requestAnimationFrame = (call) => {
      asked.frames += 1;
      return real(call);
    };
    return asked;
  });
  await hand.wait(1500);
  const { frames } = await framesAsked.jsonValue();
  return { pictures: (await drawn(hand)) - before, frames };
}

/** Soon; words and heat still change now and then, each with a frame of its own. */
const comesToRest = (hand: Hand) =>
  expect.poll(() => usedAtRest(hand), { timeout: 20_000 }).toEqual({ pictures: 0, frames: 0 });

describe('a bench at rest', () => {
  it('draws nothing, off or on, and draws again at the first act', async () => {
    const { hand, close } = await openBench('q-91d2');
    await hand.drag('mat', 'cradle');
    await comesToRest(hand);
    const before = await drawn(hand);
    await hand.press('selector:high');
    await expect.poll(() => drawn(hand)).toBeGreaterThan(before);
    await comesToRest(hand);
    await close();
  });
});
