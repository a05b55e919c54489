import type { ArmatureDesign } from '../../engine/parts/armature.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import type { Effects } from '../../screens/instructor/desk.ts';
import { offThread } from '../offThread.ts';

export interface Question {
  readonly scenario: Scenario;
  readonly design: ArmatureDesign;
}

const solve = offThread<Question, Effects>(
  () => new Worker(new URL('./effectsWorker.ts', import.meta.url), { type: 'module' }),
  async () => {
    const { effectsOf } = await import('./effects.ts');
    return ({ scenario, design }) => effectsOf(scenario, design);
  },
);

/** Solves a part off the main thread, so that the page stays at hand. */
export function solveEffects(scenario: Scenario, design: ArmatureDesign): Promise<Effects> {
  return solve({ scenario, design });
}

const count = offThread<Question, number | null>(
  () => new Worker(new URL('./countingWorker.ts', import.meta.url), { type: 'module' }),
  async () => (await import('./counting.ts')).readingsNeeded,
);

/** How many well-chosen readings prove what is the matter with the armature. */
export function countReadings(scenario: Scenario, design: ArmatureDesign): Promise<number | null> {
  return count({ scenario, design });
}
