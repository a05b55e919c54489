import { beforeEach, describe, expect, it } from 'vitest';
import { parseAttempt } from '../../src/attempt/parse.ts';
import type { Observation } from '../../src/bench/observation.ts';
import type { Clock } from '../../src/link/clock.ts';
import { type LocalBench, openLocalBench, resumeLocalBench } from '../../src/link/localBench.ts';
import { job, PARTS } from '../support/benchDriver.ts';

/** Real time that only passes when told to. */
class HandClock implements Clock {
  private atMs = 5_000;
  private calls: { readonly atMs: number; readonly call: () => void }[] = [];
  /** How many calls have been made so far. */
  made = 0;

  nowMs = () => this.atMs;
  schedule = (call: () => void, afterMs: number) => {
    const due = { atMs: this.atMs + Math.max(16, afterMs), call };
    this.calls.push(due);
    return () => {
      this.calls = this.calls.filter((other) => other !== due);
    };
  };
  get waiting(): number {
    return this.calls.length;
  }
  pass(ms: number): void {
    const until = this.atMs + ms;
    for (;;) {
      const next = [...this.calls].sort((a, b) => a.atMs - b.atMs).find((due) => due.atMs <= until);
      if (next === undefined) break;
      this.calls = this.calls.filter((other) => other !== next);
      this.atMs = next.atMs;
      this.made += 1;
      next.call();
    }
    this.atMs = until;
  }
}

const start = {
  id: 'a-1',
  mode: 'practice',
  learner: 'A learner',
  startedAt: '2031-05-06T08:30:00Z',
  scenario: job({ faults: [{ kind: 'bridgedBars', bar: 1, ohm: 2e-4, by: 'copper' }] }),
} as const;

let clock: HandClock;
let bench: LocalBench;
let told: Observation[];
beforeEach(() => {
  clock = new HandClock();
  bench = openLocalBench(start, PARTS, clock);
  told = [];
  bench.watch((seen) => told.push(seen));
});

const reading = () => {
  bench.send({ type: 'armature.place' });
  bench.send({ type: 'selector.turn', to: 'high' });
  bench.send({ type: 'range.turn', to: 15 });
  bench.send({ type: 'lead.take', lead: 'ammeter.1', grip: 'handle' });
  bench.send({ type: 'lead.take', lead: 'ammeter.2', grip: 'handle' });
  const bars = [...Array(23).keys()];
  const touch = (lead: 'ammeter.1' | 'ammeter.2', bar: number) =>
    bench.send({ type: 'lead.touch', lead, place: `bar:${bar}` }).kind === 'done';
  const first = bars.find((bar) => touch('ammeter.1', bar))!;
  bars.slice(first + 4).find((bar) => touch('ammeter.2', bar));
};

describe('a bench in this program', () => {
  it('tells watchers of every act, and of the needle until it is at rest', () => {
    reading();
    const acts = told.length;
    expect(acts).toBe(bench.attempt().entries.length);
    clock.pass(6000);
    expect(told.length).toBeGreaterThan(acts + 30);
    expect(told.at(-1)!.needle.atRest).toBe(true);
    expect(told.at(-1)!.needle.deflection).toBeGreaterThan(0);
  });

  it('falls silent when nothing changes, and stops waking up when nothing can', () => {
    reading();
    clock.pass(8000);
    const quiet = told.length;
    clock.pass(3000);
    expect(told.length).toBe(quiet);
    bench.send({ type: 'selector.turn', to: 'off' });
    clock.pass(600_000);
    expect(clock.waiting).toBe(0);
  });

  it('tells of a thermal trip when it happens', () => {
    bench.send({ type: 'selector.turn', to: 'high' });
    clock.pass(200_000);
    const trip = told.find((seen) => seen.supply === 'isolated')!;
    expect(trip.stopped).not.toBeNull();
    const last = told[told.indexOf(trip) - 1]!;
    expect(last.supply).toBe('on');
    expect(trip.atMs).toBeLessThan(200_000);
  });

  it('tells whoever overhears of a rule broken by time alone, once, though nothing is to be seen', () => {
    const heard: string[] = [];
    bench.overhear((breach) => heard.push(breach.interlock));
    bench.send({ type: 'armature.place' });
    bench.send({ type: 'selector.turn', to: 'high' });
    clock.pass(59_900);
    expect(heard).toEqual([]);
    clock.pass(300);
    expect(heard).toEqual(['leftOn']);
    bench.send({ type: 'selector.turn', to: 'off' });
    clock.pass(100_000);
    expect(heard).toEqual(['leftOn']);
  });

  it('runs on simulated time, which stands still while paused', () => {
    clock.pass(1000);
    bench.pause();
    clock.pass(50_000);
    expect(bench.look().atMs).toBe(1000);
    expect(clock.waiting).toBe(0);
    bench.resume();
    clock.pass(500);
    expect(bench.look().atMs).toBe(1500);
    bench.resume();
    expect(bench.look().atMs).toBe(1500);
  });

  it('leaves a watcher alone who has gone', () => {
    let heard = 0;
    const stop = bench.watch(() => {
      heard += 1;
    });
    bench.send({ type: 'armature.place' });
    stop();
    bench.send({ type: 'armature.lift' });
    expect(heard).toBe(1);
    bench.close();
    expect(clock.waiting).toBe(0);
  });

  it('goes on after a reload as if nothing had been', () => {
    reading();
    clock.pass(1234);
    const stored = JSON.parse(JSON.stringify(bench.attempt()));
    const later = new HandClock();
    const resumed = resumeLocalBench(stored, PARTS, later);
    if (!resumed.ok) throw new Error(JSON.stringify(resumed.firstDivergence));
    expect(resumed.bench.look()).toEqual(bench.look());
    later.pass(700);
    clock.pass(700);
    resumed.bench.send({ type: 'armature.turn', byDeg: 31 });
    bench.send({ type: 'armature.turn', byDeg: 31 });
    later.pass(2000);
    clock.pass(2000);
    expect(resumed.bench.attempt()).toEqual(bench.attempt());
    expect(resumed.bench.look()).toEqual(bench.look());
  });

  it('is marked as it was begun: an attempt from before points were whole does not become one of today', () => {
    expect(bench.attempt()).not.toHaveProperty('points');
    for (const begun of [bench.attempt(), { ...bench.attempt(), points: 'whole' } as const]) {
      const read = parseAttempt(JSON.parse(JSON.stringify(begun)), PARTS);
      if (!read.ok) throw new Error(JSON.stringify(read.issues));
      const resumed = resumeLocalBench(read.value, PARTS, clock);
      expect(resumed.ok && resumed.bench.attempt().points).toBe(begun.points);
    }
    const read = parseAttempt({ ...bench.attempt(), points: 'halves' }, PARTS);
    expect(read.ok ? [] : read.issues.map(({ path }) => path)).toEqual(['points']);
  });

  it('says where a stored log does not fit the bench', () => {
    reading();
    const stored = bench.attempt();
    const other = { ...stored, scenario: job({ startRotationDeg: 90 }) };
    const resumed = resumeLocalBench(other, PARTS, clock);
    expect(resumed.ok ? null : resumed.firstDivergence.what).toBe('before.rotationDeg');
  });
});
