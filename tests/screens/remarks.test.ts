import { describe, expect, it } from 'vitest';
import type { Breach } from '../../src/bench/port.ts';
import { strokeAt } from '../../src/bench/scale.ts';
import { nearestReading } from '../../src/screens/apprentice/bench/reading.ts';
import { remarksOf } from '../../src/screens/apprentice/bench/useBench.ts';
import { AT_REST } from './observed.ts';

const MIXED: Breach = { interlock: 'leadsMixed', sentence: 'The lead sets were mixed up.', critical: false };
const TIP: Breach = { interlock: 'liveTip', sentence: 'A tip was held.', critical: true };

describe('what the bench says', () => {
  it('gives the reason of a refusal in every mode', () => {
    for (const mode of ['guided', 'practice', 'assessed'] as const) {
      const said = remarksOf({ kind: 'refused', sentence: 'Both hands are full.', breaches: [] }, mode);
      expect(said).toEqual([{ kind: 'refused', sentence: 'Both hands are full.' }]);
    }
  });

  it('warns in practice and keeps quiet in assessed work', () => {
    const done = { kind: 'done', breaches: [MIXED] } as const;
    expect(remarksOf(done, 'practice')).toEqual([{ kind: 'warning', sentence: MIXED.sentence }]);
    expect(remarksOf(done, 'assessed')).toEqual([]);
  });

  it('leaves a critical breach to the dialog that stops the work', () => {
    expect(remarksOf({ kind: 'done', breaches: [TIP] }, 'practice')).toEqual([]);
  });
});

describe('reading the needle for a beginner', () => {
  const at = (ampere: number) =>
    nearestReading({
      ...AT_REST,
      rangeA: 30,
      needle: { deflection: Math.round(strokeAt(ampere, 30) * 400) / 400, pegged: false, atRest: true },
    });

  it.each([
    [12, 12],
    [12.5, 12.5],
    [12.9, 13],
    [20.15, 20],
  ])('%f A on the 30 A range is read as %f', (ampere, read) => expect(at(ampere)).toBe(read));

  it('is never further off than half a division from there on', () => {
    for (let ampere = 10; ampere <= 30; ampere += 0.13)
      expect(Math.abs(at(ampere) - ampere)).toBeLessThanOrEqual(0.5);
  });
});
