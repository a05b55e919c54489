import { Container, Sprite } from 'pixi.js';
import { REACH_CENTRE_DEG, REACH_HALF_DEG } from '../bench/geometry.ts';
import type { ArmatureView } from '../scenario/public/job.ts';
import { paintCommutatorDisc, paintCoreDisc, paintShaftEnd } from './paint/discs.ts';
import type { EndGeometry } from './project.ts';
import { disc, type Pen, painted, radial } from './surface.ts';

const RAD = Math.PI / 180;

/** The armature seen from the commutator end: two discs that turn under light that does not. */
export class ArmatureEnd {
  readonly node = new Container();
  /** Turns with the part; what is fixed to the part (chalk, numbers) is added here. */
  readonly turning = new Container();
  /** Shadow over what no hand in front gets to while the part lies in the cradle. */
  readonly beyondReach = new Container();

  constructor(part: ArmatureView, g: EndGeometry, resolution: number) {
    this.node.position.set(g.x, g.y);
    const add = (parent: Container, radius: number, draw: (pen: Pen) => void) => {
      const size = radius * 2 + 10;
      const sprite = new Sprite(
        painted(size, size, resolution, (pen) => {
          pen.translate(size / 2, size / 2);
          draw(pen);
        }),
      );
      sprite.anchor.set(0.5);
      parent.addChild(sprite);
    };
    const under = new Container();
    add(under, g.core * 1.06, (pen) => disc(pen, 2, 4, g.core * 1.03, 'rgba(0,0,0,.35)'));
    add(this.turning, g.core, (pen) => {
      paintCoreDisc(pen, part, g);
      paintCommutatorDisc(pen, part, g);
    });
    const over = new Container();
    add(over, g.core, (pen) => {
      paintLight(pen, g);
      paintShaftEnd(pen, g);
    });
    add(this.beyondReach, g.riser, (pen) => paintOutOfReach(pen, g));
    this.node.addChild(under, this.turning, over, this.beyondReach);
  }

  turnTo(rotationDeg: number): void {
    this.turning.rotation = -rotationDeg * RAD;
  }
}

/** Light from above and the near side, fixed in space, with a rim where the core turns away. */
function paintLight(pen: Pen, g: EndGeometry): void {
  const R = g.core;
  disc(
    pen,
    0,
    0,
    R,
    radial(pen, -R * 0.35, -R * 0.5, R * 0.05, R * 1.5, [
      [0, 'rgba(255,250,236,.30)'],
      [0.35, 'rgba(255,250,236,.06)'],
      [0.6, 'rgba(0,8,12,.12)'],
      [1, 'rgba(0,8,12,.58)'],
    ]),
  );
  pen.lineWidth = 2;
  pen.strokeStyle = 'rgba(0,0,0,.35)';
  pen.beginPath();
  pen.arc(0, 0, g.riser + 1, 0, Math.PI * 2);
  pen.stroke();
}

/** The far side, where no probe gets to, lies in shadow with a hatch that says so without colour. */
function paintOutOfReach(pen: Pen, g: EndGeometry): void {
  const from = REACH_CENTRE_DEG + REACH_HALF_DEG;
  const to = REACH_CENTRE_DEG - REACH_HALF_DEG + 360;
  const outer = g.riser;
  pen.save();
  pen.beginPath();
  pen.arc(0, 0, outer, (90 - from) * RAD, (90 - to) * RAD, true);
  pen.arc(0, 0, g.commInner, (90 - to) * RAD, (90 - from) * RAD, false);
  pen.closePath();
  pen.fillStyle = 'rgba(4,16,20,.5)';
  pen.fill();
  pen.clip();
  pen.strokeStyle = 'rgba(4,14,18,.5)';
  pen.lineWidth = 2;
  for (let x = -outer; x < outer * 2; x += 8) {
    pen.beginPath();
    pen.moveTo(x, -outer);
    pen.lineTo(x - outer, outer);
    pen.stroke();
  }
  pen.restore();
}
