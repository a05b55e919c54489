import { Container, Matrix, Rectangle, Sprite, Texture } from 'pixi.js';
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

  /** One slice: a parallelogram from the foot of its neighbour above, drawn a little long so that none gapes. */
  private add(axisY: number, a: Ring, b: Ring, row: number): void {
    const { source } = this.skin;
    const from = -180 - TILT_DEG + (180 * row) / ROWS;
    const to = from + 180 / ROWS;
    const w = Math.max(1, (b.u - a.u) * source.width);
    const h = source.height / (ROWS * 2 * SKIN_TURNS);
    const texture = new Texture({ source, frame: new Rectangle(a.u * source.width, 0, w, h) });
    const sprite = new Sprite(texture);
    const left = onSide(axisY, a.x, a.radius, from);
    const right = onSide(axisY, b.x, b.radius, from);
    const foot = onSide(axisY, a.x, a.radius, to);
    const across = { x: right.x - left.x + 0.6, y: right.y - left.y };
    const down = { x: foot.x - left.x, y: foot.y - left.y + 0.7 };
    sprite.setFromMatrix(
      new Matrix(across.x / w, across.y / w, down.x / h, down.y / h, left.x, left.y - 0.35),
    );
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
