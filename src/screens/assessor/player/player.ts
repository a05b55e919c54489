import type { Entry } from '../../../attempt/entry.ts';
import type { Observation } from '../../../bench/observation.ts';
import type { BenchPort, Outcome } from '../../../bench/port.ts';
import { lastAct, type Playback } from '../../../records/playback.ts';

/** Real time, handed in so that tests can hand in their own. */
export interface PlayerClock {
  nowMs(): number;
  /** Calls once with the next picture; returns the way to call it off. */
  frame(call: () => void): () => void;
  /** Calls once after a while; returns the way to call it off. */
  later(call: () => void, afterMs: number): () => void;
}

export const SPEEDS = [0.5, 1, 2, 4, 8] as const;
export type Speed = (typeof SPEEDS)[number];

export interface PlayerState {
  /** Simulated time shown, ms. */
  readonly atMs: number;
  /** Number of the last act done by then; -1 before the first. */
  readonly entry: number;
  readonly playing: boolean;
  readonly speed: Speed;
  /** Time in which nothing is done is passed over. */
  readonly skipping: boolean;
}

/** With the passing over of pauses on: how long a pause must be, and how soon before the next act it goes on, ms. */
const PAUSE_MS = 4000;
const LEAD_IN_MS = 1200;
/** After a step back the exact picture is worked out once the hand has come to rest, ms. */
const REST_MS = 120;

const RECORDING: Outcome = {
  kind: 'refused',
  sentence: 'This is a recording: nothing can be done at this bench.',
  breaches: [],
};

/** Plays an attempt like a film. Its `port` is a bench that only shows, for whatever draws one. */
export class Player {
  readonly endMs: number;
  readonly port: BenchPort;
  private readonly playback: Playback;
  private readonly entries: readonly Entry[];
  private readonly clock: PlayerClock;
  private readonly stateListeners = new Set<(state: PlayerState) => void>();
  private readonly sightListeners = new Set<(seen: Observation) => void>();
  private state: PlayerState = { atMs: 0, entry: -1, playing: false, speed: 1, skipping: true };
  private seen: Observation;
  private frameAtMs = 0;
  private stopFrame: (() => void) | null = null;
  private stopRest: (() => void) | null = null;

  constructor(playback: Playback, entries: readonly Entry[], clock: PlayerClock) {
    this.playback = playback;
    this.entries = entries;
    this.clock = clock;
    this.endMs = playback.endMs;
    this.seen = playback.at(0);
    this.state = { ...this.state, entry: lastAct(entries, 0) };
    this.port = {
      send: () => RECORDING,
      look: () => this.seen,
      watch: (listener) => listen(this.sightListeners, listener),
      pause: () => this.pause(),
      resume: () => this.play(),
    };
  }

  now = (): PlayerState => this.state;
  look = (): Observation => this.seen;
  watch = (listener: (state: PlayerState) => void): (() => void) => listen(this.stateListeners, listener);

  play(): void {
    if (this.state.playing) return;
    if (this.state.atMs >= this.endMs) this.goTo(0);
    this.settle();
    this.frameAtMs = this.clock.nowMs();
    this.change({ playing: true });
    this.nextFrame();
  }

  pause(): void {
    this.stopFrame?.();
    this.stopFrame = null;
    if (this.state.playing) this.change({ playing: false });
  }

  setSpeed(speed: Speed): void {
    this.change({ speed });
  }

  setSkipping(skipping: boolean): void {
    this.change({ skipping });
  }

  /** @param atMs  simulated time, held to the length of the attempt */
  goTo(atMs: number): void {
    const wanted = Math.round(Math.min(Math.max(atMs, 0), this.endMs));
    const back = wanted < this.state.atMs;
    this.stopRest?.();
    this.stopRest = back ? this.clock.later(() => this.settle(), REST_MS) : null;
    this.show(wanted, back ? this.playback.near(wanted) : this.playback.at(wanted));
  }

  /** To the instant an act was done. */
  goToEntry = (n: number): void => {
    const entry = this.entries[n];
    if (entry !== undefined) this.goTo(entry.atMs);
  };

  /** One act on or back; before the first act lies the beginning. */
  step(by: 1 | -1): void {
    this.pause();
    const next = this.state.entry + by;
    if (next < 0) this.goTo(0);
    else if (next >= this.entries.length) this.goTo(this.endMs);
    else this.goToEntry(next);
  }

  close(): void {
    this.pause();
    this.stopRest?.();
    this.stateListeners.clear();
    this.sightListeners.clear();
  }

  /** Shows the exact sight of the instant, where a step back had only shown the act before it. */
  private settle(): void {
    if (this.stopRest === null) return;
    this.stopRest();
    this.stopRest = null;
    this.show(this.state.atMs, this.playback.at(this.state.atMs));
  }

  private nextFrame(): void {
    this.stopFrame = this.clock.frame(() => {
      const now = this.clock.nowMs();
      this.goTo(this.onward(this.state.atMs + (now - this.frameAtMs) * this.state.speed));
      this.frameAtMs = now;
      if (this.state.atMs >= this.endMs) this.pause();
      else if (this.state.playing) this.nextFrame();
    });
  }

  /** Over a pause, if it is long and pauses are to be passed over. */
  private onward(atMs: number): number {
    if (!this.state.skipping) return atMs;
    const last = this.entries[this.state.entry]?.atMs ?? 0;
    const next = this.entries[this.state.entry + 1]?.atMs ?? this.endMs;
    const pause = next - last > PAUSE_MS && atMs - last > PAUSE_MS / 2;
    return pause ? Math.max(atMs, next - LEAD_IN_MS) : atMs;
  }

  private show(atMs: number, seen: Observation): void {
    this.seen = seen;
    this.change({ atMs, entry: lastAct(this.entries, atMs) });
    for (const listener of this.sightListeners) listener(seen);
  }

  private change(part: Partial<PlayerState>): void {
    this.state = { ...this.state, ...part };
    for (const listener of this.stateListeners) listener(this.state);
  }
}

function listen<T>(listeners: Set<(told: T) => void>, listener: (told: T) => void): () => void {
  listeners.add(listener);
  return () => {
    listeners.delete(listener);
  };
}
