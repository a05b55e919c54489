import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { PART_KINDS, type PartKind } from '../../src/bench/action.ts';
import {
  CONDITIONS,
  CONDITIONS_OF,
  type Condition,
  DISPOSITIONS,
  TEST_KINDS,
} from '../../src/bench/paper.ts';
import { barFromCount, countFromChalk, spacing, stepsUp } from '../../src/screens/shared/count.ts';
import { clock, minutesWords } from '../../src/screens/shared/time.ts';
import {
  conditionMeaning,
  conditionWords,
  dispositionWords,
  foundPlaceWords,
  spoken,
  sureWords,
  testWords,
  type Vocabulary,
} from '../../src/screens/shared/words.ts';

function said(condition: Condition, part: PartKind, vocabulary: Vocabulary): string {
  return `${conditionWords(condition, part, vocabulary)}: ${conditionMeaning(condition, part, vocabulary)}`;
}

describe('the vocabulary setting', () => {
  it('has words for every condition, disposition and test, all different', () => {
    for (const vocabulary of ['british', 'american'] as const) {
      const tests = TEST_KINDS.map((one) => testWords(one, vocabulary));
      for (const part of PART_KINDS) {
        const conditions = CONDITIONS.map((one) => conditionWords(one, part, vocabulary));
        expect(new Set(conditions).size).toBe(CONDITIONS.length);
      }
      expect(new Set(tests).size).toBe(TEST_KINDS.length);
    }
    expect(new Set(DISPOSITIONS.map(dispositionWords)).size).toBe(DISPOSITIONS.length);
  });

  // The pairs are those of the trade's two usages (common practice, no source).
  it('says earth and segment in British, ground and bar in American, and never mixes them', () => {
    expect(conditionWords('grounded', 'armature', 'british')).toBe('Earthed');
    expect(conditionWords('grounded', 'armature', 'american')).toBe('Grounded');
    expect(testWords('neighbour', 'british')).toContain('segments');
    expect(testWords('neighbour', 'american')).toContain('bars');
    for (const part of PART_KINDS)
      for (const condition of CONDITIONS_OF[part])
        expect(said(condition, part, 'british')).not.toMatch(/\b(bar|bars|ground|grounded)\b/i);
  });

  it('speaks of bars, mica, core and shaft on an armature only', () => {
    for (const part of ['fieldFrame', 'brushPlate'] as const)
      for (const condition of CONDITIONS_OF[part])
        expect(said(condition, part, 'american')).not.toMatch(/\b(bars?|mica|core|shaft|commutator)\b/i);
  });

  it('changes whole words only', () => {
    expect(spoken('Bars on the background; a bar barely grounded to ground', 'british')).toBe(
      'Segments on the background; a segment barely earthed to earth',
    );
    expect(spoken('Dynamo and dynamos', 'american')).toBe('Generator and dynamos');
  });
});

describe('places counted from the chalk', () => {
  it('come back to the bar they were counted from', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 60 }), fc.nat(), fc.nat(), (bars, one, other) => {
        const [bar, chalked] = [one % bars, other % bars];
        const count = countFromChalk(bar, chalked, bars)!;
        expect(count).toBeGreaterThanOrEqual(0);
        expect(count).toBeLessThan(bars);
        expect(barFromCount(count, chalked, bars)).toBe(bar);
        expect(stepsUp(chalked, bar, bars)).toBe(count);
        expect(spacing(bar, chalked, bars)).toBe(spacing(chalked, bar, bars));
        expect(spacing(bar, chalked, bars)).toBeLessThanOrEqual(bars / 2);
      }),
    );
  });

  it('are nothing without chalk', () => expect(countFromChalk(4, null, 23)).toBeNull());

  it('are told as the learner counts them, round the end too', () => {
    expect(foundPlaceWords({ kind: 'bar', count: 0 }, 23, 'american')).toBe('the chalked bar');
    expect(foundPlaceWords({ kind: 'pair', count: 22 }, 23, 'british')).toBe(
      'between segment 22 on from the chalk and the chalked segment',
    );
    expect(foundPlaceWords({ kind: 'somewhere' }, 23, 'british')).toBe('no place named');
  });
});

it('says how sure in words that never fall as the figure rises', () => {
  const order = [
    'a guess',
    'more doubt than belief',
    'about even',
    'fairly sure',
    'sure',
    'as good as certain',
  ];
  const ranks = Array.from({ length: 101 }, (_, percent) => order.indexOf(sureWords(percent / 100)));
  expect(ranks.every((rank) => rank >= 0)).toBe(true);
  expect([...ranks].sort((a, b) => a - b)).toEqual(ranks);
});

it('tells simulated time', () => {
  expect([clock(0), clock(61_500), clock(-5), clock(3_600_000)]).toEqual(['0:00', '1:01', '0:00', '60:00']);
  expect([minutesWords(10_000), minutesWords(60_000), minutesWords(1_260_000)]).toEqual([
    'under a minute',
    '1 minute',
    '21 minutes',
  ]);
});
