import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { agreement, kappaOf, kappaWords } from '../../src/assess/agreement.ts';

describe('Cohen’s kappa', () => {
  it('gives the widely published example of 50 proposals judged yes or no by two readers', () => {
    // references.md E08 (from memory; the arithmetic is repeated there): 20 both yes, 15 both no.
    const found = kappaOf([
      [20, 5],
      [10, 15],
    ]);
    expect(found.observed).toBeCloseTo(0.7, 12);
    expect(found.expected).toBeCloseTo(0.5, 12);
    expect(found.kappa).toBeCloseTo(0.4, 12);
  });

  it('tells two tables of equal observed agreement apart', () => {
    // references.md E09, from the same article.
    const one = kappaOf([
      [45, 15],
      [25, 15],
    ]);
    const two = kappaOf([
      [25, 35],
      [5, 35],
    ]);
    expect(one.observed).toBeCloseTo(two.observed!, 12);
    expect(one.kappa).toBeCloseTo(0.130435, 6);
    expect(two.kappa).toBeCloseTo(0.259259, 6);
  });

  it('gives the three-category example of Cohen 1960', () => {
    // Cohen 1960, Educ. Psychol. Meas. 20:37-46, table 1, as shares of 200 cases; values from memory.
    const found = kappaOf([
      [0.44, 0.07, 0.09],
      [0.05, 0.2, 0.05],
      [0.01, 0.03, 0.06],
    ]);
    expect(found.observed).toBeCloseTo(0.7, 12);
    expect(found.expected).toBeCloseTo(0.41, 12);
    expect(found.kappa).toBeCloseTo(0.492, 3);
  });

  it('builds the table from what two people said, in a fixed order', () => {
    const found = agreement(
      [
        ['competent', 'competent'],
        ['notYet', 'competent'],
        ['competent', 'competent'],
        ['notYet', 'notYet'],
      ],
      ['competent', 'notYet'],
    );
    expect(found.categories).toEqual(['competent', 'notYet']);
    expect(found.counts).toEqual([
      [2, 0],
      [1, 1],
    ]);
    // By hand: observed 3/4, expected (2·3 + 2·1)/16 = 1/2.
    expect(found.kappa).toBeCloseTo(0.5, 12);
  });

  it('says nothing where nothing can be said', () => {
    expect(agreement([])).toMatchObject({ judged: 0, observed: null, kappa: null });
    expect(agreement([['met', 'met']])).toMatchObject({ observed: 1, expected: 1, kappa: null });
  });

  it('is one for full agreement, never more, the same with the two exchanged or the categories renamed', () => {
    const said = fc.constantFrom('a', 'b', 'c');
    fc.assert(
      fc.property(fc.array(fc.tuple(said, said), { minLength: 1, maxLength: 40 }), (pairs) => {
        const { kappa } = agreement(pairs);
        const exchanged = agreement(pairs.map(([first, second]) => [second, first] as const));
        const renamed = agreement(
          pairs.map(([first, second]) => [`x${first}`, `x${second}`] as const),
          ['xc'],
        );
        const same = agreement(pairs.map(([first]) => [first, first] as const));
        expect(kappa ?? 0).toBeLessThanOrEqual(1);
        expect(kappa ?? 0).toBeGreaterThanOrEqual(-1);
        if (kappa !== null) {
          expect(exchanged.kappa).toBeCloseTo(kappa, 12);
          expect(renamed.kappa).toBeCloseTo(kappa, 12);
        }
        expect(same.kappa ?? 1).toBeCloseTo(1, 12);
      }),
    );
  });
});

describe('words for a kappa', () => {
  it('are those of Landis and Koch 1977 (references.md E10)', () => {
    expect([-0.1, 0, 0.2, 0.21, 0.4, 0.41, 0.61, 0.8, 0.81, 1].map(kappaWords)).toEqual([
      'less than chance',
      'slight',
      'slight',
      'fair',
      'fair',
      'moderate',
      'substantial',
      'substantial',
      'almost perfect',
      'almost perfect',
    ]);
  });
});
