/** Draws on demand: nothing runs while nothing changes. */
export interface FrameStats {
  /** Pictures drawn so far. */
  readonly frames: number;
  /** Our own script time of the last pictures, ms. */
  readonly scriptMs: readonly number[];
}

const KEPT = 600;
/** Pictures slower than this, one after another, ask for less detail, ms between two. */
const SLOW_MS = 42;
const SLOW_RUN = 14;

/**
 * Draws one picture.
 * @param running it follows close upon another
 * @returns whether something still moves
 */
export type Draw = (nowMs: number, dtMs: number, running: boolean) => boolean;

/**
 * One animation frame at a time, asked for when something changed and again while `draw` says that something moves.
 */
export class FrameLoop {
  private readonly draw: Draw;
  private readonly tooSlow: () => void;
  private asked = 0;
  private last = 0;
  private slow = 0;
  private count = 0;
  private readonly script: number[] = [];

  constructor(draw: Draw, tooSlow: () => void) {
    this.draw = draw;
    this.tooSlow = tooSlow;
  }

  request(): void {
    if (this.asked === 0) this.asked = requestAnimationFrame(this.tick);
  }

  stop(): void {
    cancelAnimationFrame(this.asked);
    this.asked = 0;
  }

  stats(): FrameStats {
    return { frames: this.count, scriptMs: [...this.script] };
  }

  private readonly tick = (nowMs: number): void => {
    this.asked = 0;
    const gap = nowMs - this.last;
    const running = gap < 200;
    this.last = nowMs;
    const began = performance.now();
    const moving = this.draw(nowMs, running ? gap : 16, running);
    this.note(performance.now() - began);
    if (running) this.watch(gap);
    if (moving) this.request();
  };

  private note(ms: number): void {
    this.count += 1;
    this.script.push(ms);
    if (this.script.length > KEPT) this.script.shift();
  }

  private watch(gapMs: number): void {
    this.slow = gapMs > SLOW_MS ? this.slow + 1 : Math.max(0, this.slow - 1);
    if (this.slow < SLOW_RUN) return;
    this.slow = 0;
    this.tooSlow();
  }
}
