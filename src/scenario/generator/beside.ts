import type { PartKind } from '../../bench/action.ts';
import { ARMATURE_TESTS, type TestKind } from '../../bench/paper.ts';
import { seeded } from '../../engine/math/random.ts';
import type { ArmatureDesign } from '../../engine/parts/armature.ts';
import { FOUR_HOLDERS } from '../../engine/parts/brushPlate.ts';
import { JOB_FRAMES } from '../../engine/parts/fieldFrameDesigns.ts';
import { limitsOf } from '../public/limits.ts';
import type { ScenarioHidden, ScenarioPublic } from '../scenario.ts';
import { frameFaultsOf, tellableOnFrame } from './frameFaults.ts';
import { matCard } from './matCards.ts';
import { plateFaultsOf } from './plateFaults.ts';
import { benchFamilies, benchFaultOf, wearFamilies, wearOf } from './surroundings.ts';
import { type Chance, type Difficulty, PLATE_FAMILIES, pick, type Wish } from './wish.ts';

/** Everything beside the armature. */
export interface Beside {
  readonly card: ScenarioPublic['card'] | null;
  readonly parts: Pick<ScenarioPublic, 'fieldFrame' | 'brushPlate'>;
  readonly tests: readonly TestKind[];
  readonly hidden: Pick<ScenarioHidden, 'fieldFrame' | 'brushPlate' | 'bench' | 'wear'>;
}

export function besideArmature(
  wish: Wish,
  about: readonly PartKind[],
  { design, difficulty }: { readonly design: ArmatureDesign; readonly difficulty: Difficulty },
): Beside {
  const chance = seeded(`beside ${ASKED.map((key) => wish[key] ?? '').join(' ')} ${about.join(' ')}`);
  const frame = about.includes('fieldFrame') ? drawFrame(wish, chance, difficulty) : null;
  const plate = about.includes('brushPlate') ? drawPlate(wish, chance, difficulty) : null;
  const measured = wish.curedHere === true || wish.wear !== undefined;
  return {
    card: about.join() === 'armature' && !measured ? null : matCard(about, measured, chance),
    parts: {
      ...(frame === null ? {} : { fieldFrame: frame.id }),
      ...(plate === null ? {} : { brushPlate: FOUR_HOLDERS.id }),
    },
    tests: [
      'look',
      ...(about.includes('armature') ? ARMATURE_TESTS.filter((test) => test !== 'look') : []),
      ...(frame === null ? [] : (['fieldContinuity', 'fieldInsulation'] as const)),
      ...(plate === null ? [] : (['plateInsulation', 'plateEarthed'] as const)),
      ...(frame?.family === 'leak' || plate?.family === 'leak' ? (['megohm'] as const) : []),
      ...(needsDrop(frame) ? (['millivolt'] as const) : []),
      ...(measured ? (['gauges'] as const) : []),
    ],
    hidden: {
      ...(frame === null ? {} : { fieldFrame: { faults: frame.faults } }),
      ...(plate === null ? {} : { brushPlate: { faults: plate.faults } }),
      ...benchSide(wish, about, chance),
      ...wearSide(wish, about, chance, design),
    },
  };
}

/** What of a wish these draws depend on, in an order of its own: a wish is the same however it is written. */
const ASKED = [
  ...(['seed', 'part', 'family', 'frame', 'frameFamily', 'plateFamily'] as const),
  ...(['bench', 'wear', 'curedHere', 'difficulty', 'mains'] as const),
];

type FrameDrawn = ReturnType<typeof drawFrame>;

function drawFrame(wish: Wish, chance: Chance, difficulty: Difficulty) {
  const id = wish.frame ?? pick(chance, [...JOB_FRAMES.keys()].sort());
  const frame = JOB_FRAMES.get(id);
  if (frame === undefined) throw new RangeError(`No field frame ${id} at this bench.`);
  const families = tellableOnFrame(frame);
  const family = wish.frameFamily ?? pick(chance, families);
  if (!families.includes(family))
    throw new RangeError(`The tests of this bench cannot tell "${family}" on frame ${id}.`);
  return { id, family, faults: frameFaultsOf(family, chance, frame, difficulty) };
}

/** Shorted turns, and a joint that still lights the lamp, show in the drop alone. */
function needsDrop(frame: FrameDrawn | null): boolean {
  return (
    frame?.faults.some(
      (fault) => fault.kind === 'shortedTurns' || (fault.kind === 'brushJoint' && fault.ohm !== 'open'),
    ) ?? false
  );
}

function drawPlate(wish: Wish, chance: Chance, difficulty: Difficulty) {
  const family = wish.plateFamily ?? pick(chance, PLATE_FAMILIES);
  return { family, faults: plateFaultsOf(family, chance, difficulty) };
}

function benchSide(
  { bench }: Wish,
  about: readonly PartKind[],
  chance: Chance,
): Pick<ScenarioHidden, 'bench'> {
  if (bench === undefined) return {};
  if (!benchFamilies(about).includes(bench))
    throw new RangeError(`Work on ${about.join(' and ')} does not come upon "${bench}".`);
  return { bench: { faults: [benchFaultOf(bench, chance)] } };
}

function wearSide(
  { wear }: Wish,
  about: readonly PartKind[],
  chance: Chance,
  design: ArmatureDesign,
): Pick<ScenarioHidden, 'wear'> {
  if (wear === undefined) return {};
  if (!wearFamilies(about).includes(wear))
    throw new RangeError(`Nothing of ${about.join(' and ')} shows "${wear}".`);
  return { wear: wearOf(wear, chance, about, limitsOf({}, design)) };
}
