import type { Clue } from '../../bench/observation.ts';
import type { TestKind } from '../../bench/paper.ts';
import { barPlace, type Place } from '../../bench/places.ts';
import { createArmatureSolver } from '../../engine/armatureBench.ts';
import { MAINS } from '../../engine/drive.ts';
import type { ArmatureDesign } from '../../engine/parts/armature.ts';
import type { ArmatureFault } from '../../engine/parts/armatureFault.ts';
import { cluesAt } from '../../scenario/hidden/looks.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import { type Expected, expectedOf, SOUND } from './expected.ts';
import { markedPairs, type PlaceClass, placeOf } from './place.ts';
import { shownBy, telling } from './shown.ts';

/** One fault of the part, with the answers that are right for it. */
export interface TrueFinding {
  readonly fault: ArmatureFault;
  readonly expected: Expected;
  readonly place: PlaceClass;
  /** Tests the job allows that show it; none: no verdict on it can be asked for. */
  readonly toldBy: readonly TestKind[];
}

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

/** A lamp that lights does not count the places: several grounds are one finding. */
function groundsAsOne(findings: readonly TrueFinding[]): TrueFinding[] {
  const first = findings.findIndex(({ fault }) => GROUNDS.has(fault.kind));
  return findings.filter(({ fault }, nth) => !GROUNDS.has(fault.kind) || nth === first);
}
const GROUNDS: ReadonlySet<string> = new Set(['groundedBar', 'groundedCoil']);

/** The faults of a scenario, each judged by what it shows alone. */
export function truthOf(scenario: Scenario, design: ArmatureDesign): TrueFinding[] {
  const solver = createArmatureSolver(design);
  const { tests, mains } = scenario.public;
  const sound = shownBy(solver, [], MAINS[mains]);
  const findings = scenario.hidden.armature.faults.map((fault) => {
    const shown = shownBy(solver, [fault], MAINS[mains]);
    const told = fault.kind === 'dirtyCommutator' ? TOLD_BY_SCATTER : telling(shown, sound);
    return {
      fault,
      expected: expectedOf(fault, seenUnderLens(scenario, fault, markedPairs(shown), design)),
      place: placeOf(fault, shown, design, tests),
      toldBy: told.filter((test) => tests.includes(test)),
    };
  });
  return groundsAsOne(findings);
}

/** What is to be done with the part: the heaviest of the faults that can be told decides. */
export function remedyOf(told: readonly TrueFinding[]): Expected {
  return told.reduce<Expected>(
    (heaviest, { expected }) => (expected.weight > heaviest.weight ? expected : heaviest),
    SOUND,
  );
}
