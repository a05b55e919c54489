import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createPlayback, lastAct } from '../../src/records/playback.ts';
import { expertRun, library } from './support/expertRun.ts';

const attempt = expertRun('q-0a6d');

describe('an attempt played back', () => {
  it('shows at each act what the log says was seen then', () => {
    const playback = createPlayback(attempt, library);
    for (const entry of attempt.entries) {
      // Just before the act: acts of the instant asked for count as done.
      const seen = playback.at(entry.atMs - 1);
      expect(seen.supply).toBe(entry.before.supply);
      expect(seen.rotationDeg).toBeCloseTo(entry.before.rotationDeg, 1);
      expect(seen.lamp).toEqual(entry.before.lamp);
    }
  });

  it('shows the same at an instant however it was come to', () => {
    const onward = createPlayback(attempt, library);
    const instant = fc.integer({ min: -10, max: attempt.endMs + 10 });
    fc.assert(
      fc.property(instant, instant, (one, other) => {
        onward.at(one);
        expect(onward.at(other)).toEqual(createPlayback(attempt, library).at(other));
      }),
      { numRuns: 12 },
    );
  });

  it('answers at once near an act it has passed, with what stood right after it', () => {
    const playback = createPlayback(attempt, library);
    playback.at(attempt.endMs);
    const { atMs, n } = attempt.entries[100]!;
    expect(playback.near(atMs + 1)).toEqual(createPlayback(attempt, library).at(atMs));
    expect(lastAct(attempt.entries, atMs)).toBe(n);
    expect(lastAct(attempt.entries, atMs - 1)).toBe(n - 1);
    expect(lastAct(attempt.entries, -1)).toBe(-1);
    expect(playback.near(-1)).toEqual(createPlayback(attempt, library).at(0));
  });

  it('keeps within the attempt', () => {
    const playback = createPlayback(attempt, library);
    expect(playback.at(-1).atMs).toBe(0);
    expect(playback.at(Number.POSITIVE_INFINITY).atMs).toBe(attempt.endMs);
  });
});
