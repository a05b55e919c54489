import { ATTEMPT_FORMAT, ATTEMPT_VERSION, type Attempt } from '../../src/attempt/entry.ts';
import { replay } from '../../src/attempt/replay.ts';
import { BenchDriver, job, PARTS } from '../support/benchDriver.ts';
import { FAULT } from './engine.ts';
import { type Effort, type SpeedRow, timed } from './measure.ts';

/** Someone who turns the armature bar by bar under two fixed probes, again and again, for so many acts. */
export function longAttempt(acts: number): Attempt {
  const options = { part: 'lap-28', faults: FAULT } as const;
  const me = new BenchDriver(options).placesArmature().setsRange(30).setsProbesAt(-45, -32);
  me.switches('high');
  while (me.session.log.length < acts) me.turnsOneBar();
  return {
    format: ATTEMPT_FORMAT,
    version: ATTEMPT_VERSION,
    id: 'a-long',
    mode: 'practice',
    learner: 'A learner',
    startedAt: '2031-05-06T08:30:00Z',
    scenario: job(options),
    entries: me.session.log,
    endMs: me.atMs,
  };
}

export async function replayOf(acts: number, effort: Effort): Promise<SpeedRow> {
  const attempt = longAttempt(acts);
  const done = attempt.entries.filter(({ outcome }) => outcome.kind === 'done').length;
  const timing = await timed({ ...effort, samples: 3, warmUpMs: 0, sampleMs: 0 }, () => {
    const again = replay(attempt, PARTS);
    if (!again.agreed) throw new Error(`The replay differs at entry ${again.firstDivergence.n}.`);
  });
  return { id: 'replay', what: `replay of an attempt of ${acts} acts (${done} done), compared`, ...timing };
}
