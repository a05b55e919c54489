import { rubricChanges } from '../../assess/procedure/rubricChanges.ts';
import type { Attempt } from '../../attempt/entry.ts';
import { createPlayback } from '../../records/playback.ts';
import { rubricOf } from '../../scenario/public/rubric.ts';
import { jobOf } from '../../scenario/public/view.ts';
import type { PartLibrary } from '../../scenario/scenario.ts';
import type { Findings, OpenedAttempt, Run } from '../../screens/assessor/desk.ts';
import type { Answers } from '../assessing/answers.ts';
import { askOf } from '../assessing/assessing.ts';

/** Attempts as the assessor's desk shows them. What takes long is asked for off the page's own thread. */

export function openedOf(attempt: Attempt, parts: PartLibrary): OpenedAttempt {
  return { ...runOf(attempt, parts), rubricChanges: rubricChanges(rubricOf(attempt.scenario.public)) };
}

export async function findingsOf(attempt: Attempt, parts: PartLibrary): Promise<Findings> {
  const [{ marks, passes }, replay] = await Promise.all([
    askOf('debrief', attempt, parts),
    replayedAgain(attempt, parts),
  ]);
  return { marks, passes, replay };
}

export async function expertRun(attempt: Attempt, parts: PartLibrary): Promise<Run> {
  return runOf(await askOf('expert', attempt, parts), parts);
}

function runOf(attempt: Attempt, parts: PartLibrary): Run {
  return { attempt, job: jobOf(attempt.scenario, parts), playback: createPlayback(attempt, parts) };
}

/** Whether doing it all again gives what the record says, in words. */
export async function replayedAgain(attempt: Attempt, parts: PartLibrary): Promise<Findings['replay']> {
  return replayWords(await askOf('replay', attempt, parts));
}

function replayWords(parted: Answers['replay']): Findings['replay'] {
  if (parted === null) return { agreed: true, sentence: 'Doing it all again gave what the record says.' };
  const { n, what, expected, got } = parted;
  const words = (value: unknown) => JSON.stringify(value) ?? 'nothing';
  return {
    agreed: false,
    sentence: `Doing it again parts from the record at entry ${n}: ${what} was ${words(expected)} and came out as ${words(got)}.`,
  };
}
