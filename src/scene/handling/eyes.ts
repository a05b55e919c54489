import type { Point } from '../project.ts';
import type { View } from '../view.ts';
import { far, type Gesture, type Pointer, SLOP } from './desk.ts';

/** A press on nothing: while the bench is looked at closer, it draws the bench along. */
export class PanDrag implements Gesture {
  private readonly view: View;
  private readonly start: Point;
  private last: Point;
  private moving = false;

  constructor(view: View, p: Pointer) {
    this.view = view;
    this.start = p.shown;
    this.last = p.shown;
  }

  move(p: Pointer): void {
    if (!this.moving && far(p.shown, this.start) < SLOP) return;
    this.moving = true;
    this.view.shift(p.shown.x - this.last.x, p.shown.y - this.last.y);
    this.last = p.shown;
  }

  end(): void {}

  cancel(): void {}

  idle(): boolean {
    return !this.moving;
  }
}

/** Two fingers that have taken hold of nothing: apart brings the bench closer, together sends it back. */
export class Pinch {
  private readonly view: View;
  private readonly at = new Map<number, Point>();

  constructor(view: View, a: Pointer, b: Pointer) {
    this.view = view;
    this.at.set(a.id, a.shown);
    this.at.set(b.id, b.shown);
  }

  holds(id: number): boolean {
    return this.at.has(id);
  }

  move(p: Pointer): void {
    const before = this.span();
    this.at.set(p.id, p.shown);
    const after = this.span();
    if (before.apart < 1 || after.apart < 1) return;
    this.view.pinch(after.apart / before.apart, before.middle, after.middle);
  }

  private span(): { readonly apart: number; readonly middle: Point } {
    const [a, b] = [...this.at.values()];
    if (!a || !b) return { apart: 0, middle: { x: 0, y: 0 } };
    return { apart: far(a, b), middle: { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 } };
  }
}

/** How much closer a turn of the wheel brings the bench. @param deltaPx as the browser tells it */
export function wheelFactor(deltaPx: number, pinching: boolean): number {
  const gentle = Math.max(-120, Math.min(120, deltaPx));
  return Math.exp(-gentle * (pinching ? 0.01 : 0.0022));
}
