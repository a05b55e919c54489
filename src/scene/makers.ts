import {
  type Container,
  Graphics,
  MeshRope,
  Point as PixiPoint,
  type RopeGeometry,
  type Texture,
} from 'pixi.js';
import { Blade } from './blade.ts';
import { MappedSkin, readsPixels } from './mappedSkin.ts';
import { PlainBlade, SlicedSkin } from './plain.ts';
import type { Point } from './project.ts';
import { type Ring, TurningSkin } from './turningSkin.ts';

/** The outside of a turned part, showing the rows of its skin that face the eye. */
export interface Skin {
  readonly node: Container;
  /** @param rotationDeg rotation of the part, degrees */
  turnTo(rotationDeg: number): void;
}

/** A ribbon laid along a line. */
export interface Ribbon {
  readonly node: Container;
  /** @param line middle line for a share 0..1 of the length, px; @param height drawn height, px */
  lay(line: (share: number) => Point, height: number): void;
}

/** A cable through a row of points. */
export interface Cable {
  readonly node: Container;
  lay(points: readonly Point[]): void;
}

/** The three things that bend, made for a renderer that can bend pictures or for one that cannot. */
export interface Makers {
  /** @param resolution device px per CSS px of the bench */
  skin(texture: Texture, axisY: number, rings: readonly Ring[], resolution: number): Skin;
  ribbon(texture: Texture): Ribbon;
  cable(texture: Texture, count: number, width: number, colour: number): Cable;
}

class RopeCable implements Cable {
  readonly node: MeshRope;
  private readonly points: PixiPoint[];

  constructor(texture: Texture, count: number, width: number) {
    this.points = Array.from({ length: count }, () => new PixiPoint());
    this.node = new MeshRope({ texture, points: this.points, width });
    this.node.autoUpdate = false;
  }

  lay(points: readonly Point[]): void {
    for (const [i, p] of points.entries()) this.points[i]!.set(p.x, p.y);
    (this.node.geometry as RopeGeometry).update();
  }
}

class DrawnCable implements Cable {
  readonly node = new Graphics();
  private laid: readonly Point[] = [];
  private readonly width: number;
  private readonly colour: number;

  constructor(width: number, colour: number) {
    this.width = width;
    this.colour = colour;
  }

  lay(points: readonly Point[]): void {
    // Drawn anew it would count as changed, and so would the bench round it.
    if (isSameLine(points, this.laid)) return;
    this.laid = points;
    this.node.clear();
    for (const [width, colour] of [
      [this.width, 0x0c1416],
      [this.width * 0.62, this.colour],
    ] as const) {
      this.node.moveTo(points[0]!.x, points[0]!.y);
      for (const p of points.slice(1)) this.node.lineTo(p.x, p.y);
      this.node.stroke({ width, color: colour, cap: 'round', join: 'round' });
    }
  }
}

function isSameLine(a: readonly Point[], b: readonly Point[]): boolean {
  return a.length === b.length && a.every(({ x, y }, i) => x === b[i]!.x && y === b[i]!.y);
}

export const bendingMakers: Makers = {
  skin: (texture, axisY, rings) => new TurningSkin(texture, axisY, rings),
  ribbon: (texture) => new Blade(texture),
  cable: (texture, count, width) => new RopeCable(texture, count, width),
};

/** For a browser without WebGL: a skin laid px by px and drawn lines, a little stiffer, everything still there. */
export const plainMakers: Makers = {
  skin: (texture, axisY, rings, resolution) =>
    readsPixels() ? new MappedSkin(texture, axisY, rings, resolution) : new SlicedSkin(texture, axisY, rings),
  ribbon: (texture) => new PlainBlade(texture),
  cable: (_texture, _count, width, colour) => new DrawnCable(width, colour),
};
