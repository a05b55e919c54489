import { describe, expect, it } from 'vitest';
import type { Entry } from '../../../src/attempt/entry.ts';
import type { Observation } from '../../../src/bench/observation.ts';
import { lastAct, type Playback } from '../../../src/records/playback.ts';
import { Player, type PlayerClock } from '../../../src/screens/assessor/player/player.ts';

const ACTS_AT = [1000, 2000, 2500, 30_000];
const entries = ACTS_AT.map((atMs, n) => ({ n, atMs }) as unknown as Entry);

/** A playback that shows nothing but the time, and tells how it was asked. */
function fakePlayback() {
  const asked: string[] = [];
  const sight = (atMs: number) => ({ atMs }) as Observation;
  const playback: Playback = {
    endMs: 40_000,
    at: (ms) => {
      asked.push(`at ${ms}`);
      return sight(ms);
    },
    near: (ms) => {
      asked.push(`near ${ms}`);
      return sight(entries[lastAct(entries, ms)]?.atMs ?? 0);
    },
  };
  return { playback, asked };
}

/** Time that passes when told to. */
function fakeClock() {
  let now = 0;
  let frames: (() => void)[] = [];
  const waiting: { call: () => void; atMs: number }[] = [];
  const clock: PlayerClock = {
    nowMs: () => now,
    frame: (call) => {
      frames.push(call);
      return () => {
        frames = frames.filter((one) => one !== call);
      };
    },
    later: (call, afterMs) => {
      const entry = { call, atMs: now + afterMs };
      waiting.push(entry);
      return () => void waiting.splice(0, waiting.length, ...waiting.filter((one) => one !== entry));
    },
  };
  const pass = (ms: number) => {
    now += ms;
    for (const due of waiting.filter(({ atMs }) => atMs <= now)) {
      waiting.splice(waiting.indexOf(due), 1);
      due.call();
    }
    const due = frames;
    frames = [];
    for (const call of due) call();
  };
  return { clock, pass };
}

function opened() {
  const { playback, asked } = fakePlayback();
  const { clock, pass } = fakeClock();
  return { player: new Player(playback, entries, clock), asked, pass };
}

describe('a player', () => {
  it('runs with real time, at the speed asked for, and stops at the end', () => {
    const { player, pass } = opened();
    player.setSkipping(false);
    player.play();
    pass(500);
    expect(player.now()).toMatchObject({ atMs: 500, entry: -1, playing: true });
    player.setSpeed(4);
    pass(500);
    expect(player.now()).toMatchObject({ atMs: 2500, entry: 2 });
    pass(60_000);
    expect(player.now()).toMatchObject({ atMs: 40_000, entry: 3, playing: false });
    player.play();
    expect(player.now()).toMatchObject({ atMs: 0, playing: true });
  });

  it('passes over pauses, going on shortly before the next act', () => {
    const { player, pass } = opened();
    player.goToEntry(2);
    player.play();
    pass(1000);
    expect(player.now().atMs).toBe(3500);
    pass(1500);
    expect(player.now().atMs).toBe(28_800);
    pass(1300);
    expect(player.now().entry).toBe(3);
  });

  it('stands still while paused', () => {
    const { player, pass } = opened();
    player.play();
    pass(300);
    player.pause();
    pass(5000);
    expect(player.now()).toMatchObject({ atMs: 300, playing: false });
  });

  it('steps act by act and stops doing so at both ends', () => {
    const { player } = opened();
    player.step(1);
    expect(player.now()).toMatchObject({ atMs: 1000, entry: 0 });
    player.step(1);
    player.step(1);
    player.step(1);
    expect(player.now().entry).toBe(3);
    player.step(1);
    expect(player.now().atMs).toBe(40_000);
    player.goToEntry(0);
    player.step(-1);
    expect(player.now()).toMatchObject({ atMs: 0, entry: -1 });
  });

  it('shows the act before at once when going back, and the exact sight when the hand rests', () => {
    const { player, asked, pass } = opened();
    const sights: number[] = [];
    player.port.watch((seen) => sights.push(seen.atMs));
    player.goTo(20_000);
    player.goTo(10_000);
    expect(asked.at(-1)).toBe('near 10000');
    expect(player.port.look().atMs).toBe(2500);
    pass(200);
    expect(asked.at(-1)).toBe('at 10000');
    expect(sights).toEqual([20_000, 2500, 10_000]);
  });

  it('keeps within the attempt and does nothing at the bench', () => {
    const { player } = opened();
    player.goTo(-5);
    expect(player.now().atMs).toBe(0);
    player.goTo(1e9);
    expect(player.now().atMs).toBe(40_000);
    player.goToEntry(99);
    expect(player.now().atMs).toBe(40_000);
    expect(player.port.send({ type: 'armature.lift' }).kind).toBe('refused');
  });

  it('falls silent once closed', () => {
    const { player, pass } = opened();
    let told = 0;
    player.watch(() => told++);
    player.play();
    player.close();
    const before = told;
    pass(1000);
    expect(told).toBe(before);
  });
});
