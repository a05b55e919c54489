import { afterAll, describe, expect, it } from 'vitest';
import type { Hand } from './support/hand.ts';
import { prove, putLampAway } from './support/lampHand.ts';
import { closeBrowser } from './support/page.ts';
import { decideAndHandIn, writeLine } from './support/paper.ts';
import { openBench } from './support/screens.ts';
import { Senses } from './support/senses.ts';

afterAll(closeBrowser);

const BARS = 23;

/** Rolls the wheel over the core by one notch: one bar. */
async function turnOneBar(hand: Hand): Promise<void> {
  const { x, y } = await hand.at('core:turn');
  await hand.page.mouse.move(x, y);
  await hand.page.mouse.wheel(0, 100);
}

/** Sets the ammeter on two neighbouring bars and leaves it in the stand. */
async function setAmmeter(hand: Hand, first: string, second: string): Promise<void> {
  await hand.drag('lead:ammeter.1:handle', first, 'end');
  await hand.drag('lead:ammeter.2:handle', second, 'end');
  await hand.drag('lead:ammeter.1:handle', 'stand');
  await hand.drag('lead:ammeter.2:handle', 'stand');
}

/** Readings by count from the chalk, the armature turned once round under the stand. */
async function neighbourPass(hand: Hand, senses: Senses): Promise<Map<number, number>> {
  const readings = new Map<number, number>();
  const count = () => senses.countUnder('Ammeter probe 1');
  for (let bar = 0; bar < BARS; bar++) {
    const before = await count();
    await turnOneBar(hand);
    await expect.poll(count).not.toBe(before);
    readings.set(await count(), await senses.needle());
  }
  return readings;
}

/** The bar both of whose pairs fall away, counted from the chalk. */
function droppedBar(readings: ReadonlyMap<number, number>): number {
  const usual = [...readings.values()].sort((a, b) => a - b)[Math.floor(readings.size / 2)] ?? 0;
  const low = [...readings].filter(([, reading]) => reading < usual / 3).map(([count]) => count);
  const before = low.find((count) => low.includes((count + 1) % BARS));
  if (low.length !== 2 || before === undefined)
    throw new Error(`Not one bar dropped out: ${[...readings].join(' ')}`);
  return (before + 1) % BARS;
}

async function groundTest(hand: Hand, senses: Senses, bars: readonly string[]): Promise<string[]> {
  await hand.press('selector:low');
  await prove(hand, senses);
  await hand.drag('lead:lamp.1:handle', 'shaft');
  const seen: string[] = [];
  for (const bar of bars) {
    await hand.drag('lead:lamp.2:handle', bar, 'end');
    await hand.wait(600);
    seen.push(await senses.words());
  }
  await prove(hand, senses);
  await putLampAway(hand);
  return seen;
}

describe('an unsoldered riser, found with the mouse', () => {
  it('is taken from the board to the debrief, and the right verdict earns its marks', async () => {
    const { page, hand, complaints, close } = await openBench('q-91d2');
    const senses = new Senses(page);
    await hand.press('lens');
    const risers = (await hand.within()).filter((id) => id.startsWith('riser:'));
    await hand.press(risers[1]!);
    await hand.press('lens');

    await hand.drag('mat', 'cradle');
    await senses.until(/armature lies in the cradle/);
    const bars = (await hand.within('side')).filter((id) => id.startsWith('bar:'));
    await hand.press('chalk');
    await hand.press(bars[3]!, 'side');
    await senses.until(/in the cradle(?!, no)/);

    await setAmmeter(hand, bars[3]!, bars[4]!);
    await hand.press('range:15');
    await hand.press('selector:high');
    const readings = await neighbourPass(hand, senses);
    expect(readings.size).toBe(BARS);
    const dropped = droppedBar(readings);
    await hand.press('selector:off');
    await writeLine(page, /neighbour/i, dropped, () => page.getByLabel('Needle at').fill('0'));
    await hand.drag('lead:ammeter.1:handle', 'holster:ammeter.1');
    await hand.drag('lead:ammeter.2:handle', 'holster:ammeter.2');

    const reachable = (await hand.within('end')).filter((id) => id.startsWith('bar:'));
    for (const words of await groundTest(hand, senses, reachable.slice(2, 5))) {
      expect(words).toMatch(/The lamp is dark/);
    }

    await hand.drag('strip', 'strip-at:180');
    await hand.press('selector:high');
    await hand.wait(500);
    expect(await senses.words()).toMatch(/[Ss]trip .*(still|no pull|nothing)/);
    await hand.press('selector:off');

    await decideAndHandIn(page, {
      condition: /riser/i,
      where: /^at one/,
      count: dropped,
      next: /resolder/i,
      because: 'Both pairs at that bar fell away on HIGH; the strip was still and the lamp dark.',
    });
    const truth = page.getByRole('region', { name: /What it was/ });
    expect(await truth.textContent()).toMatch(/riser/i);
    const row = page.getByRole('row', { name: /^(Condition|What is wrong)/i }).first();
    expect(await row.textContent()).toMatch(/(\d+(?:\.\d+)?) of \1/);
    expect(complaints).toEqual([]);
    await close();
  }, 600_000);
});
