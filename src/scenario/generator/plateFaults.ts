import type { BrushPlateFault, InsulatedHolder, PlateHolder } from '../../engine/parts/brushPlate.ts';
import { GROUND_OHM } from './faults.ts';
import { type Chance, type Difficulty, drawn, figure, type PlateFamily, pick } from './wish.ts';

/** Faults of a brush plate that the tests of the bench can show, graded by what they show (figures of the invented bench). */

const INSULATED: readonly InsulatedHolder[] = ['plate:insulated1', 'plate:insulated2'];
const EARTHED: readonly PlateHolder[] = ['plate:earthed1', 'plate:earthed2'];

type Make = (chance: Chance, difficulty: Difficulty) => BrushPlateFault;

const dirt: Make = (chance, difficulty) => ({
  kind: 'dirt',
  holder: pick(chance, INSULATED),
  ohm: drawn(chance, GROUND_OHM[difficulty]),
});

/** An easy rivet shows its fault left alone; a hard one passes until the holder is leant on. */
const rivet: Make = (chance, difficulty) => {
  const insulated = chance() < 0.5;
  const alone = difficulty === 'easy' || (difficulty === 'medium' && chance() < 0.5);
  return {
    kind: 'looseRivet',
    holder: pick(chance, insulated ? INSULATED : EARTHED),
    makes: alone === insulated ? 'released' : 'pressed',
    ohm: figure(chance, 0.01, 1),
  };
};

const breakdown: Make = (chance, difficulty) => ({
  kind: 'insulatorDown',
  holder: pick(chance, INSULATED),
  ohm: drawn(chance, GROUND_OHM[difficulty]),
  breakdownV: null,
});

const pigtail: Make = (chance) => ({ kind: 'brokenPigtail', holder: pick(chance, EARTHED) });

/** Dark under the lamp: the insulation tester finds it. */
const leak: Make = (chance) => ({
  kind: 'dirt',
  holder: pick(chance, INSULATED),
  ohm: figure(chance, 60e3, 400e3),
});

const MAKE: Readonly<Record<Exclude<PlateFamily, 'sound' | 'two'>, Make>> = {
  dirt,
  rivet,
  breakdown,
  pigtail,
  leak,
};

/** Faults of one family at one difficulty; two are a torn pigtail and what lies across an insulated holder. */
export function plateFaultsOf(
  family: PlateFamily,
  chance: Chance,
  difficulty: Difficulty,
): BrushPlateFault[] {
  if (family === 'sound') return [];
  if (family === 'two') return [dirt(chance, difficulty), pigtail(chance, difficulty)];
  return [MAKE[family](chance, difficulty)];
}
