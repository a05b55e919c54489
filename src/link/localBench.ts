import { ATTEMPT_FORMAT, ATTEMPT_VERSION, type Attempt, type Happened } from '../attempt/entry.ts';
import { type Divergence, replay } from '../attempt/replay.ts';
import { createSession, designOf, type Session } from '../attempt/session.ts';
import type { Observation } from '../bench/observation.ts';
import type { BenchPort, Breach } from '../bench/port.ts';
import type { PartLibrary } from '../scenario/scenario.ts';
import type { Clock } from './clock.ts';

/** What an attempt says of itself before its first entry. */
export type AttemptStart = Pick<Attempt, 'points' | 'id' | 'mode' | 'learner' | 'startedAt' | 'scenario'>;

/** A bench that runs in this program, with the attempt it belongs to. */
export interface LocalBench extends BenchPort {
  /** The attempt so far, with simulated time up to now. */
  attempt(): Attempt;
  /** What has come about by itself since the last act. */
  sinceLastAct(): readonly Happened[];
  /** Calls back with each rule that time alone breaks, when it does; returns the way to stop. */
  overhear(listener: (breach: Breach) => void): () => void;
  /** Stops watching and scheduling for good. */
  close(): void;
}

/** Opens a bench for a new attempt; simulated time starts to run at once. */
export function openLocalBench(start: AttemptStart, library: PartLibrary, clock: Clock): LocalBench {
  const { scenario, mode } = start;
  const session = createSession({ scenario, mode, design: designOf(scenario, library) });
  return new RunningBench(start, session, clock, 0);
}

export type Resumed =
  | { readonly ok: true; readonly bench: LocalBench }
  | { readonly ok: false; readonly firstDivergence: Divergence };

/** Goes on with a stored attempt where it was left, by doing everything in its log again. */
export function resumeLocalBench(attempt: Attempt, library: PartLibrary, clock: Clock): Resumed {
  const again = replay(attempt, library);
  if (!again.agreed) return { ok: false, firstDivergence: again.firstDivergence };
  return { ok: true, bench: new RunningBench(attempt, again.session, clock, attempt.endMs) };
}

/** How soon to look again, ms, by how much is going on; null: nothing can change before the next act. */
const LOOK_AGAIN_MS = { moving: 0, slow: 100, still: null } as const;

class RunningBench implements LocalBench {
  private readonly start: AttemptStart;
  private readonly session: Session;
  private readonly clock: Clock;
  private readonly listeners = new Set<(seen: Observation) => void>();
  /** Simulated time at the anchor, and the real time of the anchor; null while paused. */
  private simulatedMs: number;
  private anchorMs: number | null;
  private cancel: (() => void) | null = null;
  private lastTold: Observation | null = null;
  private readonly overhearers = new Set<(breach: Breach) => void>();
  /** How many happenings since the last act have been told of. */
  private overheard: number;

  constructor(start: AttemptStart, session: Session, clock: Clock, simulatedMs: number) {
    this.start = start;
    this.session = session;
    this.clock = clock;
    this.simulatedMs = simulatedMs;
    this.anchorMs = clock.nowMs();
    this.overheard = session.sinceLastAct(simulatedMs).length;
  }

  send: BenchPort['send'] = (action) => {
    const atMs = this.now();
    this.tellHappened(atMs);
    const outcome = this.session.act(action, atMs);
    this.overheard = 0;
    this.tell(this.session.observe(atMs), true);
    this.lookAgainLater();
    return outcome;
  };

  look = (): Observation => this.session.observe(this.now());

  watch: BenchPort['watch'] = (listener) => this.join(this.listeners, listener);

  overhear: LocalBench['overhear'] = (listener) => this.join(this.overhearers, listener);

  pause = (): void => {
    this.simulatedMs = this.now();
    this.anchorMs = null;
    this.rest();
  };

  resume = (): void => {
    if (this.anchorMs !== null) return;
    this.anchorMs = this.clock.nowMs();
    this.lookAgainLater();
  };

  sinceLastAct = (): readonly Happened[] => this.session.sinceLastAct(this.now());

  attempt = (): Attempt => {
    const { points, id, mode, learner, startedAt, scenario } = this.start;
    return {
      format: ATTEMPT_FORMAT,
      version: ATTEMPT_VERSION,
      ...(points === undefined ? {} : { points }),
      id,
      mode,
      learner,
      startedAt,
      scenario,
      entries: [...this.session.log],
      endMs: this.now(),
    };
  };

  close = (): void => {
    this.listeners.clear();
    this.overhearers.clear();
    this.rest();
  };

  private join<T>(group: Set<T>, listener: T): () => void {
    group.add(listener);
    this.lookAgainLater();
    return () => {
      group.delete(listener);
      if (this.listeners.size + this.overhearers.size === 0) this.rest();
    };
  }

  /** Simulated time now, whole ms. */
  private now(): number {
    if (this.anchorMs === null) return this.simulatedMs;
    return this.simulatedMs + Math.max(0, Math.floor(this.clock.nowMs() - this.anchorMs));
  }

  /** Listeners hear of an act always, of the passing of time only when something to be noticed has changed. */
  private tell(seen: Observation, always: boolean): void {
    if (!always && this.lastTold && noticed(seen) === noticed(this.lastTold)) return;
    this.lastTold = seen;
    for (const listener of this.listeners) listener(seen);
  }

  private tellHappened(atMs: number): void {
    const happened = this.session.sinceLastAct(atMs);
    const breaches = happened.slice(this.overheard).flatMap((one) => one.breaches);
    this.overheard = happened.length;
    for (const breach of breaches) for (const listener of this.overhearers) listener(breach);
  }

  private lookAgainLater(): void {
    this.rest();
    if (this.listeners.size + this.overhearers.size === 0 || this.anchorMs === null) return;
    const afterMs = LOOK_AGAIN_MS[this.session.stirAt(this.now())];
    if (afterMs === null) return;
    this.cancel = this.clock.schedule(() => {
      const atMs = this.now();
      this.tellHappened(atMs);
      this.tell(this.session.observe(atMs), false);
      this.lookAgainLater();
    }, afterMs);
  }

  private rest(): void {
    this.cancel?.();
    this.cancel = null;
  }
}

/** All of it but the time. */
function noticed(seen: Observation): string {
  return JSON.stringify({ ...seen, atMs: 0 });
}
