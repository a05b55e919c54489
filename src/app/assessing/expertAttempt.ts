import { workJob } from '../../assess/expert/expert.ts';
import { type Attempt, NEW_ATTEMPT } from '../../attempt/entry.ts';
import { createSession, designOf } from '../../attempt/session.ts';
import { jobOf } from '../../scenario/public/view.ts';
import type { PartLibrary } from '../../scenario/scenario.ts';

/** The scripted expert's attempt at the job of another. */
export function expertAttempt(attempt: Attempt, parts: PartLibrary): Attempt {
  const { scenario, mode, startedAt } = attempt;
  const session = createSession({ scenario, design: designOf(scenario, parts), mode });
  const { endMs } = workJob(session, jobOf(scenario, parts));
  return {
    ...NEW_ATTEMPT,
    id: `expert-${attempt.id}`,
    mode,
    learner: 'Expert',
    startedAt,
    scenario,
    entries: [...session.log],
    endMs,
  };
}
