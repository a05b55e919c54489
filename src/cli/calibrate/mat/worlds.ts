import { seeded } from '../../../engine/math/random.ts';
import type { ArmatureDesign } from '../../../engine/parts/armature.ts';
import type { BrushPlateFault } from '../../../engine/parts/brushPlate.ts';
import type { FieldFrameDesign, FieldFrameFault } from '../../../engine/parts/fieldFrame.ts';
import { JOB_FRAMES } from '../../../engine/parts/fieldFrameDesigns.ts';
import type { Tried } from '../attempt.ts';
import { SEEDS } from '../calibrate.ts';
import type { Draw } from '../part.ts';
import { BELIEVED_TOLERANCE, type Described, OTHER_TOLERANCE } from '../worlds.ts';
import { type MatTrial, tryMat } from './attempt.ts';
import {
  drawFrame,
  drawPlate,
  type More,
  offRange,
  severalInFrame,
  severalOnPlate,
  unlistedInFrame,
  unlistedOnPlate,
} from './part.ts';

/** Worlds of field frames and brush plates, as the engine believes them to be or in some way not. */

export interface MatWorld extends Described {
  tryNth(n: number, armature: ArmatureDesign, seeds?: readonly string[]): Tried;
}

type Strange = 'off the grid' | 'several at once' | 'outside the set' | null;

const FRAMES = [...JOB_FRAMES.values()];

type Drawn = Pick<MatTrial, 'frame' | 'faults' | 'restless'>;
type DrawNth = (n: number, draw: Draw, strange: Strange) => Drawn;

const DRAWN: Readonly<Record<'field frame' | 'brush plate', DrawNth>> = {
  'field frame': (n, draw, strange) => {
    const frame = FRAMES[n % FRAMES.length]!;
    const drawn = drawFrame(frame, draw);
    if (strange === 'off the grid') return { frame, faults: offRange(drawn, draw), restless: [] };
    const { faults, restless = [] } = moreInFrame(strange, frame, draw);
    return { frame, faults: [...drawn, ...faults], restless };
  },
  'brush plate': (_, draw, strange) => {
    const drawn = drawPlate(draw);
    if (strange === 'off the grid') return { frame: null, faults: offRange(drawn, draw), restless: [] };
    const { faults, restless = [] } = moreOnPlate(strange, draw);
    const kept = drawn.filter(({ holder }) =>
      [...faults, ...restless].every((other) => other.holder !== holder),
    );
    return { frame: null, faults: [...kept, ...faults], restless };
  },
};

function moreInFrame(strange: Strange, frame: FieldFrameDesign, draw: Draw): More<FieldFrameFault> {
  if (strange === 'several at once') return severalInFrame(frame, draw);
  return strange === 'outside the set' ? unlistedInFrame(frame, draw) : { faults: [] };
}

function moreOnPlate(strange: Strange, draw: Draw): More<BrushPlateFault> {
  if (strange === 'several at once') return severalOnPlate(draw);
  return strange === 'outside the set' ? unlistedOnPlate(draw) : { faults: [] };
}

function worldOf(
  part: keyof typeof DRAWN,
  name: string,
  what: string,
  strange: Strange,
  scatter = 1,
): MatWorld {
  return {
    ...described(`${part}, ${name}`, what, strange, scatter),
    tryNth: (n, armature, seeds = SEEDS) => {
      const seed = `${part.split(' ')[1]} ${seeds[n % seeds.length]} ${n}`;
      return tryMat({ ...DRAWN[part](n, seeded(`part ${seed}`), strange), scatter, armature }, seed);
    },
  };
}

/** The worlds of one part; @param several @param unlisted what else it has in the last two of them */
function worldsOf(part: keyof typeof DRAWN, several: string, unlisted: string): MatWorld[] {
  return [
    worldOf(part, 'as believed', BELIEVED, null),
    worldOf(part, 'scatter × 1.5', SCATTER, null, 1.5),
    worldOf(part, 'off the grid', OFF_GRID, 'off the grid'),
    worldOf(
      part,
      'several at once',
      `beside anything else ${several}: on the engine's lists, and rare to it; what no reading tells from something common it calls the common thing`,
      'several at once',
    ),
    worldOf(
      part,
      'outside the set',
      `beside anything else what is on no list: ${unlisted}`,
      'outside the set',
    ),
  ];
}

function described(name: string, what: string, strange: Strange, scatter: number): Described {
  const believed = strange === null && scatter === 1;
  const tolerance = believed ? BELIEVED_TOLERANCE : OTHER_TOLERANCE;
  return { name, what, tolerance, byPriors: strange === null || strange === 'off the grid' };
}

const BELIEVED = 'parts by the priors, severities between those listed, readings as unsteady as believed';
const SCATTER = 'tester and millivoltmeter half as unsteady again as believed';
const OFF_GRID = 'severities up to twice as hard or soft as those listed';

export const MAT_WORLDS: readonly MatWorld[] = [
  ...worldsOf(
    'field frame',
    'two shorted coils, a short with a bad joint, both joints bad, or insulation that gives way',
    'two shorts with a bad joint, a joint that comes and goes, or a leak that changes tenfold from reading to reading',
  ),
  ...worldsOf(
    'brush plate',
    'two loose rivets of one holder, or three things wrong with one',
    'a rivet that makes as it likes, one tarnished ten thousand times beyond those listed, or four things wrong with one holder',
  ),
];
