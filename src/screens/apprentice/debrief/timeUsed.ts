import type { Attempt } from '../../../attempt/entry.ts';
import { minutesOf } from '../../../bench/memory.ts';
import { minutesWords } from '../../shared/time.ts';

/** Time that ran at the bench, ms, and the minutes remedies and repairs took by the workshop's book. */
export interface TimeUsed {
  readonly benchMs: number;
  readonly bookMinutes: number;
}

export function timeUsed({ entries, endMs }: Pick<Attempt, 'entries' | 'endMs'>): TimeUsed {
  const bookMinutes = entries.reduce(
    (sum, { action, outcome }) => (outcome.kind === 'done' ? sum + minutesOf(action) : sum),
    0,
  );
  return { benchMs: endMs, bookMinutes };
}

/** "31 minutes: 11 at the bench and 20 of work by the book. 30 were allowed: 1 over." @param allowed minutes, or null */
export function timeWords({ benchMs, bookMinutes }: TimeUsed, allowed: number | null): string {
  const usedMs = benchMs + bookMinutes * 60_000;
  const split =
    bookMinutes === 0
      ? ' at the bench'
      : `: ${minutesWords(benchMs)} at the bench and ${bookMinutes} of work by the book`;
  return `${minutesWords(usedMs)}${split}${allowedWords(usedMs, allowed)}`;
}

function allowedWords(usedMs: number, allowed: number | null): string {
  if (allowed === null) return '; no limit was set';
  const over = usedMs - allowed * 60_000;
  const within = `; ${allowed} minutes were allowed`;
  return over > 0 ? `${within}, so ${minutesWords(over)} too long` : within;
}
