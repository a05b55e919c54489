import { rubricChanges } from '../../assess/procedure/rubricChanges.ts';
import type { Attempt } from '../../attempt/entry.ts';
import { createPlayback } from '../../records/playback.ts';
import { rubricOf } from '../../scenario/public/rubric.ts';
import { jobOf } from '../../scenario/public/view.ts';
import type { PartLibrary } from '../../scenario/scenario.ts';
import type { OpenedAttempt, Run } from '../../screens/assessor/desk.ts';
import type { Answers } from '../assessing/answers.ts';
import { askOf } from '../assessing/assessing.ts';

/** What the assessor's desk has judged: all of it off the page's own thread. */

export async function openedOf(attempt: Attempt, parts: PartLibrary): Promise<OpenedAttempt> {
  const [judged, replay] = await Promise.all([
    askOf('debrief', attempt, parts),
    replayedAgain(attempt, parts),
  ]);
  return {
    ...runOf(attempt, judged.marks, parts),
    passes: judged.passes,
    replay,
    rubricChanges: rubricChanges(rubricOf(attempt.scenario.public)),
  };
}

export async function expertRun(attempt: Attempt, parts: PartLibrary): Promise<Run> {
  const expert = await askOf('expert', attempt, parts);
  return runOf(expert.attempt, expert.marks, parts);
}

function runOf(attempt: Attempt, marks: Run['marks'], parts: PartLibrary): Run {
  return { attempt, job: jobOf(attempt.scenario, parts), marks, playback: createPlayback(attempt, parts) };
}

/** Whether doing it all again gives what the record says, in words. */
export async function replayedAgain(attempt: Attempt, parts: PartLibrary): Promise<OpenedAttempt['replay']> {
  return replayWords(await askOf('replay', attempt, parts));
}

function replayWords(parted: Answers['replay']): OpenedAttempt['replay'] {
  if (parted === null) return { agreed: true, sentence: 'Doing it all again gave what the record says.' };
  const { n, what, expected, got } = parted;
  const words = (value: unknown) => JSON.stringify(value) ?? 'nothing';
  return {
    agreed: false,
    sentence: `Doing it again parts from the record at entry ${n}: ${what} was ${words(expected)} and came out as ${words(got)}.`,
  };
}
