import type { Parsed } from '../../scenario/scenario.ts';
import { StoreRefused } from '../../store/attemptStore.ts';

export const now = () => new Date().toISOString();

export const right = <T>(value: T): Parsed<T> => ({ ok: true, value });
export const wrong = (path: string, sentence: string) =>
  ({ ok: false, issues: [{ path, sentence }] }) as const;

/** What the store refuses reaches the screen as an issue; our own mistakes still go to the console. */
export async function guarded<T>(work: () => Promise<Parsed<T>>): Promise<Parsed<T>> {
  try {
    return await work();
  } catch (error) {
    if (error instanceof StoreRefused) return wrong('', error.message);
    console.error(error);
    return wrong('', `Something went wrong that should not have: ${String(error)}.`);
  }
}
