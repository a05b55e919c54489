import { Container, Sprite, type Texture } from 'pixi.js';
import { barAngleDeg } from '../bench/geometry.ts';
import type { ArmatureView } from '../scenario/public/job.ts';
import { type EndGeometry, onEnd, onSide, type SideGeometry } from './project.ts';
import type { Easel } from './studio/easel.ts';

/** What is fixed to single bars: the chalk mark, and in guided work the numbers counted from it. */
export class Marks {
  readonly side = new Container();
  readonly end = new Container();
  private readonly sideFigures = new Container();
  private readonly sideChalk: Sprite;
  private readonly endChalk: Sprite;
  private readonly sideNumbers: Sprite[] = [];
  private readonly endNumbers: Sprite[] = [];
  private readonly part: ArmatureView;
  private readonly g: SideGeometry | null;
  private readonly e: EndGeometry;

  constructor(part: ArmatureView, g: SideGeometry | null, e: EndGeometry, easel: Easel, numbered: boolean) {
    this.part = part;
    this.g = g;
    this.e = e;
    const radius = g?.r.comm ?? e.comm;
    const pitch = (2 * Math.PI * radius) / part.bars;
    const width = g ? (g.x.commRight - g.x.commLeft) * 0.3 : 20;
    const chalk = (w: number, h: number, resolution: number) =>
      centred(easel.picture('chalkMark', { w, h }, { x: 0, y: 0, w, h }, { resolution }));
    this.sideChalk = chalk(width, pitch, easel.resolution * 1.5);
    const endSize = Math.max(10, ((2 * Math.PI * e.comm) / part.bars) * 0.9);
    this.endChalk = chalk(endSize, e.comm - e.commInner, easel.resolution);
    this.side.addChild(this.sideChalk, this.sideFigures);
    this.end.addChild(this.endChalk);
    if (numbered) this.addNumbers(easel);
  }

  /** @param near the part lies large enough in the main view for its numbers to be read */
  show(chalked: number | null, rotationDeg: number, near: boolean): void {
    this.sideChalk.visible = chalked !== null && this.g !== null;
    this.endChalk.visible = chalked !== null;
    if (chalked !== null) this.placeChalk(chalked, rotationDeg);
    this.sideFigures.visible = near;
    for (let bar = 0; bar < this.endNumbers.length; bar++) this.placeNumber(bar, chalked ?? 0, rotationDeg);
  }

  private placeChalk(bar: number, rotationDeg: number): void {
    const deg = barAngleDeg(this.part, bar, rotationDeg);
    const p = onEnd(this.e, (this.e.comm + this.e.commInner) / 2, deg);
    this.endChalk.position.set(p.x, p.y);
    this.endChalk.rotation = (-deg * Math.PI) / 180;
    this.onFront(this.sideChalk, deg, 0.16);
  }

  private placeNumber(bar: number, first: number, rotationDeg: number): void {
    const { bars } = this.part;
    const deg = barAngleDeg(this.part, (bar + first) % bars, rotationDeg);
    const p = onEnd(this.e, this.e.comm * 0.9, deg);
    this.endNumbers[bar]!.position.set(p.x, p.y);
    const side = this.sideNumbers[bar];
    if (side) this.onFront(side, deg, 0.86);
  }

  private onFront(sprite: Sprite, deg: number, share: number): void {
    const g = this.g;
    if (!g) return;
    const p = onSide(g.axisY, g.x.commLeft + (g.x.commRight - g.x.commLeft) * share, g.r.comm, deg);
    sprite.visible = p.facing > 0.12;
    sprite.position.set(p.x, p.y);
    sprite.scale.y = Math.max(0.05, p.facing);
  }

  private addNumbers(easel: Easel): void {
    for (let n = 0; n < this.part.bars; n++) {
      const box = { x: 0, y: 0, w: 24, h: 16 };
      const texture = easel.picture('barNumber', { n }, box, { resolution: easel.resolution * 1.5 });
      const end = centred(texture);
      end.scale.set(Math.min(0.82, this.e.core / 130));
      this.endNumbers.push(end);
      this.end.addChild(end);
      if (!this.g) continue;
      const side = centred(texture);
      this.sideNumbers.push(side);
      this.sideFigures.addChild(side);
    }
  }
}

function centred(texture: Texture): Sprite {
  const sprite = new Sprite(texture);
  sprite.anchor.set(0.5);
  return sprite;
}
