import { afterAll, describe, expect, it } from 'vitest';
import type { Hand } from './support/hand.ts';
import { type Lamp, lampBetween, prove, putLampAway } from './support/lampHand.ts';
import { openOwnJob } from './support/ownJob.ts';
import { closeBrowser } from './support/page.ts';
import { decideAndHandIn, printed, writeDown } from './support/paper.ts';
import { Senses } from './support/senses.ts';
import { Tray } from './support/tray.ts';

afterAll(closeBrowser);

/** The lamp from one place to both field brushes, each written down as it was seen. */
async function testBoth(hand: Hand, senses: Senses, from: string): Promise<readonly Lamp[]> {
  const shown: Lamp[] = [];
  for (const brush of ['field:brush1', 'field:brush2']) {
    const lamp = await lampBetween(hand, senses, from, brush);
    await writeDown(hand.page, () => hand.page.getByLabel(lamp, { exact: true }).check());
    shown.push(lamp);
  }
  return shown;
}

describe('a field frame with an open branch', () => {
  it('is taken from the board to the printed record with the mouse', async () => {
    const { page, hand, complaints, close } = await openOwnJob({
      parts: ['fieldFrame'],
      tests: ['fieldContinuity', 'fieldInsulation'],
      fieldFaults: [{ kind: 'openCoil', coil: 3 }],
      mode: 'assessed',
    });
    const senses = new Senses(page);
    await new Tray(page).prepare();
    await hand.drag('mat', 'cradle');
    await senses.until(/armature lies in the cradle/);
    await hand.press('part:fieldFrame');
    await senses.until(/field frame lies in front/);
    await hand.press('brushes');
    await senses.until(/brushes kept apart/);

    await hand.press('selector:low');
    await prove(hand, senses);
    expect(await testBoth(hand, senses, 'field:terminal')).toEqual(['lit', 'dark']);
    await hand.drag('lead:lamp.2:handle', 'holster:lamp.2');
    expect(await testBoth(hand, senses, 'field:case')).toEqual(['dark', 'dark']);
    await prove(hand, senses);
    await putLampAway(hand);

    await decideAndHandIn(page, {
      condition: /open coil/i,
      where: /branch to field brush 2/,
      next: /specialist winder/i,
      because:
        'Terminal to field brush 2 stays dark between two proofs, brushes apart; the other branch lights.',
    });
    const heading = page.getByRole('heading', { level: 1 });
    expect(await heading.evaluate((h1) => h1 === document.activeElement)).toBe(true);
    const truth = page.getByRole('region', { name: /What it was/ });
    expect(await truth.textContent()).toMatch(/Coil 4 of the frame in the branch to field brush 2 is open/);
    const proof = page.getByRole('region', { name: 'What your readings prove' });
    await proof.getByText('What was still possible').waitFor();
    expect(await proof.textContent()).toMatch(/Open coil or broken joint.*1 of 2/);
    await proof.getByText('What each reading ruled out, as a table').click();
    expect(
      await proof.getByRole('row', { name: /motor terminal and field brush 2: dark/ }).textContent(),
    ).toMatch(/the branch to field brush 2/);
    const { words } = await printed(page);
    expect(words).toMatch(
      /Field continuity, terminal to each brush\s+Field brush 1\s+lit\s+Field brush 2\s+dark/,
    );
    expect(words).toMatch(/Open coil, the branch that ends at field brush 2/);
    expect(words).toMatch(/assessed/);
    expect(complaints).toEqual([]);
    await close();
  }, 300_000);
});
