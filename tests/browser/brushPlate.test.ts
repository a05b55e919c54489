import { afterAll, describe, expect, it } from 'vitest';
import type { Hand } from './support/hand.ts';
import { type Lamp, lampBetween, prove, putLampAway, watchLamp } from './support/lampHand.ts';
import { openOwnJob } from './support/ownJob.ts';
import { closeBrowser } from './support/page.ts';
import { decideAndHandIn, printed, shownText, writeDown } from './support/paper.ts';
import { Senses } from './support/senses.ts';
import { Tray } from './support/tray.ts';

afterAll(closeBrowser);

const PLATE = 'plate:metal';

/** The lamp at one holder, left alone and then leaned on; written down as it was at its brightest. */
async function testHolder(hand: Hand, senses: Senses, holder: string): Promise<readonly [Lamp, Lamp]> {
  const alone = await lampBetween(hand, senses, PLATE, holder);
  await new Tray(hand.page).press('Lean on lamp probe 2');
  const leanedOn = await watchLamp(hand, senses, alone);
  const shown = [alone, leanedOn].includes('lit') ? 'lit' : 'dark';
  await writeDown(hand.page, () => hand.page.getByLabel(shown, { exact: true }).check());
  return [alone, leanedOn];
}

describe('a loose rivet at a brush holder', () => {
  it('is found by leaning, tightened, tested again, and stands on the printed record', async () => {
    const { page, hand, complaints, close } = await openOwnJob({
      parts: ['brushPlate'],
      tests: ['look', 'plateInsulation', 'plateEarthed'],
      plateFaults: [{ kind: 'looseRivet', holder: 'plate:insulated2', makes: 'pressed', ohm: 0.2 }],
      minutes: 40,
    });
    const senses = new Senses(page);
    const tray = new Tray(page);
    await tray.prepare();
    await hand.drag('mat', 'cradle');
    await senses.until(/armature lies in the cradle/);
    await hand.press('part:brushPlate');
    await senses.until(/brush plate lies in front/);
    await hand.press('lens');
    await hand.press('plate:insulated2');
    await senses.until(/Under the lens, insulated holder 2/);
    await writeDown(page, () => page.getByLabel('What you saw').fill('looked at insulated holder 2'));
    await hand.press('lens');

    await tray.open('Brush plate');
    await hand.press('selector:low');
    await prove(hand, senses);
    expect(await testHolder(hand, senses, 'plate:insulated1')).toEqual(['dark', 'dark']);
    expect(await testHolder(hand, senses, 'plate:insulated2')).toEqual(['dark', 'lit']);
    expect((await testHolder(hand, senses, 'plate:earthed1'))[0]).toBe('lit');
    expect((await testHolder(hand, senses, 'plate:earthed2'))[0]).toBe('lit');
    await prove(hand, senses);
    await putLampAway(hand);

    await tray.open('Remedies');
    await tray.press(/Tighten the brush plate’s rivets/);
    expect(await tray.says()).toMatch(/8 minutes/);
    await tray.open('Brush plate');
    await hand.press('selector:low');
    await prove(hand, senses);
    expect(await testHolder(hand, senses, 'plate:insulated2')).toEqual(['dark', 'dark']);
    await prove(hand, senses);
    await putLampAway(hand);

    await decideAndHandIn(page, {
      condition: /loose rivet/i,
      where: /insulated holder 2/,
      next: /service/i,
      because: 'Lit only when leaned on; tightened, tested again, dark.',
    });
    const truth = page.getByRole('region', { name: /What it was/ });
    expect(await truth.textContent()).toMatch(/loose rivet at insulated holder 2/i);
    const told = await shownText(page.getByRole('table', { name: /Beside a sound part/ }));
    expect(told).toMatch(/Insulated holder 2\s+lit, then dark\s+dark\s+.*lit when leaned on\s+dark/);
    const { words, pdf } = await printed(page);
    expect(words).toMatch(/Job record/);
    expect(words).toMatch(/8 of work by the book; 40 minutes were allowed/);
    expect(words).toMatch(/Tightened the brush plate’s rivets/);
    expect(words).toMatch(/Test sheet: what you wrote/);
    expect(words).toMatch(/does not qualify|not a\s+qualification/);
    expect(words).not.toMatch(/move by move/);
    expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
    expect(complaints).toEqual([]);
    await close();
  }, 300_000);
});
