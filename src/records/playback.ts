import type { Attempt } from '../attempt/entry.ts';
import { createSession, designOf, type Session } from '../attempt/session.ts';
import type { Observation } from '../bench/observation.ts';
import type { PartLibrary } from '../scenario/scenario.ts';

/** A finished attempt that can be looked at as it was at any instant. */
export interface Playback {
  readonly endMs: number;
  /**
   * What the learner had before them at an instant, the acts of that instant done.
   * Forward costs what happens on the way; backward begins again from the start.
   * @param atMs  simulated time, held to 0..endMs
   */
  at(atMs: number): Observation;
  /** What stood right after the last act at or before an instant; at once where it was passed before, else as `at`. */
  near(atMs: number): Observation;
}

/** @param library  must hold the part of the attempt's scenario, as parsing has made sure */
export function createPlayback(attempt: Attempt, library: PartLibrary): Playback {
  const { scenario, mode, entries, endMs } = attempt;
  const design = designOf(scenario, library);
  const begin = () => createSession({ scenario, mode, design });
  let session: Session = begin();
  let done = 0;
  let reachedMs = 0;
  /** What was seen right after each act passed so far, by entry number. */
  const passed: Observation[] = [];

  const at = (atMs: number): Observation => {
    const wanted = Math.round(Math.min(Math.max(atMs, 0), endMs));
    if (wanted < reachedMs) {
      session = begin();
      done = 0;
    }
    for (let next = entries[done]; next !== undefined && next.atMs <= wanted; next = entries[++done]) {
      session.act(next.action, next.atMs);
      passed[done] ??= session.observe(next.atMs);
    }
    reachedMs = wanted;
    return session.observe(wanted);
  };
  return {
    endMs,
    at,
    near: (atMs) => passed[lastAct(entries, atMs)] ?? at(atMs),
  };
}

/** Number of the last entry at or before an instant; -1 before the first. */
export function lastAct(entries: Attempt['entries'], atMs: number): number {
  let [low, high] = [0, entries.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (entries[middle]!.atMs <= atMs) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}
