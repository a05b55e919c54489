import { type Shown, shownBy, telling } from '../../assess/diagnosis/shown.ts';
import { truthOfPart } from '../../assess/diagnosis/truth.ts';
import { createEvidence, type EvidenceModel } from '../../assess/evidence/index.ts';
import { likenessOf } from '../../assess/evidence/likeness.ts';
import { nearestSuspect } from '../../assess/evidence/suspects.ts';
import { firstCondition } from '../../attempt/condition.ts';
import type { PartKind } from '../../bench/action.ts';
import type { TestKind } from '../../bench/paper.ts';
import { barPlace, FIELD_PLACES, PLATE_PLACES, type Place } from '../../bench/places.ts';
import { createArmatureSolver } from '../../engine/armatureBench.ts';
import { MAINS } from '../../engine/drive.ts';
import type { ArmatureDesign } from '../../engine/parts/armature.ts';
import type { ArmatureFault } from '../../engine/parts/armatureFault.ts';
import { cluesAt } from '../../scenario/hidden/looks.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import type { Effects, Hardness, TestEffect } from '../../screens/instructor/desk.ts';
import { benchEffects } from './benchEffects.ts';
import { lineEffects } from './lineEffects.ts';

/** What every test of the job's parts shows as they lie, and how hard their faults are to tell. */
export function effectsOf(scenario: Scenario, design: ArmatureDesign): Effects {
  const solver = createArmatureSolver(design);
  const mains = MAINS[scenario.public.mains];
  const { faults } = scenario.hidden.armature;
  const sound = shownBy(solver, [], mains);
  const shown = faults.length > 0 ? shownBy(solver, faults, mains) : sound;
  const foundBy = findingsOf(scenario, design);
  const onGrowler = scenario.public.parts.includes('armature');
  return {
    tests: [lookEffect(scenario, design), ...(onGrowler ? growlerEffects(faults, design, shown, sound) : [])],
    lines: lineEffects(scenario, new Map([[design.id, design]])),
    bench: benchEffects(scenario, design),
    foundBy,
    lookalikes: lookalikesOf(scenario, design),
    ...hardnessOf(foundBy, shown),
  };
}

/** Each finding of each part by itself, with the tests of the card that show it. */
function findingsOf(scenario: Scenario, design: ArmatureDesign): Effects['foundBy'] {
  const condition = firstCondition(scenario.hidden, design.commutatorRadius);
  return scenario.public.parts.flatMap((part) =>
    truthOfPart(part, { scenario, design, condition }).map(
      ({ fault, toldBy }) => ({ part, fault, tests: toldBy }) as Effects['foundBy'][number],
    ),
  );
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

function lookEffect(scenario: Scenario, design: ArmatureDesign): TestEffect {
  const { seen, of } = lookPlaces(scenario, design);
  return { test: 'look', seen: seen > 0, places: seen, of, unit: 'places', strongest: null };
}

function growlerEffects(
  faults: readonly ArmatureFault[],
  { bars, slots }: ArmatureDesign,
  shown: Shown,
  sound: Shown,
): TestEffect[] {
  const told = telling(shown, sound);
  const dirty = faults.some(({ kind }) => kind === 'dirtyCommutator');
  const pass = (test: 'spaced' | 'neighbour', unit: 'bars' | 'pairs'): TestEffect => ({
    ...{ test, unit, of: bars },
    // Dirt throws every reading about; the figures here are free of scatter and do not show it.
    seen: dirty || told.includes(test),
    places: dirty ? bars : outside(shown[test], shown.band[test]),
    strongest: furthest(shown[test]),
  });
  return [
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

function lookPlaces(
  { hidden, public: { parts } }: Scenario,
  design: ArmatureDesign,
): { seen: number; of: number } {
  const round = Array.from({ length: design.bars }, (_, bar): Place[] => [barPlace(bar), `riser:${bar}`]);
  const all: Readonly<Record<PartKind, readonly Place[]>> = {
    armature: [...round.flat(), 'shaft', 'core'],
    fieldFrame: FIELD_PLACES,
    brushPlate: PLATE_PLACES,
  };
  const places = parts.flatMap((part) => all[part]);
  const seen = places.filter((place) => cluesAt(hidden, design, place).length > 0).length;
  return { seen, of: places.length };
}

/** Bands by which the plainest reading must stand out for a job to count as easy, and as medium. Ours. */
const PLAIN = { easy: 6, medium: 2.5 } as const;

/** Only the tests the card allows count, and the hardest fault decides. */
function hardnessOf(foundBy: Effects['foundBy'], shown: Shown): { hardness: Hardness; because: string } {
  if (foundBy.length === 0)
    return { hardness: 'sound', because: 'Nothing is the matter: every test must come out as it should.' };
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
    : `${which} shows plainly on the lamp, the insulation tester or a gauge.`;
}

/** Tests with two answers, or with a figure nobody takes for another. */
const PLAIN_TESTS: ReadonlySet<TestKind> = new Set([
  'ground',
  'fieldContinuity',
  'fieldInsulation',
  'plateInsulation',
  'plateEarthed',
  'megohm',
  'gauges',
]);

/** How far the clearest allowed test carries a fault out of what cannot be told; a lamp that lights leaves no doubt. */
function plainness(tests: readonly TestKind[], shown: Shown): number {
  const of = (test: TestKind): number => {
    if (PLAIN_TESTS.has(test)) return Infinity;
    if (test === 'spaced' || test === 'neighbour') return Math.abs(furthest(shown[test])) / shown.band[test];
    return PLAIN.medium;
  };
  return Math.max(...tests.map(of));
}
