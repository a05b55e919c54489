import { describe, expect, it } from 'vitest';
import { MAINS, type MainsId } from '../../src/engine/drive.ts';
import { JOB_FRAMES } from '../../src/engine/parts/fieldFrameDesigns.ts';
import {
  BENCH_FAMILIES,
  DIFFICULTIES,
  difficulties,
  generateScenario,
  PLATE_FAMILIES,
  tellable,
  tellableOnFrame,
  type Wish,
} from '../../src/scenario/generate.ts';
import { library } from './attempts.ts';
import { notWon } from './won.ts';

const MAINS_IDS = Object.keys(MAINS) as MainsId[];

/** Of the mark for a proven verdict: right, and four fifths likely by the expert's own readings. */
const LEAST_PROVEN = 0.4;

describe('the expert solves jobs the generator makes', () => {
  // A seed the generator was not made with. Families and difficulties take turns over the parts: each part meets every
  // second family, and each family every second part.
  const seed = 'unseen 1';
  const wishes = [...library.values()].flatMap((design, nth) =>
    tellable(design).flatMap((family, at) => {
      if ((nth + at) % 2 === 1) return [];
      const levels = difficulties(design);
      // One mains for each part: what its faults would show is worked out once.
      const mains = MAINS_IDS[nth % MAINS_IDS.length]!;
      const difficulty = levels[((nth + at) / 2) % levels.length]!;
      return [{ seed, part: design.id, family, difficulty, mains }];
    }),
  );
  it.each(wishes)('$part, $family, $difficulty', (wish) => {
    expect(notWon(generateScenario(wish, library), LEAST_PROVEN)).toEqual([]);
  });
});

describe('the expert solves whole jobs, frames and plates the generator makes', () => {
  const seed = 'unseen 2';
  const mains = '230V50Hz';
  const frames = [...JOB_FRAMES.values()].flatMap((frame, nth) =>
    tellableOnFrame(frame).map((frameFamily, at): Wish => {
      const difficulty = DIFFICULTIES[(nth + at) % DIFFICULTIES.length]!;
      return { seed, about: ['fieldFrame'], frame: frame.id, frameFamily, difficulty };
    }),
  );
  const plates = PLATE_FAMILIES.flatMap((plateFamily, at) =>
    [false, true].map((curedHere): Wish => {
      const difficulty = DIFFICULTIES[(at + (curedHere ? 1 : 0)) % DIFFICULTIES.length]!;
      return { seed, about: ['brushPlate'], plateFamily, curedHere, difficulty };
    }),
  );
  const benches = BENCH_FAMILIES.map(
    (bench): Wish => ({ seed, bench, part: 'wave-23', mains, difficulty: 'easy' }),
  );
  const worn: readonly Wish[] = [
    { seed, wear: 'shallow', part: 'wave-23', mains, family: 'sound' },
    { seed, wear: 'runsOut', part: 'wave-23', mains, family: 'sound' },
    { seed, wear: 'thin', part: 'wave-23', mains, family: 'sound' },
    { seed, wear: 'shortBrush', about: ['fieldFrame', 'brushPlate'], frame: 'field-two-branches' },
  ];
  const cured = (['joint', 'bridge', 'dirty'] as const).map(
    (family): Wish => ({ seed, family, part: 'lap-28', mains, curedHere: true, difficulty: 'easy' }),
  );
  const about = ['armature', 'fieldFrame', 'brushPlate'] as const;
  const whole: Wish = { seed, about, part: 'wave-23', mains, difficulty: 'easy' };
  const wishes = [...frames, ...plates, ...benches, ...worn, ...cured, whole];
  it.each(wishes.map((wish) => [JSON.stringify(wish), wish] as const))('%s', (_words, wish) => {
    expect(notWon(generateScenario(wish, library), LEAST_PROVEN)).toEqual([]);
  });
});
