import type { TestKind } from '../../bench/paper.ts';
import { createArmatureSolver } from '../../engine/armatureBench.ts';
import { MAINS } from '../../engine/drive.ts';
import type { ArmatureDesign } from '../../engine/parts/armature.ts';
import type { ArmatureFault } from '../../engine/parts/armatureFault.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import { type Expected, expectedOf, SOUND } from './expected.ts';
import { type PlaceClass, placeOf } from './place.ts';
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

/** The faults of a scenario, each judged by what it shows alone. */
export function truthOf(scenario: Scenario, design: ArmatureDesign): TrueFinding[] {
  const solver = createArmatureSolver(design);
  const { tests, mains } = scenario.public;
  return scenario.hidden.armature.faults.map((fault) => {
    const shown = shownBy(solver, [fault], MAINS[mains]);
    const told = fault.kind === 'dirtyCommutator' ? TOLD_BY_SCATTER : telling(shown);
    return {
      fault,
      expected: expectedOf(fault),
      place: placeOf(fault, shown, design, tests),
      toldBy: told.filter((test) => tests.includes(test)),
    };
  });
}

/** What is to be done with the part: the heaviest of the faults that can be told decides. */
export function remedyOf(told: readonly TrueFinding[]): Expected {
  return told.reduce<Expected>(
    (heaviest, { expected }) => (expected.weight > heaviest.weight ? expected : heaviest),
    SOUND,
  );
}
