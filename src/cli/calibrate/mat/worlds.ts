import { seeded } from '../../../engine/math/random.ts';
import type { ArmatureDesign } from '../../../engine/parts/armature.ts';
import { JOB_FRAMES } from '../../../engine/parts/fieldFrameDesigns.ts';
import type { Tried } from '../attempt.ts';
import { SEEDS } from '../calibrate.ts';
import { BELIEVED_TOLERANCE, type Described, OTHER_TOLERANCE } from '../worlds.ts';
import { tryMat } from './attempt.ts';
import { drawFrame, drawPlate, offRange, unlistedInFrame, unlistedOnPlate } from './part.ts';

/** Worlds of field frames and brush plates, as the engine believes them to be or in some way not. */

export interface MatWorld extends Described {
  tryNth(n: number, armature: ArmatureDesign, seeds?: readonly string[]): Tried;
}

type Strange = 'off the grid' | 'outside the set' | null;

const FRAMES = [...JOB_FRAMES.values()];

function frames(name: string, what: string, strange: Strange, scatter = 1): MatWorld {
  return {
    ...described(`field frame, ${name}`, what, strange, scatter),
    tryNth: (n, armature, seeds = SEEDS) => {
      const seed = `frame ${seeds[n % seeds.length]} ${n}`;
      const draw = seeded(`part ${seed}`);
      const frame = FRAMES[n % FRAMES.length]!;
      const drawn = drawFrame(frame, draw);
      const more = strange === 'outside the set' ? unlistedInFrame(frame, draw) : [];
      const faults = strange === 'off the grid' ? offRange(drawn, draw) : [...drawn, ...more];
      return tryMat({ frame, faults, scatter, armature }, seed);
    },
  };
}

function plates(name: string, what: string, strange: Strange, scatter = 1): MatWorld {
  return {
    ...described(`brush plate, ${name}`, what, strange, scatter),
    tryNth: (n, armature, seeds = SEEDS) => {
      const seed = `plate ${seeds[n % seeds.length]} ${n}`;
      const draw = seeded(`part ${seed}`);
      const drawn = drawPlate(draw);
      const more = strange === 'outside the set' ? unlistedOnPlate(draw) : [];
      const kept = drawn.filter(({ holder }) => more.every((other) => other.holder !== holder));
      const faults = strange === 'off the grid' ? offRange(drawn, draw) : [...kept, ...more];
      return tryMat({ frame: null, faults, scatter, armature }, seed);
    },
  };
}

function described(name: string, what: string, strange: Strange, scatter: number): Described {
  const believed = strange === null && scatter === 1;
  const tolerance = believed ? BELIEVED_TOLERANCE : OTHER_TOLERANCE;
  return { name, what, tolerance, byPriors: strange !== 'outside the set' };
}

const BELIEVED = 'parts by the priors, severities between those listed, readings as unsteady as believed';
const SCATTER = 'tester and millivoltmeter half as unsteady again as believed';
const OFF_GRID = 'severities up to twice as hard or soft as those listed';

export const MAT_WORLDS: readonly MatWorld[] = [
  frames('as believed', BELIEVED, null),
  frames('scatter × 1.5', SCATTER, null, 1.5),
  frames('off the grid', OFF_GRID, 'off the grid'),
  frames(
    'outside the set',
    'beside anything else two shorted coils, a short with a bad joint, both joints bad, or insulation that gives way',
    'outside the set',
  ),
  plates('as believed', BELIEVED, null),
  plates('scatter × 1.5', SCATTER, null, 1.5),
  plates('off the grid', OFF_GRID, 'off the grid'),
  plates(
    'outside the set',
    'beside anything else two loose rivets of one holder, or three things wrong with one',
    'outside the set',
  ),
];
