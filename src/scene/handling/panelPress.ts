import type { Selector } from '../../bench/action.ts';
import { selectorShape, selectorToward } from '../panel/selectorShape.ts';
import type { Point } from '../project.ts';
import { type Desk, far, type Gesture, type Pointer } from './desk.ts';

/** The selector: press a word, or take the lever and pull it round. */
export class SelectorPress implements Gesture {
  private readonly desk: Desk;
  private readonly start: Point;

  constructor(desk: Desk, p: Pointer, to: Selector | null) {
    this.desk = desk;
    this.start = p.at;
    if (to) this.turn(to, p.at);
  }

  move(p: Pointer): void {
    const box = this.desk.situation().layout.panel.selector;
    const shape = selectorShape(box);
    if (far(p.at, this.start) < 8 || far(p.at, shape) < shape.r * 0.3) return;
    this.turn(selectorToward(box, p.at), p.at);
  }

  end(): void {}

  cancel(): void {}

  private turn(to: Selector, at: Point): void {
    if (this.desk.situation().seen.selector !== to) this.desk.act({ type: 'selector.turn', to }, at);
  }
}

/** Something that happens on a press and needs no more. */
export const DONE: Gesture = { move() {}, end() {}, cancel() {} };

/** A press on the bare bench. */
export const NOTHING: Gesture = { ...DONE, idle: () => true };
