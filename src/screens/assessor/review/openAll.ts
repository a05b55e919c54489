import type { Parsed } from '../../../scenario/scenario.ts';
import type { AssessorDesk, OpenedAttempt } from '../desk.ts';

/** Opens every attempt of a set, or says what is wrong with the first that cannot be opened. */
export async function openAll(
  ids: readonly string[],
  desk: Pick<AssessorDesk, 'open'>,
): Promise<Parsed<readonly OpenedAttempt[]>> {
  const opened: OpenedAttempt[] = [];
  for (const id of ids) {
    const answer = await desk.open(id);
    if (!answer.ok) return answer;
    opened.push(answer.value);
  }
  return { ok: true, value: opened };
}
