import { type Shown, shownBy, telling } from '../../assess/diagnosis/shown.ts';
import { truthOf } from '../../assess/diagnosis/truth.ts';
import { createEvidence, type EvidenceModel } from '../../assess/evidence/index.ts';
import { likenessOf } from '../../assess/evidence/likeness.ts';
import { nearestSuspect } from '../../assess/evidence/suspects.ts';
import type { TestKind } from '../../bench/paper.ts';
import { barPlace, type Place } from '../../bench/places.ts';
import { createArmatureSolver } from '../../engine/armatureBench.ts';
import { MAINS } from '../../engine/drive.ts';
import type { ArmatureDesign } from '../../engine/parts/armature.ts';
import { cluesAt } from '../../scenario/hidden/looks.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import type { Effects, Hardness, TestEffect } from '../../screens/instructor/desk.ts';

/** What every test of the armature shows of a job as it stands, and how hard its faults are to tell. */
export function effectsOf(scenario: Scenario, design: ArmatureDesign): Effects {
  const solver = createArmatureSolver(design);
  const mains = MAINS[scenario.public.mains];
  const { faults } = scenario.hidden.armature;
  const sound = shownBy(solver, [], mains);
  const shown = faults.length > 0 ? shownBy(solver, faults, mains) : sound;
  const foundBy = truthOf(scenario, design).map(({ fault, toldBy }) => ({ fault, tests: toldBy }));
  const dirty = faults.some(({ kind }) => kind === 'dirtyCommutator');
  return {
    tests: testEffects(scenario, design, shown, sound, dirty),
    foundBy,
    lookalikes: lookalikesOf(scenario, design),
    ...hardnessOf(foundBy, shown),
  };
}

const models = new Map<string, EvidenceModel>();

/** A model works its likenesses out once, in a second or two; it depends on nothing that is hidden. */
function modelFor({ public: shown }: Scenario, design: ArmatureDesign): EvidenceModel {
  const key = JSON.stringify([design, shown.mains, shown.tests]);
  const found = models.get(key);
  if (found !== undefined) return found;
  const fresh = createEvidence({ design, mains: shown.mains, tests: shown.tests });
  models.set(key, fresh);
  return fresh;
}

/** Winding faults beside the hidden ones that every allowed test done in full can hardly tell from them. */
function lookalikesOf(scenario: Scenario, design: ArmatureDesign): number {
  const { faults } = scenario.hidden.armature;
  if (faults.length === 0) return 0;
  const model = modelFor(scenario, design);
  const alike = faults.flatMap((fault) => {
    const suspect = nearestSuspect(model.suspects, fault);
    return suspect === null ? [] : likenessOf(model).alike(suspect);
  });
  return new Set(alike).size;
}

function testEffects(
  scenario: Scenario,
  design: ArmatureDesign,
  shown: Shown,
  sound: Shown,
  dirty: boolean,
): TestEffect[] {
  const told = telling(shown, sound);
  const { bars, slots } = design;
  const looks = lookPlaces(scenario, design);
  const pass = (test: 'spaced' | 'neighbour', unit: 'bars' | 'pairs'): TestEffect => ({
    ...{ test, unit, of: bars },
    // Dirt throws every reading about; the figures here are free of scatter and do not show it.
    seen: dirty || told.includes(test),
    places: dirty ? bars : outside(shown[test], shown.band[test]),
    strongest: furthest(shown[test]),
  });
  return [
    { test: 'look', seen: looks.seen > 0, places: looks.seen, of: looks.of, unit: 'places', strongest: null },
    pass('spaced', 'bars'),
    pass('neighbour', 'pairs'),
    {
      ...({ test: 'ground', unit: 'bars', strongest: null, of: bars } as const),
      seen: told.includes('ground'),
      places: shown.litBars.length,
    },
    {
      ...({ test: 'strip', unit: 'slots', strongest: null, of: slots } as const),
      seen: told.includes('strip'),
      places: shown.feltSlots,
    },
  ];
}

const outside = (deviations: readonly number[], band: number) =>
  deviations.filter((deviation) => Math.abs(deviation) > band).length;

const furthest = (deviations: readonly number[]) =>
  deviations.reduce((most, one) => (Math.abs(one) > Math.abs(most) ? one : most), 0);

function lookPlaces({ hidden }: Scenario, design: ArmatureDesign): { seen: number; of: number } {
  const round = Array.from({ length: design.bars }, (_, bar): Place[] => [barPlace(bar), `riser:${bar}`]);
  const places: readonly Place[] = [...round.flat(), 'shaft', 'core'];
  const seen = places.filter((place) => cluesAt(hidden, design, place).length > 0).length;
  return { seen, of: places.length };
}

/** Bands by which the plainest reading must stand out for a job to count as easy, and as medium. Ours. */
const PLAIN = { easy: 6, medium: 2.5 } as const;

/** Only the tests the card allows count, and the hardest fault decides. */
function hardnessOf(foundBy: Effects['foundBy'], shown: Shown): { hardness: Hardness; because: string } {
  if (foundBy.length === 0)
    return { hardness: 'sound', because: 'A sound part: every test must come out as it should.' };
  const lost = foundBy.filter(({ tests }) => tests.length === 0).length;
  if (lost > 0)
    return {
      hardness: 'beyond',
      because: `${lost} of ${foundBy.length} findings cannot be shown by any test the card allows.`,
    };
  const clearest = foundBy.map(({ tests }) => plainness(tests, shown));
  const least = Math.min(...clearest);
  const hardness = least >= PLAIN.easy ? 'easy' : least >= PLAIN.medium ? 'medium' : 'hard';
  return { hardness, because: reasonOf(least, foundBy.length) };
}

function reasonOf(least: number, findings: number): string {
  const which = findings > 1 ? 'The fault that shows least' : 'It';
  return Number.isFinite(least)
    ? `${which} stands out of its readings ${least.toFixed(1)} times as far as an eye can tell and clean contacts scatter.`
    : `${which} makes the lamp light, or can be felt or seen at many places.`;
}

/** How far the clearest allowed test carries a fault out of what cannot be told; a lamp that lights leaves no doubt. */
function plainness(tests: readonly TestKind[], shown: Shown): number {
  const of = (test: TestKind): number => {
    if (test === 'ground') return Infinity;
    if (test === 'spaced' || test === 'neighbour') return Math.abs(furthest(shown[test])) / shown.band[test];
    return PLAIN.medium;
  };
  return Math.max(...tests.map(of));
}
