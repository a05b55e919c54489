import { Container, Rectangle, Sprite, Texture } from 'pixi.js';
import { SKIN_TURNS } from './paint/skin.ts';
import { fullTurn, onSide, type Point, TILT_DEG } from './project.ts';
import type { Ring } from './turningSkin.ts';

const ROWS = 36;

interface Slice {
  readonly sprite: Sprite;
  readonly texture: Texture;
  readonly row: number;
}

/** A turned part from straight slices of its skin, for a renderer that only knows upright pictures. */
export class SlicedSkin {
  readonly node = new Container();
  private readonly slices: Slice[] = [];
  private readonly skin: Texture;

  constructor(skin: Texture, axisY: number, rings: readonly Ring[]) {
    this.skin = skin;
    for (let i = 0; i + 1 < rings.length; i++) {
      for (let row = 0; row < ROWS; row++) this.add(axisY, rings[i]!, rings[i + 1]!, row);
    }
    this.turnTo(0);
  }

  turnTo(rotationDeg: number): void {
    const { height } = this.skin.source;
    const first = fullTurn(-180 - TILT_DEG - rotationDeg);
    for (const { texture, row } of this.slices) {
      texture.frame.y = Math.min(height - 1, ((first + (180 * row) / ROWS) / (360 * SKIN_TURNS)) * height);
      texture.updateUvs();
    }
  }

  private add(axisY: number, a: Ring, b: Ring, row: number): void {
    const { source } = this.skin;
    const radius = (a.radius + b.radius) / 2;
    const top = onSide(axisY, a.x, radius, -180 - TILT_DEG + (180 * row) / ROWS);
    const foot = onSide(axisY, b.x, radius, -180 - TILT_DEG + (180 * (row + 1)) / ROWS);
    const h = source.height / (ROWS * 2 * SKIN_TURNS);
    const frame = new Rectangle(a.u * source.width, 0, Math.max(1, (b.u - a.u) * source.width), h);
    const texture = new Texture({ source, frame });
    const sprite = new Sprite(texture);
    sprite.position.set(top.x, top.y - 0.5);
    sprite.setSize(Math.max(1, b.x - a.x + 1), Math.max(0.5, foot.y - top.y) + 1);
    this.slices.push({ sprite, texture, row });
    this.node.addChild(sprite);
  }
}

/** A ribbon that stays straight between its two ends. */
export class PlainBlade {
  readonly node: Sprite;

  constructor(texture: Texture) {
    this.node = new Sprite(texture);
    this.node.anchor.set(0, 0.5);
  }

  lay(line: (share: number) => Point, height: number): void {
    const from = line(0);
    const to = line(1);
    this.node.position.set(from.x, from.y);
    this.node.rotation = Math.atan2(to.y - from.y, to.x - from.x);
    this.node.setSize(Math.hypot(to.x - from.x, to.y - from.y), height);
  }
}
