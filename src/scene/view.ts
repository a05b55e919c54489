import type { Point } from './project.ts';

/** Closest look, times the whole bench. */
const CLOSEST = 3.2;
/** How close a key or button goes. */
const STEP = 2.1;

/**
 * How the bench is looked at: whole, or a part of it closer. A matter of the eye alone: nothing of it is an action, so
 * nothing of it is in the log. `shown` points are px of the host, `bench` points px of the bench as it is laid out.
 */
export class View {
  private readonly changed: () => void;
  private width = 1;
  private height = 1;
  /** Shown px per bench px, 1..CLOSEST. */
  scale = 1;
  /** Where the bench's corner is shown. */
  x = 0;
  y = 0;

  constructor(changed: () => void) {
    this.changed = changed;
  }

  get closer(): boolean {
    return this.scale > 1.001;
  }

  /** @param size size of the host, px; the bench is seen whole again */
  fit(size: { readonly width: number; readonly height: number }): void {
    this.width = size.width;
    this.height = size.height;
    this.whole();
  }

  whole(): void {
    this.look(1, 0, 0);
  }

  /** Closer to a point of the bench, which comes to the middle as far as the bench reaches. */
  closeTo(bench: Point): void {
    this.look(STEP, this.width / 2 - bench.x * STEP, this.height / 2 - bench.y * STEP);
  }

  /** @param factor times closer than now; what is shown at the point stays there */
  zoom(factor: number, shown: Point): void {
    this.pinch(factor, shown, shown);
  }

  /** Two fingers: what was shown between them stays between them. */
  pinch(factor: number, from: Point, to: Point): void {
    const scale = Math.min(CLOSEST, Math.max(1, this.scale * factor));
    const by = scale / this.scale;
    this.look(scale, to.x - (from.x - this.x) * by, to.y - (from.y - this.y) * by);
  }

  shift(byX: number, byY: number): void {
    this.look(this.scale, this.x + byX, this.y + byY);
  }

  toBench(shown: Point): Point {
    return { x: (shown.x - this.x) / this.scale, y: (shown.y - this.y) / this.scale };
  }

  toShown(bench: Point): Point {
    return { x: bench.x * this.scale + this.x, y: bench.y * this.scale + this.y };
  }

  /** The bench always fills the host. */
  private look(scale: number, x: number, y: number): void {
    const nextX = Math.min(0, Math.max(this.width * (1 - scale), x));
    const nextY = Math.min(0, Math.max(this.height * (1 - scale), y));
    if (scale === this.scale && nextX === this.x && nextY === this.y) return;
    this.scale = scale;
    this.x = nextX;
    this.y = nextY;
    this.changed();
  }
}
