import { useEffect, useMemo, useState } from 'preact/hooks';
import type { Run } from '../desk.ts';
import { Player, type PlayerClock, type PlayerState } from './player.ts';

const browserClock: PlayerClock = {
  nowMs: () => performance.now(),
  frame(call) {
    const frame = requestAnimationFrame(call);
    return () => cancelAnimationFrame(frame);
  },
  later(call, afterMs) {
    const timer = setTimeout(call, afterMs);
    return () => clearTimeout(timer);
  },
};

/** How often the words beside a running picture are renewed, ms of what is shown. */
const WORDS_EVERY_MS = 250;

/** A player for one run; a new one whenever the run is another. */
export function usePlayer(run: Run): Player {
  const player = useMemo(() => new Player(run.playback, run.attempt.entries, browserClock), [run]);
  useEffect(() => () => player.close(), [player]);
  return player;
}

/** The state of a player, as often as a reader can follow it. */
export function usePlayerState(player: Player): PlayerState {
  const [, renew] = useState(0);
  useEffect(() => {
    let shown = player.now();
    return player.watch((state) => {
      if (same(shown, state)) return;
      shown = state;
      renew((count) => count + 1);
    });
  }, [player]);
  return player.now();
}

function same(one: PlayerState, other: PlayerState): boolean {
  const { atMs: first, ...rest } = one;
  const { atMs: second, ...others } = other;
  const close =
    Math.floor(first / WORDS_EVERY_MS) === Math.floor(second / WORDS_EVERY_MS) || first === second;
  // A paused player has been put somewhere: the words must be of that very instant.
  return (other.playing ? close : first === second) && JSON.stringify(rest) === JSON.stringify(others);
}
