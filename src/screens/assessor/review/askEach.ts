import type { Parsed } from '../../../scenario/scenario.ts';

/** Asks the same of every attempt of a set, or says what is wrong with the first that has no answer. */
export async function askEach<T>(
  ids: readonly string[],
  ask: (id: string) => Promise<Parsed<T>>,
): Promise<Parsed<readonly T[]>> {
  const answers: T[] = [];
  for (const id of ids) {
    const answer = await ask(id);
    if (!answer.ok) return answer;
    answers.push(answer.value);
  }
  return { ok: true, value: answers };
}
