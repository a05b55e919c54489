import type { FieldFrameDesign, FieldFrameFault } from '../../engine/parts/fieldFrame.ts';
import { GROUND_OHM } from './faults.ts';
import {
  type ByDifficulty,
  type Chance,
  type Difficulty,
  drawn,
  FRAME_FAMILIES,
  type FrameFamily,
  figure,
  pick,
} from './wish.ts';

/** Faults of a field frame that the tests of the bench can show, graded by what they show (figures of the invented bench). */

/** Ends of the two branches, as designs name them. */
const BRUSH_ENDS = ['end:1', 'end:2'];

/** Coils that lie on the way to a brush: a shunt coil whose other end is loose is on no lamp's way. */
function coilsInBranches(frame: FieldFrameDesign): number[] {
  const ends = new Set(BRUSH_ENDS);
  for (let nth = 0; nth < frame.coils.length; nth += 1) {
    for (const { from, to } of frame.coils) if (ends.has(to)) ends.add(from);
  }
  return frame.coils.flatMap(({ to }, coil) => (ends.has(to) ? [coil] : []));
}

/** Each branch ends at its own brush and has as many coils as the other, so that their drops can be compared. */
function hasLikeBranches({ coils }: FieldFrameDesign): boolean {
  return coils.length === 4 && coils.filter(({ from }) => from === 'field:terminal').length === 2;
}

/** Share of a coil's turns that is lost: a small one hardly shows in the drop. */
const SHORTED_SHARE: ByDifficulty = {
  easy: { least: 0.5, most: 0.8 },
  medium: { least: 0.3, most: 0.5 },
  hard: { least: 0.2, most: 0.3 },
};
/** A joint that still lights the lamp: the drop shows it, more than twice that of a good branch. */
const HALF_JOINT_OHM = { least: 8e-3, most: 40e-3 };

type Make = (chance: Chance, frame: FieldFrameDesign, difficulty: Difficulty) => FieldFrameFault;

const open: Make = (chance, frame) => ({ kind: 'openCoil', coil: pick(chance, coilsInBranches(frame)) });

const joint: Make = (chance, frame, difficulty) => {
  const brush = pick(chance, [1, 2] as const);
  const half = difficulty === 'hard' && hasLikeBranches(frame);
  return { kind: 'brushJoint', brush, ohm: half ? drawn(chance, HALF_JOINT_OHM) : 'open' };
};

const ground: Make = (chance, frame, difficulty) => ({
  kind: 'groundedCoil',
  coil: pick(chance, coilsInBranches(frame)),
  fraction: pick(chance, [0.25, 0.5, 0.75]),
  ohm: drawn(chance, GROUND_OHM[difficulty]),
});

/** Breaks down under the lamp, or leaves it dark for the insulation tester to find. */
const leak: Make = (chance, frame, difficulty) => ({
  kind: 'weakInsulation',
  coil: pick(chance, coilsInBranches(frame)),
  ohm: figure(chance, 60e3, 400e3),
  breakdownV: difficulty === 'easy' ? pick(chance, [80, 100, 120]) : null,
});

const short: Make = (chance, frame, difficulty) => ({
  kind: 'shortedTurns',
  coil: pick(chance, coilsInBranches(frame)),
  share: drawn(chance, SHORTED_SHARE[difficulty]),
  ohm: figure(chance, 1e-5, 3e-5),
});

const MAKE: Readonly<Record<Exclude<FrameFamily, 'sound' | 'two'>, Make>> = {
  open,
  joint,
  ground,
  leak,
  short,
};

/** Families whose faults the tests of this bench tell apart on a frame. */
export function tellableOnFrame(frame: FieldFrameDesign): readonly FrameFamily[] {
  return hasLikeBranches(frame) ? FRAME_FAMILIES : FRAME_FAMILIES.filter((family) => family !== 'short');
}

/** Faults of one family at one difficulty; two are a break and a ground, which the lamp tells apart. */
export function frameFaultsOf(
  family: FrameFamily,
  chance: Chance,
  frame: FieldFrameDesign,
  difficulty: Difficulty,
): FieldFrameFault[] {
  if (family === 'sound') return [];
  if (family !== 'two') return [MAKE[family](chance, frame, difficulty)];
  const one = open(chance, frame, difficulty);
  for (;;) {
    const other = ground(chance, frame, difficulty);
    if (!('coil' in one) || !('coil' in other) || one.coil !== other.coil) return [one, other];
  }
}
