import { ARMATURE_TESTS } from '../bench/paper.ts';
import { MAINS, type MainsId } from '../engine/drive.ts';
import { seeded } from '../engine/math/random.ts';
import type { ArmatureDesign } from '../engine/parts/armature.ts';
import { cardFor } from './generator/cards.ts';
import { difficulties, faultsOf, tellable } from './generator/faults.ts';
import { type Chance, pick, type Wish } from './generator/wish.ts';
import { type PartLibrary, SCENARIO_FORMAT, SCENARIO_VERSION, type Scenario } from './scenario.ts';

export { difficulties, tellable } from './generator/faults.ts';
export { DIFFICULTIES, type Difficulty, FAMILIES, type Family, type Wish } from './generator/wish.ts';

/** An id that says nothing: four hexadecimal digits. */
function opaqueId(chance: Chance): string {
  const digits = Math.floor(chance() * 0x10000).toString(16);
  return `q-${digits.padStart(4, '0')}`;
}

function designFor(wish: Wish, chance: Chance, library: PartLibrary): ArmatureDesign {
  const id = wish.part ?? pick(chance, [...library.keys()].sort());
  const design = library.get(id);
  if (design === undefined) throw new RangeError(`No part type ${id} in the library.`);
  return design;
}

/**
 * Makes a job. The same wish gives the same job on every machine, and every job can be solved from observations alone
 * as far as its tests can tell.
 */
export function generateScenario(wish: Wish, library: PartLibrary): Scenario {
  const { seed, part = '', family: asked = '', difficulty: level = '', mains: supply = '' } = wish;
  const chance = seeded(`job ${seed} ${part} ${asked} ${level} ${supply}`);
  const design = designFor(wish, chance, library);
  const families = tellable(design);
  if (wish.family !== undefined && !families.includes(wish.family))
    throw new RangeError(`The tests of this bench cannot tell "${wish.family}" on part ${design.id}.`);
  const family = wish.family ?? pick(chance, families);
  const difficulty = wish.difficulty ?? pick(chance, difficulties(design));
  const mains = wish.mains ?? pick(chance, Object.keys(MAINS) as MainsId[]);
  return {
    format: SCENARIO_FORMAT,
    version: SCENARIO_VERSION,
    public: {
      id: opaqueId(chance),
      workshop: 'Quarry Road Training Workshop',
      card: cardFor(family, chance, design),
      mains,
      parts: ['armature'],
      armature: design.id,
      tests: [...ARMATURE_TESTS],
      mode: wish.mode ?? 'practice',
      minutes: wish.mode === 'assessed' ? 45 : null,
    },
    hidden: {
      armature: { faults: faultsOf(family, chance, design, difficulty) },
      startRotationDeg: Math.floor(chance() * 360),
      seed: Math.floor(chance() * 0x100000000),
      supplyReference: chance() < 0.5 ? 'floating' : 'earthed',
    },
  };
}
