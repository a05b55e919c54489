import type { Clock } from '../link/clock.ts';

/** Real time in a browser: with the next picture, or after a while. */
export const browserClock: Clock = {
  nowMs: () => performance.now(),
  schedule(call, afterMs) {
    if (afterMs === 0) {
      const frame = requestAnimationFrame(call);
      return () => cancelAnimationFrame(frame);
    }
    const timer = setTimeout(call, afterMs);
    return () => clearTimeout(timer);
  },
};
