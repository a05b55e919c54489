import { workJob } from '../../src/assess/expert/expert.ts';
import type { Bench } from '../../src/assess/expert/hands.ts';
import { type Attempt, NEW_ATTEMPT } from '../../src/attempt/entry.ts';
import { createSession, designOf, type Session } from '../../src/attempt/session.ts';
import type { ArmatureFault } from '../../src/engine/parts/armatureFault.ts';
import { jobOf } from '../../src/scenario/public/view.ts';
import { SCENARIO_FORMAT, SCENARIO_VERSION, type Scenario } from '../../src/scenario/scenario.ts';
import { partLibrary } from '../scenario/files.ts';

export const library = partLibrary();

/** A scenario made up for a test: practice, every test allowed. */
export function scenarioWith(
  faults: readonly ArmatureFault[],
  shown: Partial<Scenario['public']> = {},
  hidden: Partial<Scenario['hidden']> = {},
): Scenario {
  return {
    format: SCENARIO_FORMAT,
    version: SCENARIO_VERSION,
    public: {
      id: 't-0001',
      workshop: 'Quarry Road Training Workshop',
      card: { unit: 'Starter', broughtInBy: 'A carter', complaint: 'Slow.', askedFor: 'Test it.' },
      mains: '230V50Hz',
      parts: ['armature'],
      armature: 'wave-23',
      tests: ['look', 'spaced', 'neighbour', 'ground', 'strip'],
      mode: 'practice',
      minutes: null,
      ...shown,
    },
    hidden: { armature: { faults }, startRotationDeg: 0, seed: 11, supplyReference: 'floating', ...hidden },
  };
}

export function attemptOf(session: Session, scenario: Scenario, endMs: number): Attempt {
  return {
    ...NEW_ATTEMPT,
    id: 'a-0001',
    mode: session.mode,
    learner: 'apprentice',
    startedAt: '2025-01-01T08:00:00Z',
    scenario,
    entries: session.log,
    endMs,
  };
}

/** The expert's attempt at a scenario. */
export function expertAttempt(scenario: Scenario) {
  const session = createSession({ scenario, design: designOf(scenario, library) });
  const bench: Bench = { act: session.act, observe: session.observe };
  const worked = workJob(bench, jobOf(scenario, library));
  return { ...worked, verdict: worked.verdicts[0]!, attempt: attemptOf(session, scenario, worked.endMs) };
}
