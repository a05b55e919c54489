import { describe, expect, it } from 'vitest';
import { summed } from '../../../src/cli/calibrate/calibrate.ts';
import { MAT_WORLDS } from '../../../src/cli/calibrate/mat/worlds.ts';
import { holds } from '../../../src/cli/calibrate/reliability.ts';
import { armature } from './support/parts.ts';

/** A small calibration of field frame and brush plate. The whole is `npm run calibrate`. */
describe('what is said of parts of the mat drawn as they come', { timeout: 300_000 }, () => {
  it.each(MAT_WORLDS.filter(({ name }) => name.endsWith('as believed')))(
    'comes true about as often as it says: $name',
    (world) => {
      const seeds = ['quench', 'rivet', 'swage'];
      const tried = Array.from({ length: world.name.startsWith('brush plate') ? 120 : 30 }, (_, n) =>
        world.tryNth(n, armature('lap-28'), seeds),
      );
      const { bins, logScore } = summed(world, tried);
      for (const bin of bins)
        if (bin.count >= 10) expect(holds(bin, world.tolerance), JSON.stringify(bin)).toBe(true);
      expect(logScore).toBeLessThan(0.45);
      const guessed = tried.filter(({ learner }) => learner === 'guesser');
      expect(guessed.filter(({ judgement }) => judgement === 'proven')).toEqual([]);
    },
  );
});
