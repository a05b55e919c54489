import { Container, Sprite } from 'pixi.js';
import type { Rect } from '../layout.ts';
import type { Easel } from '../studio/easel.ts';
import { around } from '../studio/order.ts';
import { selectorShape } from './selectorShape.ts';

/** The bench's main switch: a lever on a boss with three engraved places. */
export class SelectorLever {
  readonly node = new Container();
  private readonly lever: Sprite;

  constructor(box: Rect, easel: Easel, lettering: boolean) {
    const { x, y, r } = selectorShape(box);
    const plate = easel.still('selectorPlate', { box, lettering }, box);
    this.lever = new Sprite(easel.picture('lever', { r }, around(r * 2.6)));
    this.lever.anchor.set(0.5);
    this.lever.position.set(x, y);
    this.node.addChild(plate, this.lever);
  }

  /** @param angle of the lever from upright, rad */
  pointTo(angle: number): void {
    this.lever.rotation = angle;
  }

  get angle(): number {
    return this.lever.rotation;
  }
}
