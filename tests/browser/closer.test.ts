import { afterAll, describe, expect, it } from 'vitest';
import { Fingers } from './support/fingers.ts';
import type { Hand } from './support/hand.ts';
import { keptActs } from './support/kept.ts';
import { closeBrowser, openApp } from './support/page.ts';
import { openBench, toBench } from './support/screens.ts';
import { Senses } from './support/senses.ts';

afterAll(closeBrowser);

const PITCH_BARS = ['bar:3', 'bar:4'] as const;

/** Distance between two neighbouring bars as shown, px. */
async function pitch(hand: Hand): Promise<number> {
  const [a, b] = await Promise.all(PITCH_BARS.map((bar) => hand.at(bar, 'end')));
  return Math.hypot(a!.x - b!.x, a!.y - b!.y);
}

async function settledActs(hand: Hand): Promise<number> {
  await hand.wait(250);
  return (await keptActs(hand.page)).length;
}

describe('looking closer', () => {
  it('by wheel, key and button changes nothing but the eye, and work goes on as seen', async () => {
    const { page, hand, complaints, close } = await openBench('q-91d2');
    await hand.drag('mat', 'cradle');
    const whole = await pitch(hand);
    const acts = await settledActs(hand);

    const { x, y } = await hand.at('stand');
    await page.mouse.move(x, y);
    for (let notch = 0; notch < 4; notch++) await page.mouse.wheel(0, -120);
    await expect.poll(() => pitch(hand)).toBeGreaterThan(whole * 1.5);
    await page.getByRole('button', { name: 'Whole bench' }).click();
    await expect.poll(() => pitch(hand)).toBeCloseTo(whole, 3);

    await page.locator('.bench-picture').focus();
    await page.keyboard.press('z');
    await expect.poll(() => pitch(hand)).toBeGreaterThan(whole * 1.5);
    expect(await settledActs(hand)).toBe(acts);

    const senses = new Senses(page);
    await page.keyboard.press('1');
    await page.keyboard.press('ArrowDown');
    const before = await senses.until(/Ammeter probe 1 on/);
    const side = (await hand.within('side')).filter((id) => id.startsWith('bar:'));
    await hand.drag('lead:ammeter.1:handle', side.at(-3)!, 'side');
    await expect.poll(() => senses.words()).not.toBe(before);
    const worked = await settledActs(hand);
    expect(worked).toBeGreaterThan(acts);
    await page.keyboard.press('z');
    await expect.poll(() => pitch(hand)).toBeCloseTo(whole, 3);
    expect(await settledActs(hand)).toBe(worked);
    expect(await senses.words()).toMatch(/Ammeter probe 1 on/);
    expect(complaints).toEqual([]);
    await close();
  });

  it('by two fingers, which neither turn the armature nor leave anything in the log', async () => {
    const { page, close } = await openApp({ viewport: { width: 1024, height: 768 }, hasTouch: true });
    const hand = await toBench(page, 'q-91d2');
    const fingers = await Fingers.of(page);
    await fingers.drag(hand, 'mat', 'cradle');
    await new Senses(page).until(/armature lies in the cradle/);
    const whole = await pitch(hand);
    const acts = await settledActs(hand);
    const { x, y } = await hand.at('core:turn');
    await fingers.press(1, x - 20, y);
    await fingers.press(2, x + 20, y);
    await fingers.move({ 1: { x: x - 60, y: y - 10 }, 2: { x: x + 60, y: y + 10 } });
    await fingers.lift(1);
    await fingers.lift(2);
    await expect.poll(() => pitch(hand)).toBeGreaterThan(whole * 1.5);
    expect(await settledActs(hand)).toBe(acts);
    await close();
  });
});
