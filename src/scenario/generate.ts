import { PART_KINDS } from '../bench/action.ts';
import { MAINS, type MainsId } from '../engine/drive.ts';
import { seeded } from '../engine/math/random.ts';
import type { ArmatureDesign } from '../engine/parts/armature.ts';
import { besideArmature } from './generator/beside.ts';
import { cardFor } from './generator/cards.ts';
import { difficulties, faultsOf, tellable } from './generator/faults.ts';
import { type Chance, type Difficulty, type Family, pick, type Wish } from './generator/wish.ts';
import { type PartLibrary, SCENARIO_FORMAT, SCENARIO_VERSION, type Scenario } from './scenario.ts';

export { difficulties, tellable } from './generator/faults.ts';
export { tellableOnFrame } from './generator/frameFaults.ts';
export { benchFamilies, wearFamilies } from './generator/surroundings.ts';
export {
  BENCH_FAMILIES,
  DIFFICULTIES,
  type Difficulty,
  FAMILIES,
  type Family,
  FRAME_FAMILIES,
  type FrameFamily,
  PLATE_FAMILIES,
  type PlateFamily,
  WEAR_FAMILIES,
  type Wish,
} from './generator/wish.ts';

/** An id that says nothing: four hexadecimal digits. */
function opaqueId(chance: Chance): string {
  const digits = Math.floor(chance() * 0x10000).toString(16);
  return `q-${digits.padStart(4, '0')}`;
}

function designFor(wish: Wish, chance: Chance, library: PartLibrary): ArmatureDesign {
  const id = wish.part ?? pick(chance, fitting(wish, library));
  const design = library.get(id);
  if (design === undefined) throw new RangeError(`No part type ${id} in the library.`);
  return design;
}

/** A four-pole frame or its brush plate takes a four-pole armature, even if only to lie in the cradle. */
function fitting(wish: Wish, library: PartLibrary): readonly string[] {
  const ids = [...library.keys()].sort();
  return isArmatureOnly(wish) ? ids : ids.filter((id) => library.get(id)!.poles === 4);
}

function isArmatureOnly({ about }: Wish): boolean {
  return about === undefined || about.join() === 'armature';
}

/** The armature's side of a job: drawn first, and the same whatever else is asked for. */
interface Drawn {
  readonly chance: Chance;
  readonly design: ArmatureDesign;
  readonly family: Family;
  readonly difficulty: Difficulty;
  readonly mains: MainsId;
}

function drawArmature(wish: Wish, library: PartLibrary): Drawn {
  const { seed, part = '', family: asked = '', difficulty: level = '', mains: supply = '' } = wish;
  const chance = seeded(`job ${seed} ${part} ${asked} ${level} ${supply}`);
  const design = designFor(wish, chance, library);
  const families = tellable(design);
  if (wish.family !== undefined && !families.includes(wish.family))
    throw new RangeError(`The tests of this bench cannot tell "${wish.family}" on part ${design.id}.`);
  const family = wish.family ?? pick(chance, families);
  const difficulty = wish.difficulty ?? pick(chance, difficulties(design));
  return {
    chance,
    design,
    family,
    difficulty,
    mains: wish.mains ?? pick(chance, Object.keys(MAINS) as MainsId[]),
  };
}

/**
 * Makes a job. The same wish gives the same job on every machine, and every job can be solved from observations alone
 * as far as its tests can tell.
 */
export function generateScenario(wish: Wish, library: PartLibrary): Scenario {
  const armature = drawArmature(wish, library);
  const { chance, design, family, difficulty, mains } = armature;
  const about = PART_KINDS.filter((part) => (wish.about ?? ['armature']).includes(part));
  const id = opaqueId(chance);
  const card = cardFor(family, chance, design);
  const faults = faultsOf(family, chance, design, difficulty);
  const rest = besideArmature(wish, about, armature);
  return {
    format: SCENARIO_FORMAT,
    version: SCENARIO_VERSION,
    public: {
      id,
      workshop: 'Quarry Road Training Workshop',
      card: rest.card ?? card,
      mains,
      parts: about,
      armature: design.id,
      ...rest.parts,
      tests: rest.tests,
      mode: wish.mode ?? 'practice',
      minutes: wish.mode === 'assessed' ? 30 + 15 * about.length : null,
    },
    hidden: {
      armature: { faults: about.includes('armature') ? faults : [] },
      ...rest.hidden,
      startRotationDeg: Math.floor(chance() * 360),
      seed: Math.floor(chance() * 0x100000000),
      supplyReference: chance() < 0.5 ? 'floating' : 'earthed',
    },
  };
}
