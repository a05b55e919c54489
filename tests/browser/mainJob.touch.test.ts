import { afterAll, describe, expect, it } from 'vitest';
import { below, Fingers } from './support/fingers.ts';
import type { Hand } from './support/hand.ts';
import { closeBrowser, openApp } from './support/page.ts';
import { decideAndHandIn } from './support/paper.ts';
import { toBench } from './support/screens.ts';
import { Senses } from './support/senses.ts';

afterAll(closeBrowser);

/** Both lamp probes taken at the same time, one under each finger, and put where they belong. */
async function bothProbes(hand: Hand, fingers: Fingers, first: string, second: string): Promise<void> {
  const from = await Promise.all([hand.at('lead:lamp.1:handle'), hand.at('lead:lamp.2:handle')]);
  await fingers.press(1, from[0].x, from[0].y);
  await fingers.press(2, from[1].x, from[1].y);
  await fingers.move({
    1: { x: from[0].x - 12, y: from[0].y - 14 },
    2: { x: from[1].x + 4, y: from[1].y - 18 },
  });
  await fingers.move({ 1: below(await hand.at(first)), 2: below(await hand.at(second, 'end')) });
  await fingers.lift(1);
  await fingers.lift(2);
}

/** Tips together: the lamp must light. */
async function prove(hand: Hand, fingers: Fingers, senses: Senses): Promise<void> {
  await fingers.carry(hand, 'lead:lamp.1:handle', 'tip:lamp.2');
  await senses.until(/The lamp (?!is dark)/);
}

/** A bar that can be reached in the end view as the armature lies now. */
async function barInReach(hand: Hand): Promise<string> {
  return (await hand.within('end')).filter((id) => id.startsWith('bar:'))[3]!;
}

describe('a grounded armature, found with the fingers', () => {
  it('is taken from the board to the debrief on a tablet, both probes at once', async () => {
    const { page, complaints, close } = await openApp({
      viewport: { width: 1024, height: 768 },
      hasTouch: true,
      isMobile: true,
    });
    const hand = await toBench(page, 'q-e3b9');
    const senses = new Senses(page);
    const fingers = await Fingers.of(page);
    await fingers.drag(hand, 'mat', 'cradle');
    await senses.until(/armature lies in the cradle/);
    const low = await hand.at('selector:low');
    await fingers.tap(low.x, low.y);
    await senses.until(/Selector at LOW/);

    const bar = await barInReach(hand);
    await bothProbes(hand, fingers, 'shaft', bar);
    await senses.until(/Lamp probe 2 on .*(segment|bar)/);
    expect(await senses.words()).toMatch(/Lamp probe 1 on the shaft/);
    await prove(hand, fingers, senses);
    await fingers.carry(hand, 'lead:lamp.1:handle', 'shaft');
    const lit = await senses.until(/Lamp probe 1 on the shaft.*The lamp (?!is dark)/s);
    expect(lit).toMatch(/Lamp probe 2 on .*(segment|bar)/);

    // Nobody lays a hand on iron that a live tip is on: both come off before the armature is turned down its front.
    for (const lead of ['lamp.1', 'lamp.2'])
      await fingers.carry(hand, `lead:${lead}:handle`, `holster:${lead}`);
    const core = await hand.at('core:turn');
    await fingers.press(1, core.x - 60, core.y - 20);
    await fingers.move({ 1: { x: core.x - 60, y: core.y + 70 } }, 10);
    await fingers.lift(1);
    const other = await barInReach(hand);
    expect(other).not.toBe(bar);
    await bothProbes(hand, fingers, 'shaft', other);
    await senses.until(/Lamp probe 1 on the shaft.*Lamp probe 2 on .*The lamp (?!is dark)/s);
    await prove(hand, fingers, senses);
    await fingers.carry(hand, 'lead:lamp.1:handle', 'holster:lamp.1');
    await fingers.carry(hand, 'lead:lamp.2:handle', 'holster:lamp.2');
    const off = await hand.at('selector:off');
    await fingers.tap(off.x, off.y);
    await senses.until(/Selector at OFF/);

    await decideAndHandIn(page, {
      condition: /ground|earth/i,
      next: /specialist/i,
      because: 'The lamp lit from shaft to two bars, between two proofs.',
    });
    expect(await page.getByRole('region', { name: /What it was/ }).textContent()).toMatch(/ground|earth/i);
    const row = page.getByRole('row', { name: /^(Condition|What is wrong)/i }).first();
    expect(await row.textContent()).toMatch(/(\d+(?:\.\d+)?) of \1/);
    expect(complaints).toEqual([]);
    await close();
  }, 180_000);
});
