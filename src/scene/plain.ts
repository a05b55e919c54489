import { Container, Sprite, type Texture } from 'pixi.js';
import type { Pen } from './pen.ts';
import { fullTurn, onSide, type Point, TILT_DEG } from './project.ts';
import { SKIN_TURNS } from './skinPlan.ts';
import { painted } from './surface.ts';
import type { Ring } from './turningSkin.ts';
import { wholeAround } from './wholePixels.ts';

const ROWS = 26;

/** One straight piece of the skin, and where it lies: from its own px to those of the host, as a canvas takes them. */
interface Slice {
  readonly left: number;
  readonly width: number;
  readonly row: number;
  readonly across: Point;
  readonly down: Point;
  readonly at: Point;
}

/**
 * A turned part from straight slices of its skin, for a renderer that only knows upright pictures in a browser that
 * hands out no px. The slices are laid into one picture, anew only when the part has turned: a part at rest costs a frame one picture, not hundreds.
 */
export class SlicedSkin {
  readonly node = new Container();
  private readonly slices: readonly Slice[];
  private readonly skin: Texture;
  private readonly laid: Texture;
  private readonly pen: Pen;
  private readonly origin: Point;
  private firstDeg: number | null = null;

  constructor(skin: Texture, axisY: number, rings: readonly Ring[]) {
    this.skin = skin;
    const { source } = skin;
    const kept = thinned(rings);
    this.slices = kept
      .slice(1)
      .flatMap((ring, i) =>
        Array.from({ length: ROWS }, (_, row) => slice(axisY, kept[i]!, ring, row, source)),
      );
    const box = around(this.slices);
    this.origin = box;
    let pen: Pen | undefined;
    this.laid = painted(box.w, box.h, source.resolution, (its) => {
      pen = its;
    });
    this.pen = pen!;
    const sprite = new Sprite(this.laid);
    sprite.position.set(box.x, box.y);
    this.node.addChild(sprite);
    source.on('update', () => {
      this.firstDeg = null;
    });
  }

  turnTo(rotationDeg: number): void {
    const first = fullTurn(-180 - TILT_DEG - rotationDeg);
    if (first === this.firstDeg) return;
    this.firstDeg = first;
    this.lay(first);
    this.laid.source.update();
  }

  /** @param firstDeg angle of the skin's row that lies uppermost, degrees */
  private lay(firstDeg: number): void {
    const { pen, origin } = this;
    const { height, resolution: k, resource } = this.skin.source;
    const h = sliceHeight(height);
    pen.setTransform(k, 0, 0, k, 0, 0);
    pen.clearRect(0, 0, this.laid.width, this.laid.height);
    for (const { left, width, row, across, down, at } of this.slices) {
      const y = Math.min(height - 1, ((firstDeg + (180 * row) / ROWS) / (360 * SKIN_TURNS)) * height);
      const x0 = k * (at.x - origin.x);
      const y0 = k * (at.y - origin.y);
      pen.setTransform(k * across.x, k * across.y, k * down.x, k * down.y, x0, y0);
      pen.drawImage(resource as HTMLCanvasElement, left * k, y * k, width * k, h * k, 0, 0, 1, 1);
    }
  }
}

/** Every second ring, and both ends: what a slice costs hardly depends on its size, and a turning part needs them all. */
function thinned(rings: readonly Ring[]): readonly Ring[] {
  return rings.filter((_, i) => i % 2 === 0 || i === rings.length - 1);
}

/** Height of one slice on a skin, px. */
function sliceHeight(skinHeight: number): number {
  return skinHeight / (ROWS * 2 * SKIN_TURNS);
}

/** A parallelogram from the foot of its neighbour above, drawn a little long so that none gapes. */
function slice(axisY: number, a: Ring, b: Ring, row: number, skin: { readonly width: number }): Slice {
  const from = -180 - TILT_DEG + (180 * row) / ROWS;
  const left = onSide(axisY, a.x, a.radius, from);
  const right = onSide(axisY, b.x, b.radius, from);
  const foot = onSide(axisY, a.x, a.radius, from + 180 / ROWS);
  return {
    left: a.u * skin.width,
    width: Math.max(1, (b.u - a.u) * skin.width),
    row,
    across: { x: right.x - left.x + 0.6, y: right.y - left.y },
    down: { x: foot.x - left.x, y: foot.y - left.y + 0.7 },
    at: { x: left.x, y: left.y - 0.35 },
  };
}

/** Whole px round all corners of the slices. */
function around(slices: readonly Slice[]) {
  const corners = slices.flatMap(({ at, across, down }) => [
    at,
    { x: at.x + across.x, y: at.y + across.y },
    { x: at.x + down.x, y: at.y + down.y },
    { x: at.x + across.x + down.x, y: at.y + across.y + down.y },
  ]);
  const x = Math.min(...corners.map((p) => p.x));
  const y = Math.min(...corners.map((p) => p.y));
  const w = Math.max(...corners.map((p) => p.x)) - x;
  const h = Math.max(...corners.map((p) => p.y)) - y;
  return wholeAround({ x, y, w, h });
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
