import type { Attempt } from '../../src/attempt/entry.ts';
import { createSession, designOf } from '../../src/attempt/session.ts';
import type { Action } from '../../src/bench/action.ts';
import type { Scenario } from '../../src/scenario/scenario.ts';
import { attemptOf, library } from './attempts.ts';

/** One act with the pause before it, ms: a script can be cut and changed where a log with times cannot. */
export interface Step {
  readonly action: Action;
  readonly pauseMs: number;
}

/** A needle that was waited for may need longer once a changed script has changed the contacts, ms. */
const WAITED_MS = 250;
const MARGIN_MS = 1000;

export function stepsOf(attempt: Attempt): Step[] {
  return attempt.entries.map(({ action, atMs }, nth) => {
    const pauseMs = atMs - (attempt.entries[nth - 1]?.atMs ?? 0);
    return { action, pauseMs: pauseMs > WAITED_MS ? pauseMs + MARGIN_MS : pauseMs };
  });
}

export function step(action: Action, pauseMs = 400): Step {
  return { action, pauseMs };
}

/** Performs a script on a fresh bench. */
export function perform(scenario: Scenario, steps: readonly Step[]): Attempt {
  const session = createSession({ scenario, design: designOf(scenario, library) });
  let atMs = 0;
  for (const { action, pauseMs } of steps) {
    atMs += pauseMs;
    session.act(action, atMs);
  }
  return attemptOf(session, scenario, atMs + 500);
}

/** What was refused, so that a script that does not do what it says is noticed. */
export function refusals(attempt: Attempt): string[] {
  return attempt.entries.flatMap(({ action, outcome }) =>
    outcome.kind === 'refused' ? [`${action.type}: ${outcome.sentence}`] : [],
  );
}
