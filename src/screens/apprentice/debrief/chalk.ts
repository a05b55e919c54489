import type { Attempt, Entry } from '../../../attempt/entry.ts';

/** The bar chalked by an entry that was done, or null when it chalked none. */
export function chalkedBy(entry: Entry): number | null {
  return entry.action.type === 'chalk.mark' && entry.outcome.kind === 'done' ? entry.action.bar : null;
}

/** The bar that carried the chalk at the end, or null. */
export function lastChalk(attempt: Attempt): number | null {
  return attempt.entries.reduce<number | null>((chalked, entry) => chalkedBy(entry) ?? chalked, null);
}

/** For every entry, the bar that carried the chalk when it was done; before there was any, the one chalked first. */
export function chalkAt(entries: readonly Entry[]): readonly (number | null)[] {
  let chalked = entries.map(chalkedBy).find((bar) => bar !== null) ?? null;
  return entries.map((entry) => {
    const then = chalked;
    chalked = chalkedBy(entry) ?? chalked;
    return then;
  });
}
