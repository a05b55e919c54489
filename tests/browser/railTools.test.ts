import { afterAll, describe, expect, it } from 'vitest';
import { openOwnJob } from './support/ownJob.ts';
import { closeBrowser } from './support/page.ts';
import { decideAndHandIn, printed, writeDown } from './support/paper.ts';
import { Senses } from './support/senses.ts';
import { Tray } from './support/tray.ts';

afterAll(closeBrowser);

/** The last figure of a kind that the tray shows, as it would be read off and written down. */
function figure(words: string, fits: RegExp): string {
  const found = fits.exec(words)?.[1];
  if (found === undefined) throw new Error(`No figure in: ${words}`);
  return found;
}

describe('a field frame that the lamp finds nothing wrong with', () => {
  it('is measured with insulation tester, millivolt drop and gauge, and judged by the figures', async () => {
    const { page, hand, complaints, close } = await openOwnJob({
      parts: ['fieldFrame'],
      tests: ['megohm', 'millivolt', 'gauges'],
      fieldFaults: [{ kind: 'shortedTurns', coil: 2, share: 0.6, ohm: 1e-5 }],
      wear: { brushLengthsMm: [14, 6, 14, 14] },
    });
    const senses = new Senses(page);
    const tray = new Tray(page);
    await tray.prepare();
    await hand.press('part:fieldFrame');
    await senses.until(/field frame lies in front/);
    await hand.press('brushes');

    // The tools hang on the picture's rail too, and a press on one opens its drawer.
    await hand.press('tool:tester');
    await tray.settled();
    await tray.clip('Tester clip 1', /^the case$/);
    await tray.clip('Tester clip 2', /^field brush 1$/);
    await hand.press('tester:button');
    await senses.until(/button down, shows/);
    await page.waitForTimeout(5000);
    const megohms = figure(await tray.says(), /shows (?:beyond )?([\d.]+) megohms/);
    expect(Number(megohms)).toBeGreaterThan(1);
    await writeDown(page, () => page.getByLabel('Display shows').fill(megohms));
    await hand.press('tester:button');
    await tray.press('Discharge');
    await tray.press('Take off: Tester clip 1');
    await tray.press('Take off: Tester clip 2');

    expect(await hand.within()).not.toContain('tester:button');
    await hand.press('tool:drop');
    await tray.settled();
    const drops: number[] = [];
    for (const brush of ['1', '2']) {
      await tray.choose(/^Feed$/, new RegExp(`motor terminal and field brush ${brush}`));
      await tray.press(/^Clamp$/);
      await tray.clip('Millivolt clip 1', /^the motor terminal$/);
      await tray.clip('Millivolt clip 2', new RegExp(`^field brush ${brush}$`));
      const shown = figure(await tray.says(), /A; ([\d.]+) mV/);
      drops.push(Number(shown));
      await writeDown(page, () => page.getByLabel('Drop', { exact: true }).fill(shown));
      await tray.press('Take off: Millivolt clip 1');
      await tray.press('Take off: Millivolt clip 2');
      await tray.press('Take the feed off');
    }
    expect(drops[1]).toBeLessThan(0.9 * drops[0]!);

    await tray.open('Gauges');
    await tray.press('Measure field brush 2');
    expect(await tray.says()).toMatch(/Field brush 2 measures 6 mm/);
    await writeDown(page, () => page.getByLabel('Gauge shows').fill('6'));

    await decideAndHandIn(page, {
      condition: /shorted coil/i,
      where: /branch to field brush 2/,
      next: /specialist winder/i,
      because: 'Under the same feed the branch to field brush 2 drops less than the other.',
    });
    const { words } = await printed(page);
    expect(words).toMatch(/Insulation tester\s+Field frame\s+[\d.]+ MΩ at 250 V/);
    expect(words).toMatch(/Millivolt drop\s+Field brush 1\s+[\d.]+ mV\s+Field brush 2\s+[\d.]+ mV/);
    expect(words).toMatch(/Gauges\s+Field brush 2\s+6 mm/);
    expect(words).toMatch(
      /60 % of the turns of coil 3 of the frame in the branch to field brush 2 are shorted/,
    );
    expect(words).toMatch(/Field brush 2 measures 6 mm, less than the 7.9 mm the card asks for/);
    expect(complaints).toEqual([]);
    await close();
  }, 300_000);
});
