import type { Attempt } from '../../attempt/entry.ts';
import type { PartLibrary } from '../../scenario/scenario.ts';
import { offThread } from '../offThread.ts';
import type { Answers, Question } from './answers.ts';

const assess = offThread<Question, Answers[keyof Answers]>(
  () => new Worker(new URL('./assessingWorker.ts', import.meta.url), { type: 'module' }),
  async () => (await import('./answers.ts')).answer,
);

/** Plays and judges a finished attempt off the main thread. The code for it comes only when it is needed. */
export async function askOf<K extends keyof Answers>(
  ask: K,
  attempt: Attempt,
  parts: PartLibrary,
): Promise<Answers[K]> {
  return (await assess({ ask, attempt, parts })) as Answers[K];
}
