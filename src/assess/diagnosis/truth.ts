import { type Condition, firstCondition } from '../../attempt/condition.ts';
import type { PartKind } from '../../bench/action.ts';
import type { Clue } from '../../bench/observation.ts';
import type { TestKind } from '../../bench/paper.ts';
import { barPlace, type Place } from '../../bench/places.ts';
import { createArmatureSolver } from '../../engine/armatureBench.ts';
import { MAINS } from '../../engine/drive.ts';
import type { ArmatureDesign } from '../../engine/parts/armature.ts';
import type { ArmatureFault } from '../../engine/parts/armatureFault.ts';
import { cluesAt } from '../../scenario/hidden/looks.ts';
import { limitsOf } from '../../scenario/public/limits.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import { afterWork } from './afterWork.ts';
import { armatureLeaks, droppingPairs } from './armatureTools.ts';
import { type Expected, expectedOf, SOUND } from './expected.ts';
import { fieldTruth } from './fieldTruth.ts';
import { asOne, type PartAt, type TrueFinding } from './finding.ts';
import { markedPairs, placeOf } from './place.ts';
import { plateTruth } from './plateTruth.ts';
import { type Shown, shownBy, telling } from './shown.ts';
import { wornTruth } from './wornTruth.ts';

/** Dirt scatters every ammeter reading and can be seen; the answer key, free of scatter, does not show it. */
const TOLD_BY_SCATTER: readonly TestKind[] = ['look', 'spaced', 'neighbour'];

/** Risers where a coil that shows at some pairs of bars could have come off. */
function risersOf(coil: number, pairs: readonly number[], design: ArmatureDesign): number[] {
  const end = (coil + design.commutatorPitch + design.bars) % design.bars;
  return [coil, end, ...pairs.flatMap((bar) => [bar, (bar + 1) % design.bars])];
}

/**
 * Whether the lens shows a fault's sign where the readings show the fault: its own, or for an open coil solder thrown
 * at a riser the coil could have come off, which misleads anyone.
 */
function seenUnderLens(
  { public: { tests }, hidden }: Scenario,
  fault: ArmatureFault,
  pairs: readonly number[],
  design: ArmatureDesign,
): boolean {
  if (!tests.includes('look')) return false;
  const shows = (place: Place, ...signs: readonly Clue[]) =>
    cluesAt(hidden, design, place).some((clue) => signs.includes(clue));
  if (fault.kind === 'riserJoint') return shows(`riser:${fault.bar}`, 'solderThrown');
  if (fault.kind === 'openCoil')
    return risersOf(fault.coil, pairs, design).some((bar) => shows(`riser:${bar}`, 'solderThrown'));
  if (fault.kind !== 'bridgedBars') return false;
  const across = [barPlace(fault.bar), barPlace((fault.bar + 1) % design.bars)];
  return across.some((place) => shows(place, 'metalAcrossMica', 'carbonAcrossMica'));
}

const GROUNDS: ReadonlySet<string> = new Set(['groundedBar', 'groundedCoil']);

/** Tests that show one fault by itself, among those the job allows. */
function toldBy(
  { public: { tests, mains, ...card } }: Scenario,
  fault: ArmatureFault,
  shown: { readonly fault: Shown; readonly sound: Shown; readonly drops: readonly number[] },
  design: ArmatureDesign,
): TestKind[] {
  const growler = fault.kind === 'dirtyCommutator' ? TOLD_BY_SCATTER : telling(shown.fault, shown.sound);
  const { insulationMohm } = limitsOf(card, design);
  return tests.filter((test) => {
    if (test === 'millivolt') return shown.drops.length > 0;
    return test === 'megohm' ? armatureLeaks(design, [fault], insulationMohm) : growler.includes(test);
  });
}

/**
 * The faults the armature came with, each judged by what it shows alone. A lamp that lights does not count the places:
 * several grounds are one finding.
 * @param condition the part as it lies; left out: as it came to the bench
 */
export function truthOf(
  scenario: Scenario,
  design: ArmatureDesign,
  condition: Condition = firstCondition(scenario.hidden, design.commutatorRadius),
): TrueFinding<ArmatureFault>[] {
  const solver = createArmatureSolver(design);
  const { tests, mains } = scenario.public;
  const sound = shownBy(solver, [], MAINS[mains]);
  const findings = scenario.hidden.armature.faults.map((fault) => {
    const shown = shownBy(solver, [fault], MAINS[mains]);
    const drops = tests.includes('millivolt') ? droppingPairs(design, [fault]) : [];
    const marked = [...new Set([...markedPairs(shown), ...drops])];
    const seen = seenUnderLens(scenario, fault, markedPairs(shown), design);
    return {
      fault,
      expected: afterWork(expectedOf(fault, seen), fault, condition.done, design),
      place: placeOf(fault, marked, design, tests),
      toldBy: toldBy(scenario, fault, { fault: shown, sound, drops }, design),
      cured: !condition.armature.includes(fault),
    };
  });
  return asOne(findings, ({ fault }) => (GROUNDS.has(fault.kind) ? 'ground' : null));
}

/** Everything that is or was the matter with one part of the job. */
export function truthOfPart(part: PartKind, at: PartAt): TrueFinding[] {
  const wear = wornTruth(part, at);
  switch (part) {
    case 'armature':
      return [...truthOf(at.scenario, at.design, at.condition), ...wear];
    case 'fieldFrame':
      return [...fieldTruth(at), ...wear];
    case 'brushPlate':
      return [...plateTruth(at), ...wear];
  }
}

/** What is to be done with the part: the heaviest of the faults that can be told decides. */
export function remedyOf(told: readonly TrueFinding[]): Expected {
  return told.reduce<Expected>(
    (heaviest, { expected }) => (expected.weight > heaviest.weight ? expected : heaviest),
    SOUND,
  );
}
