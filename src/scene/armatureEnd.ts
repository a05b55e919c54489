import { Container, Sprite } from 'pixi.js';
import type { ArmatureView } from '../scenario/public/job.ts';
import type { EndGeometry } from './project.ts';
import type { Easel } from './studio/easel.ts';
import { around } from './studio/order.ts';

const RAD = Math.PI / 180;

/** The armature seen from the commutator end: two discs that turn under light that does not. */
export class ArmatureEnd {
  readonly node = new Container();
  /** Turns with the part; what is fixed to the part (chalk, numbers) is added here. */
  readonly turning = new Container();
  /** Shadow over what no hand in front gets to while the part lies in the cradle. */
  readonly beyondReach = new Container();

  constructor(part: ArmatureView, g: EndGeometry, easel: Easel) {
    this.node.position.set(g.x, g.y);
    const under = new Container();
    const over = new Container();
    for (const [parent, radius, name] of [
      [under, g.core * 1.06, 'endShadow'],
      [this.turning, g.core, 'endPart'],
      [over, g.core, 'endLight'],
      [this.beyondReach, g.riser, 'endBeyondReach'],
    ] as const) {
      const sprite = new Sprite(easel.picture(name, { part, g }, around(radius * 2 + 10)));
      sprite.anchor.set(0.5);
      parent.addChild(sprite);
    }
    this.node.addChild(under, this.turning, over, this.beyondReach);
  }

  turnTo(rotationDeg: number): void {
    this.turning.rotation = -rotationDeg * RAD;
  }
}
