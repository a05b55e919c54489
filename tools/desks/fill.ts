import type { Library } from '../../src/app/library.ts';
import { assess } from '../../src/assess/assess.ts';
import { workJob } from '../../src/assess/expert/expert.ts';
import { type Attempt, NEW_ATTEMPT } from '../../src/attempt/entry.ts';
import { createSession, designOf } from '../../src/attempt/session.ts';
import type { Action } from '../../src/bench/action.ts';
import { jobOf } from '../../src/scenario/public/view.ts';
import type { Scenario } from '../../src/scenario/scenario.ts';
import type { Store } from '../../src/store/store.ts';

/** How a made-up learner differs from the expert. */
interface Habit {
  /** Acts left out: true for an act that is not done. */
  readonly skips: (action: Action, nth: number) => boolean;
  /** How much longer they take. */
  readonly slow: number;
  readonly endsWith?: readonly Action[];
}

const CAREFUL: Habit = { skips: () => false, slow: 1.7 };
const CARELESS: Habit = {
  skips: (action, nth) => action.type === 'lead.touch' && action.lead.startsWith('lamp') && nth % 3 === 0,
  slow: 1.2,
};
const DANGEROUS: Habit = {
  skips: (_, nth) => nth > 90,
  slow: 2.5,
  endsWith: [
    { type: 'selector.turn', to: 'low' },
    { type: 'lead.take', lead: 'lamp.1', grip: 'tip' },
  ],
};

const PEOPLE: readonly (readonly [learner: string, habit: Habit, day: number])[] = [
  ['T. Okafor', CAREFUL, 2],
  ['T. Okafor', CARELESS, 3],
  ['M. Brandt', CARELESS, 3],
  ['S. Novak', DANGEROUS, 4],
  ['L. Haddad', CAREFUL, 5],
];

/** Puts attempts of made-up learners into an empty store, worked on the real bench. */
export async function fill(store: Store, library: Library): Promise<void> {
  if ((await store.list()).length > 0) return;
  const jobs = [...library.scenarios.values()];
  for (const [nth, [learner, habit, day]] of PEOPLE.entries()) {
    const attempt = worked(jobs[nth % jobs.length]!, library, habit, {
      id: `00000000-0000-4000-8000-00000000000${nth}`,
      learner,
      startedAt: `2026-03-0${day}T09:1${nth}:00.000Z`,
    });
    const { earned, of, stoppedBy } = assess(attempt, library.parts);
    await store.add(attempt, { state: stoppedBy ? 'stopped' : 'handedIn', earned, of });
  }
}

function worked(
  scenario: Scenario,
  { parts }: Library,
  habit: Habit,
  who: Pick<Attempt, 'id' | 'learner' | 'startedAt'>,
): Attempt {
  const design = designOf(scenario, parts);
  const expert = createSession({ scenario, design, mode: 'assessed' });
  workJob(expert, jobOf(scenario, parts));
  const session = createSession({ scenario, design, mode: 'assessed' });
  let atMs = 0;
  let before = 0;
  for (const [nth, entry] of expert.log.entries()) {
    atMs += Math.round((entry.atMs - before) * habit.slow) + (nth % 40 === 39 ? 15_000 : 0);
    before = entry.atMs;
    if (!habit.skips(entry.action, nth)) session.act(entry.action, atMs);
  }
  for (const action of habit.endsWith ?? []) {
    atMs += 2000;
    session.act(action, atMs);
  }
  return {
    ...NEW_ATTEMPT,
    ...who,
    mode: 'assessed',
    scenario,
    entries: [...session.log],
    endMs: atMs + 1000,
  };
}
