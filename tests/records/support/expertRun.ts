import { readFileSync } from 'node:fs';
import { workJob } from '../../../src/assess/expert/expert.ts';
import { type Attempt, NEW_ATTEMPT } from '../../../src/attempt/entry.ts';
import { createSession, designOf } from '../../../src/attempt/session.ts';
import { parsePartText, parseScenarioText } from '../../../src/scenario/parse.ts';
import { jobOf } from '../../../src/scenario/public/view.ts';
import type { PartLibrary, Scenario } from '../../../src/scenario/scenario.ts';

const PARTS = ['lap-24', 'lap-28', 'wave-23'];

export const library: PartLibrary = new Map(
  PARTS.map((id) => {
    const part = parsePartText(readFileSync(`scenarios/parts/${id}.json`, 'utf8'));
    if (!part.ok) throw new Error(part.issues[0]?.sentence);
    return [id, part.value];
  }),
);

export function scenarioOf(id: string): Scenario {
  const scenario = parseScenarioText(readFileSync(`scenarios/${id}.json`, 'utf8'), library);
  if (!scenario.ok) throw new Error(scenario.issues[0]?.sentence);
  return scenario.value;
}

/** A whole attempt as the scripted expert works it. */
export function expertRun(id: string): Attempt {
  const scenario = scenarioOf(id);
  const session = createSession({ scenario, design: designOf(scenario, library) });
  const { endMs } = workJob(session, jobOf(scenario, library));
  return {
    ...NEW_ATTEMPT,
    id: `expert-${id}`,
    mode: session.mode,
    learner: 'Expert',
    startedAt: '2026-03-02T08:30:00.000Z',
    scenario,
    entries: [...session.log],
    endMs,
  };
}
