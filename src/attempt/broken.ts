import type { Breach } from '../bench/port.ts';
import type { Entry, Happened } from './entry.ts';

/** A rule broken in an attempt, with the entry it belongs to. */
export interface Broken {
  /** The act that broke the rule; for what came about by itself, the last act before it. */
  readonly entry: number;
  readonly atMs: number;
  readonly breach: Breach;
}

/**
 * Every rule broken in an attempt, in the order of time.
 * @param after what came about by itself after the last entry (`Session.sinceLastAct`)
 */
export function brokenIn(entries: readonly Entry[], after: readonly Happened[] = []): Broken[] {
  const byActs = entries.flatMap(({ n, atMs, outcome, since = [] }) => [
    ...bySelf(n - 1, since),
    ...outcome.breaches.map((breach) => ({ entry: n, atMs, breach })),
  ]);
  return [...byActs, ...bySelf(entries.length - 1, after)];
}

function bySelf(lastAct: number, happened: readonly Happened[]): Broken[] {
  const entry = Math.max(0, lastAct);
  return happened.flatMap(({ atMs, breaches }) => breaches.map((breach) => ({ entry, atMs, breach })));
}
