import type { ArmatureDesign } from '../../engine/parts/armature.ts';
import type { ArmatureFault } from '../../engine/parts/armatureFault.ts';
import { coilPlaces } from '../../engine/parts/winding.ts';
import {
  type ByDifficulty,
  type Chance,
  DIFFICULTIES,
  type Difficulty,
  drawn,
  FAMILIES,
  type Family,
  figure,
  pick,
} from './wish.ts';

/**
 * Severities that the tests of the bench can show, chosen from what they show (figures of the invented bench). A coil
 * of one heavy turn needs a hard bridge before the strip feels it; a coil of many thin turns shows a soft one.
 */
const BRIDGE_OHM: Readonly<Record<'heavy' | 'fine', ByDifficulty>> = {
  heavy: {
    easy: { least: 0.2e-3, most: 0.5e-3 },
    medium: { least: 0.5e-3, most: 1.2e-3 },
    hard: { least: 1.2e-3, most: 2.4e-3 },
  },
  fine: {
    easy: { least: 0.5e-3, most: 5e-3 },
    medium: { least: 5e-3, most: 18e-3 },
    hard: { least: 18e-3, most: 40e-3 },
  },
};
const JOINT_OHM: Readonly<Record<'heavy' | 'fine', ByDifficulty>> = {
  heavy: {
    easy: { least: 0.05, most: 1 },
    medium: { least: 8e-3, most: 40e-3 },
    hard: { least: 2.5e-3, most: 7e-3 },
  },
  fine: {
    easy: { least: 0.3, most: 5 },
    medium: { least: 40e-3, most: 200e-3 },
    hard: { least: 10e-3, most: 30e-3 },
  },
};
/** A lamp lights through all of these. */
export const GROUND_OHM: ByDifficulty = {
  easy: { least: 0.2, most: 3 },
  medium: { least: 3, most: 80 },
  hard: { least: 80, most: 800 },
};

const gauge = (design: ArmatureDesign) => (design.turns === 1 ? 'heavy' : 'fine');
const anyBar = (chance: Chance, design: ArmatureDesign) => Math.floor(chance() * design.bars);

type Make = (chance: Chance, design: ArmatureDesign, difficulty: Difficulty) => ArmatureFault;

const openCoil: Make = (chance, design) => ({ kind: 'openCoil', coil: anyBar(chance, design) });

/** The joint to the bar is the common case; ends off the bar are for those who know it. */
const joint: Make = (chance, design, difficulty) => {
  const bar = anyBar(chance, design);
  // An equaliser holds a bar whose coils have come off: what is left to read points elsewhere.
  const plain = difficulty === 'easy' || design.equalised;
  const form = plain ? 'bar' : pick(chance, ['bar', 'bar', 'oneEnd', 'bothEnds'] as const);
  if (form !== 'bar') return { kind: 'riserJoint', bar, form, ohm: 'open' };
  const open = difficulty === 'easy' && chance() < 0.5;
  return {
    kind: 'riserJoint',
    bar,
    form,
    ohm: open ? 'open' : drawn(chance, JOINT_OHM[gauge(design)][difficulty]),
  };
};

const bridge: Make = (chance, design, difficulty) => ({
  kind: 'bridgedBars',
  bar: anyBar(chance, design),
  ohm: drawn(chance, BRIDGE_OHM[gauge(design)][difficulty]),
  by: difficulty === 'hard' ? pick(chance, ['copper', 'carbon'] as const) : 'copper',
});

/** Two coils touching where they lie above one another in a slot; above a dummy coil lies nothing to touch. */
function coilShort(chance: Chance, design: ArmatureDesign, ohm: number): ArmatureFault {
  const places = coilPlaces(design);
  const touching = places.flatMap(({ topSlot }, topCoil) =>
    places.flatMap(({ bottomSlot }, bottomCoil) => (bottomSlot === topSlot ? [{ topCoil, bottomCoil }] : [])),
  );
  return { kind: 'coilShort', ...pick(chance, touching), ohm };
}

const short: Make = (chance, design, difficulty) => {
  const { turns } = design;
  if (difficulty === 'medium') return coilShort(chance, design, figure(chance, 0.7e-3, 2e-3));
  const some =
    turns === 1
      ? 1
      : difficulty === 'easy'
        ? pick(
            chance,
            [5, 6].filter((n) => n <= turns),
          )
        : 3;
  const ohm = turns === 1 ? drawn(chance, BRIDGE_OHM.heavy[difficulty]) : figure(chance, 0.5e-3, 1.5e-3);
  return { kind: 'turnShort', coil: anyBar(chance, design), turns: Math.min(some, turns), ohm };
};

const ground: Make = (chance, design, difficulty) => {
  const ohm = drawn(chance, GROUND_OHM[difficulty]);
  if (chance() < 0.5) return { kind: 'groundedBar', bar: anyBar(chance, design), ohm };
  return {
    kind: 'groundedCoil',
    coil: anyBar(chance, design),
    fraction: pick(chance, [0.25, 0.5, 0.75]),
    ohm,
  };
};

/** Breaks down under the lamp, or stays dark and is beyond the tests of this bench. */
const leak: Make = (chance, _design, difficulty) => ({
  kind: 'weakInsulation',
  ohm: figure(chance, 60e3, 400e3),
  breakdownV: difficulty === 'hard' ? null : pick(chance, [80, 100, 120]),
});

const MAKE: Readonly<Record<Exclude<Family, 'sound' | 'two'>, Make>> = {
  open: openCoil,
  joint,
  bridge,
  short,
  ground,
  reversed: (chance, design) => ({ kind: 'reversedCoil', coil: anyBar(chance, design) }),
  dirty: () => ({ kind: 'dirtyCommutator' }),
  leak,
};

/** Pairs of families whose faults the tests keep apart: the lamp tells a ground whatever the winding does. */
const PAIRS = [
  ['ground', 'joint'],
  ['ground', 'bridge'],
  ['ground', 'open'],
  ['ground', 'dirty'],
  ['joint', 'bridge'],
] as const;

/** Bars from one fault to the other, the shorter way round, that keep their signs apart. */
const APART = 4;

const placeOf = (fault: ArmatureFault): number | null =>
  'bar' in fault ? fault.bar : fault.kind === 'openCoil' ? fault.coil : null;

/** On a wave winding a fault shows again one pole pair further round, so the other must keep clear of that too. */
function clearOf(a: number | null, b: number | null, design: ArmatureDesign): boolean {
  if (a === null || b === null) return true;
  const period = design.winding === 'wave' ? design.bars / (design.poles / 2) : design.bars;
  const apart = Math.abs(a - b) % period;
  return Math.min(apart, period - apart) >= APART;
}

function two(chance: Chance, design: ArmatureDesign, difficulty: Difficulty): ArmatureFault[] {
  const [first, second] = pick(chance, PAIRS);
  // A bridge throws its neighbours' readings about: beside one, only a joint that is plainly open can be told.
  const plain: Difficulty = first === 'joint' ? 'easy' : difficulty;
  let one = MAKE[first](chance, design, plain);
  if (one.kind === 'riserJoint' && first === 'joint') one = { ...one, ohm: 'open' };
  for (;;) {
    const other = MAKE[second](chance, design, plain);
    if (first === 'ground' || clearOf(placeOf(one), placeOf(other), design)) return [one, other];
  }
}

/** On an equalised winding the strip tells nothing, so only what the readings tell apart is asked for. */
const EQUALISED: readonly Family[] = ['sound', 'open', 'joint', 'bridge', 'ground', 'dirty', 'leak'];

/** Families whose faults the tests of this bench tell apart on a part. */
export function tellable(design: ArmatureDesign): readonly Family[] {
  if (design.equalised) return EQUALISED;
  // The readings of a forced winding wander when it is sound: a coil the wrong way round drowns in that.
  return design.dummyPlace === undefined ? FAMILIES : FAMILIES.filter((family) => family !== 'reversed');
}

/** Equalisers carry round a weak fault so well that its readings hardly stand out. */
export function difficulties(design: ArmatureDesign): readonly Difficulty[] {
  return design.equalised ? ['easy', 'medium'] : DIFFICULTIES;
}

/** Faults of one family at one difficulty, somewhere on the part. */
export function faultsOf(
  family: Family,
  chance: Chance,
  design: ArmatureDesign,
  difficulty: Difficulty,
): ArmatureFault[] {
  if (family === 'sound') return [];
  return family === 'two' ? two(chance, design, difficulty) : [MAKE[family](chance, design, difficulty)];
}
