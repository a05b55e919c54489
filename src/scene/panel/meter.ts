import { Container, Graphics, type Sprite } from 'pixi.js';
import type { RangeA } from '../../bench/action.ts';
import type { NeedleView } from '../../bench/observation.ts';
import type { Rect } from '../layout.ts';
import type { Easel } from '../studio/easel.ts';
import { HALF_SWEEP, printedScale, type ScaleFraction, sweepAngle } from './meterScale.ts';

/** The ammeter: a face printed for the range in use, a mirror under the scale, a needle over both. */
export class Meter {
  readonly node = new Container();
  private readonly faces = new Map<RangeA, Sprite>();
  private readonly needle = new Container();
  private readonly easel: Easel;
  private readonly make: (range: RangeA) => Sprite;

  constructor(box: Rect, easel: Easel, law: ScaleFraction, lettering: boolean) {
    const { w, h } = box;
    this.easel = easel;
    this.node.position.set(box.x, box.y);
    this.make = (range) =>
      easel.placed(
        'meterFace',
        { w, h, range, scale: printedScale(range, law), lettering },
        { x: 0, y: 0, w, h },
      );
    const pivot = sweepAngle(box.w, box.h);
    this.buildNeedle(pivot.length, Math.max(-14, (pivot.y - box.h + 30) / Math.cos(HALF_SWEEP)));
    this.needle.position.set(pivot.x, pivot.y);
    const glass = easel.placed('meterGlass', { w, h }, { x: 0, y: 0, w, h });
    const faces = new Container();
    this.node.addChild(faces, this.needle, glass);
    this.facesNode = faces;
  }

  private readonly facesNode: Container;

  show(range: RangeA, needle: NeedleView): void {
    const face = this.face(range);
    // The old scale stays until the new one has been printed.
    if (this.easel.hasPainted(face.texture))
      for (const each of this.faces.values()) each.visible = each === face;
    this.needle.rotation = needleAngle(needle.deflection);
  }

  private face(range: RangeA): Sprite {
    const known = this.faces.get(range);
    if (known) return known;
    const face = this.make(range);
    // A graphics processor is never handed a picture that is still empty.
    face.visible = false;
    this.faces.set(range, face);
    this.facesNode.addChild(face);
    return face;
  }

  /** @param from distance from the pivot at which the needle comes out from under the hood, px */
  private buildNeedle(length: number, from: number): void {
    const knee = from + (length - from) * 0.72;
    const shadow = new Graphics()
      .poly([-2.2, -from, 2.2, -from, 0.7, -length, -0.7, -length])
      .fill({ color: 0x000000, alpha: 0.22 });
    shadow.position.set(3, 3);
    const blade = new Graphics()
      .poly([-2.6, -from, 2.6, -from, 1.5, -knee, 0.6, -length, -0.6, -length, -1.5, -knee])
      .fill(0x11181b);
    this.needle.addChild(shadow, blade);
  }
}

/** Needle angle from upright, clockwise positive, rad. */
export function needleAngle(fraction: number): number {
  return -HALF_SWEEP + 2 * HALF_SWEEP * Math.min(1.06, Math.max(-0.03, fraction));
}
