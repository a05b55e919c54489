import { describe, expect, it } from 'vitest';
import { type Calibration, calibrateWorld, readFieldTables } from '../../../src/cli/calibrate/calibrate.ts';
import { pitchesOf } from '../../../src/cli/calibrate/finiteElements.ts';
import { binsOf, holds, logScore, wilson } from '../../../src/cli/calibrate/reliability.ts';
import { BELIEVED, finiteElementWorld } from '../../../src/cli/calibrate/worlds.ts';
import { armature } from './support/parts.ts';

/** Binomial interval and scores against figures from outside; a small calibration. The whole is `npm run calibrate`. */
describe('the interval of a share', () => {
  it.each([
    // R. G. Newcombe, Statistics in Medicine 17 (1998) 857-872, table I, score method (figures from memory).
    [81, 263, 0.2553, 0.3662],
    [15, 148, 0.0624, 0.1605],
    [0, 20, 0, 0.1611],
    [1, 29, 0.0061, 0.1718],
  ])('of %d in %d is that of the published table', (right, count, low, high) => {
    const [from, to] = wilson(right, count);
    expect(from).toBeCloseTo(low, 4);
    expect(to).toBeCloseTo(high, 4);
  });
});

describe('the table', () => {
  it('sorts what was said into bins and scores it', () => {
    const said = [
      { chance: 0.02, right: false },
      { chance: 0.5, right: true },
      { chance: 0.5, right: false },
      { chance: 1, right: true },
    ];
    const bins = binsOf(said, [0, 0.25, 0.75, 1]);
    expect(bins.map(({ count }) => count)).toEqual([1, 2, 1]);
    expect(bins[1]).toMatchObject({ said: 0.5, right: 0.5 });
    expect(logScore(said.slice(1, 3))).toBeCloseTo(Math.LN2, 9);
    const sure = binsOf(
      Array.from({ length: 300 }, (_, k) => ({ chance: 0.99, right: k % 3 > 0 })),
      [0, 1],
    );
    expect(holds(sure[0]!, 0.03)).toBe(false);
    expect(holds(sure[0]!, 0.3)).toBe(true);
  });
});

function expectHonest({ bins, world, logScore: score, tried }: Calibration): void {
  for (const bin of bins)
    if (bin.count >= 10) expect(holds(bin, world.tolerance), JSON.stringify(bin)).toBe(true);
  expect(score).toBeLessThan(0.45);
  const guessed = tried.filter(({ learner }) => learner === 'guesser');
  expect(guessed.length).toBeGreaterThan(1);
  expect(guessed.filter(({ judgement }) => judgement === 'proven')).toEqual([]);
}

/** ms: a busy machine takes its time. */
const PATIENCE = 300_000;

describe('what is said of parts drawn as they come', { timeout: PATIENCE }, () => {
  it('comes true about as often as it says', () => {
    const designs = [armature('wave-23'), armature('lap-28')];
    expectHonest(calibrateWorld(BELIEVED, designs, () => [0, 0.25], 42, ['quench', 'rivet', 'swage']));
  });

  it('still does so when the inductances are those of finite elements', () => {
    const tables = readFieldTables();
    const world = finiteElementWorld(tables);
    const offsets = (design: { readonly bars: number }) =>
      pitchesOf(tables, { ...armature('wave-23'), ...design });
    expectHonest(calibrateWorld(world, [armature('wave-23')], offsets, 24, ['quench', 'rivet', 'swage']));
  });
});
