import { Container, Graphics, Sprite } from 'pixi.js';
import { RANGES_A, type RangeA } from '../../bench/action.ts';
import type { NeedleView } from '../../bench/observation.ts';
import type { Rect } from '../layout.ts';
import { paintMeterFace, paintMeterGlass, sweepAngle } from '../paint/meterFace.ts';
import { lettered, painted } from '../surface.ts';

/** Angular fraction of the scale at which a current stands, on a range; both A. The meter's own law gives it. */
export type ScaleFraction = (currentA: number, rangeA: RangeA) => number;

/** The ammeter: a face printed for the range in use, a mirror under the scale, a needle over both. */
export class Meter {
  readonly node = new Container();
  private readonly faces = new Map<RangeA, Sprite>();
  private readonly needle = new Container();
  private readonly make: (range: RangeA) => Sprite;

  constructor(box: Rect, resolution: number, scale: ScaleFraction, lettering: boolean) {
    this.node.position.set(box.x, box.y);
    this.make = (range) =>
      new Sprite(
        painted(
          box.w,
          box.h,
          resolution,
          lettered(lettering, (pen) => paintMeterFace(pen, box.w, box.h, range, scale)),
        ),
      );
    const pivot = sweepAngle(box.w, box.h);
    this.buildNeedle(pivot.length, Math.max(-14, (pivot.y - box.h + 30) / Math.cos(HALF_SWEEP)));
    this.needle.position.set(pivot.x, pivot.y);
    const glass = new Sprite(painted(box.w, box.h, resolution, (pen) => paintMeterGlass(pen, box.w, box.h)));
    const faces = new Container();
    this.node.addChild(faces, this.needle, glass);
    this.facesNode = faces;
  }

  private readonly facesNode: Container;

  show(range: RangeA, needle: NeedleView): void {
    this.face(range);
    for (const each of RANGES_A) {
      const face = this.faces.get(each);
      if (face) face.visible = each === range;
    }
    this.needle.rotation = needleAngle(needle.deflection);
  }

  private face(range: RangeA): void {
    if (this.faces.has(range)) return;
    const face = this.make(range);
    this.faces.set(range, face);
    this.facesNode.addChild(face);
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

/** Half the sweep of the needle either side of upright, rad. */
export const HALF_SWEEP = (46 * Math.PI) / 180;

/** Needle angle from upright, clockwise positive, rad. */
export function needleAngle(fraction: number): number {
  return -HALF_SWEEP + 2 * HALF_SWEEP * Math.min(1.06, Math.max(-0.03, fraction));
}
