import type { Entry } from '../../attempt/entry.ts';

/** For each act the bar that was chalked by then, as the bench numbers it; null while there was none. */
export function lastChalks(entries: readonly Entry[]): (number | null)[] {
  let chalked: number | null = null;
  return entries.map(({ action, outcome }) => {
    if (action.type === 'chalk.mark' && outcome.kind === 'done') chalked = action.bar;
    return chalked;
  });
}
