import type { Attempt, Entry } from '../attempt/entry.ts';
import { isStream } from '../bench/action.ts';
import type { BenchPort } from '../bench/port.ts';
import type { LocalBench } from '../link/localBench.ts';
import type { AttemptResult, AttemptStore } from '../store/attemptStore.ts';
import type { Journal } from '../store/journal.ts';

/** How often the passing of simulated time is kept while nothing is done, ms. */
const REACHED_EVERY_MS = 5000;
/** Acts that come with every frame go to the store together, so often, ms; each is noted by itself. */
const TOGETHER_MS = 200;

export interface Keeping {
  readonly store: Pick<AttemptStore, 'append' | 'reached' | 'close'>;
  readonly journal: Pick<Journal, 'note'>;
  /** Marks of a closed attempt, for the list of jobs. */
  readonly resultOf: (attempt: Attempt) => Promise<AttemptResult>;
  /** Told when something could not be kept. */
  readonly onTrouble: (error: unknown) => void;
}

/** A bench whose every act is noted before it is answered, and written to the store as it is done, in order. */
export interface KeptBench {
  readonly port: BenchPort;
  /** Resolves when everything done so far is on disk. */
  settled(): Promise<void>;
  close(): void;
}

export function keepBench(bench: LocalBench, alreadyKept: number, keeping: Keeping): KeptBench {
  const { store, journal, resultOf, onTrouble } = keeping;
  const { id } = bench.attempt();
  /** Entries the store has acknowledged; what it refused is offered again with the next act. */
  let written = alreadyKept;
  /** How many entries belong to the record: set when the attempt is over, for later acts are none of its. */
  let ended: number | null = null;
  let closed = false;
  let queue: Promise<void> = Promise.resolve();

  const then = (work: () => Promise<void>) => {
    queue = queue.then(work).catch(onTrouble);
  };
  const note = () => journal.note(id, bench.attempt().entries.slice(written, ended ?? undefined));
  const keep = async () => {
    const attempt = bench.attempt();
    const fresh = attempt.entries.slice(written, ended ?? undefined);
    if (fresh.length > 0) await store.append(id, fresh);
    written += fresh.length;
    note();
    if (ended === null || closed) return;
    const whole = { ...attempt, entries: attempt.entries.slice(0, ended) };
    await store.close(id, attempt.endMs, await resultOf(whole));
    closed = true;
  };
  let soon: ReturnType<typeof setTimeout> | null = null;
  const keepNow = () => {
    if (soon !== null) clearTimeout(soon);
    soon = null;
    then(keep);
  };
  const keepNew = (streams = false) => {
    if (closed) return;
    const { entries } = bench.attempt();
    if (ended === null && isOver(bench, entries.slice(written))) ended = entries.length;
    note();
    if (streams && ended === null) soon ??= setTimeout(keepNow, TOGETHER_MS);
    else keepNow();
  };
  const keepTime = () => {
    if (closed) return;
    keepNow();
    if (ended === null) then(() => store.reached(id, bench.attempt().endMs));
  };

  // The page went away between the last act and the closing of the record.
  const { entries } = bench.attempt();
  if (isOver(bench, entries)) {
    ended = entries.length;
    then(keep);
  }
  const timer = setInterval(keepTime, REACHED_EVERY_MS);
  window.addEventListener('pagehide', keepTime);
  const unwatch = bench.watch((seen) => {
    if (seen.stopped) keepNew();
  });
  return {
    port: {
      ...portOf(bench),
      send(action) {
        const outcome = bench.send(action);
        keepNew(isStream(action));
        return outcome;
      },
    },
    settled() {
      if (soon !== null) keepNow();
      return queue;
    },
    close() {
      keepTime();
      clearInterval(timer);
      window.removeEventListener('pagehide', keepTime);
      unwatch();
      bench.close();
    },
  };
}

/** Handed in, or stopped by a critical act or by what came of one. */
function isOver(bench: LocalBench, fresh: readonly Entry[]): boolean {
  const handedIn = fresh.some(
    ({ action, outcome }) => action.type === 'job.handIn' && outcome.kind === 'done',
  );
  return handedIn || bench.look().stopped !== null;
}

function portOf(bench: LocalBench): BenchPort {
  return {
    send: (action) => bench.send(action),
    look: () => bench.look(),
    watch: (listener) => bench.watch(listener),
    pause: () => bench.pause(),
    resume: () => bench.resume(),
  };
}
