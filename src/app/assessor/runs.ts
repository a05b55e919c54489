import { assess, marksOf } from '../../assess/assess.ts';
import { passCharts } from '../../assess/charts.ts';
import { workJob } from '../../assess/expert/expert.ts';
import { filmOf } from '../../assess/film.ts';
import { rubricChanges } from '../../assess/procedure/rubricChanges.ts';
import { ATTEMPT_FORMAT, ATTEMPT_VERSION, type Attempt } from '../../attempt/entry.ts';
import { type Replayed, replay } from '../../attempt/replay.ts';
import { createSession, designOf } from '../../attempt/session.ts';
import { createPlayback } from '../../records/playback.ts';
import { rubricOf } from '../../scenario/public/rubric.ts';
import { jobOf } from '../../scenario/public/view.ts';
import type { PartLibrary } from '../../scenario/scenario.ts';
import type { OpenedAttempt, Run } from '../../screens/assessor/desk.ts';
import { passesOf } from '../passes.ts';

export function openedOf(attempt: Attempt, parts: PartLibrary): OpenedAttempt {
  const film = filmOf(attempt, parts);
  return {
    attempt,
    job: jobOf(attempt.scenario, parts),
    marks: marksOf(film),
    playback: createPlayback(attempt, parts),
    passes: passesOf(passCharts(film)),
    replay: replayWords(replay(attempt, parts)),
    rubricChanges: rubricChanges(rubricOf(attempt.scenario.public)),
  };
}

export function replayWords(again: Replayed): OpenedAttempt['replay'] {
  if (again.agreed) return { agreed: true, sentence: 'Doing it all again gave what the record says.' };
  const { n, what, expected, got } = again.firstDivergence;
  const words = (value: unknown) => JSON.stringify(value) ?? 'nothing';
  return {
    agreed: false,
    sentence: `Doing it again parts from the record at entry ${n}: ${what} was ${words(expected)} and came out as ${words(got)}.`,
  };
}

export function expertRun(attempt: Attempt, parts: PartLibrary): Run {
  const { scenario } = attempt;
  const session = createSession({ scenario, design: designOf(scenario, parts), mode: attempt.mode });
  const { endMs } = workJob(session, jobOf(scenario, parts));
  return runOf(
    {
      format: ATTEMPT_FORMAT,
      version: ATTEMPT_VERSION,
      id: `expert-${attempt.id}`,
      mode: attempt.mode,
      learner: 'Expert',
      startedAt: attempt.startedAt,
      scenario,
      entries: [...session.log],
      endMs,
    },
    parts,
  );
}

function runOf(attempt: Attempt, parts: PartLibrary): Run {
  return {
    attempt,
    job: jobOf(attempt.scenario, parts),
    marks: assess(attempt, parts),
    playback: createPlayback(attempt, parts),
  };
}
