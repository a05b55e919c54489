import { Container, Sprite, type Texture } from 'pixi.js';
import type { ArmatureView } from '../scenario/public/job.ts';
import type { Rect } from './layout.ts';
import type { Makers, Skin } from './makers.ts';
import { paintBarFace, paintCoreDisc, paintRiserFace } from './paint/discs.ts';
import {
  COPPER_FINISH,
  type Finish,
  IRON_FINISH,
  SHAFT_FINISH,
  shadeCorner,
  shadeRings,
  WINDING_FINISH,
} from './paint/shade.ts';
import { paintSkin, type SkinPlan, type Stretch, skinPlan } from './paint/skin.ts';
import { type SideGeometry, TILT_DEG, YAW } from './project.ts';
import { disc, linear, type Pen, painted, still } from './surface.ts';
import type { Ring } from './turningSkin.ts';

const RAD = Math.PI / 180;

interface Corner {
  readonly from: 'start' | 'end';
  readonly depth: number;
}

/** The armature as a solid in the main view. Built once; per frame only the skin shifts and the end faces turn. */
export class ArmatureSide {
  readonly node = new Container();
  private readonly skins: Skin[] = [];
  private readonly makers: Makers;
  private readonly faces: Sprite[] = [];
  private readonly g: SideGeometry;
  private readonly plan: SkinPlan;
  private readonly resolution: number;

  constructor(part: ArmatureView, g: SideGeometry, resolution: number, makers: Makers) {
    this.g = g;
    this.makers = makers;
    this.resolution = resolution;
    this.plan = skinPlan(part, g);
    const skinResolution = Math.min(resolution, 2040 / this.plan.height, 3);
    const skin = painted(
      this.plan.width,
      this.plan.height,
      Math.max(1, skinResolution),
      (pen) => paintSkin(pen, this.plan),
      true,
    );
    this.build(part, skin);
  }

  turnTo(rotationDeg: number): void {
    for (const skin of this.skins) skin.turnTo(rotationDeg);
    for (const face of this.faces) face.rotation = -(rotationDeg + TILT_DEG) * RAD;
  }

  private build(part: ArmatureView, skin: Texture): void {
    const { x, r } = this.g;
    const { plan } = this;
    this.addShaft(x.shaftLeft, x.windLeft + r.core * 0.2, 'left');
    this.addStretch(skin, leftWinding(this.g, plan.windLeft), WINDING_FINISH, {
      from: 'end',
      depth: r.core * 0.16,
    });
    this.addStretch(skin, straight(plan.core, x.coreLeft, r.core, plan), IRON_FINISH, null);
    this.addFace(x.coreRight, r.core, (pen) => paintCoreFace(pen, part, r.core));
    this.addStretch(skin, rightWinding(this.g, plan.windRight), WINDING_FINISH, {
      from: 'start',
      depth: r.core * 0.2,
    });
    this.addStretch(skin, straight(plan.riser, x.riserLeft, r.riser, plan), COPPER_FINISH, null);
    this.addFace(x.commLeft, r.riser, (pen) => paintRiserFace(pen, part, r.riser));
    this.addStretch(skin, straight(plan.comm, x.commLeft, r.comm, plan), COPPER_FINISH, {
      from: 'start',
      depth: r.core * 0.06,
    });
    this.addFace(x.commRight, r.comm, (pen) => paintBarFace(pen, part, r.comm, r.shaft));
    this.addShaft(x.commRight, x.shaftRight, 'right');
  }

  private addStretch(skin: Texture, rings: readonly Ring[], finish: Finish, corner: Corner | null): void {
    const { axisY } = this.g;
    const turning = this.makers.skin(skin, axisY, withSkin(rings, this.plan));
    this.skins.push(turning);
    this.node.addChild(turning.node);
    const left = Math.min(...rings.map((ring) => ring.x - YAW * ring.radius)) - 4;
    const right = Math.max(...rings.map((ring) => ring.x)) + 4;
    const radius = Math.max(...rings.map((ring) => ring.radius)) + 3;
    this.addStill({ x: left, y: axisY - radius, w: right - left, h: radius * 2 }, (pen) => {
      shadeRings(pen, axisY, rings, finish);
      if (corner) shadeCorner(pen, axisY, rings, corner.depth, corner.from);
    });
  }

  /** A round face across the shaft, seen nearly edge-on. */
  private addFace(x: number, radius: number, draw: (pen: Pen) => void): void {
    const size = radius * 2 + 4;
    // Squeezed five to one: fewer pixels to begin with alias less, and cost less than smaller copies would.
    const texture = painted(size, size, this.resolution * 0.7, (pen) => {
      pen.translate(size / 2, size / 2);
      draw(pen);
    });
    const face = new Sprite(texture);
    face.anchor.set(0.5);
    const squeezed = new Container();
    squeezed.position.set(x, this.g.axisY);
    squeezed.scale.set(YAW, 1);
    squeezed.addChild(face);
    this.faces.push(face);
    this.node.addChild(squeezed);
  }

  private addShaft(from: number, to: number, end: 'left' | 'right'): void {
    const { axisY, r } = this.g;
    const h = r.shaft * 2 + 6;
    const w = to - from + r.shaft + 8;
    this.addStill({ x: from - r.shaft * YAW - 4, y: axisY - h / 2, w, h }, (pen) => {
      if (end === 'right') paintRightShaft(pen, this.g, from, to);
      else paintLeftShaft(pen, this.g, from, to);
    });
  }

  private addStill(box: Rect, draw: (pen: Pen) => void): void {
    this.node.addChild(still(box, this.resolution, draw));
  }
}

/** Fills in where on the skin each ring lies, from its place along the shaft. */
function withSkin(rings: readonly Ring[], plan: SkinPlan): Ring[] {
  return rings.map((ring) => ({ ...ring, u: ring.u / plan.width }));
}

function straight(stretch: Stretch, x: number, radius: number, _plan: SkinPlan): Ring[] {
  return [
    { x, radius, u: stretch.from + 0.5 },
    { x: x + stretch.to - stretch.from, radius, u: stretch.to - 0.5 },
  ];
}

function along(stretch: Stretch, x: number, profile: readonly (readonly [number, number])[]): Ring[] {
  const w = stretch.to - stretch.from;
  return profile.map(([at, radius]) => ({ x: x + w * at, radius, u: stretch.from + 0.5 + (w - 1) * at }));
}

function leftWinding(g: SideGeometry, stretch: Stretch): Ring[] {
  const R = g.r.core;
  return along(stretch, g.x.windLeft, [
    [0, R * 0.62],
    [0.06, R * 0.72],
    [0.16, R * 0.79],
    [0.32, R * 0.83],
    [0.6, R * 0.85],
    [1, R * 0.86],
  ]);
}

function rightWinding(g: SideGeometry, stretch: Stretch): Ring[] {
  const R = g.r.core;
  const end = g.r.riser * 0.93;
  return along(stretch, g.x.coreRight, [
    [0, R * 0.87],
    [0.3, R * 0.86],
    [0.55, (R * 0.855 + end) / 2],
    [0.78, end * 0.985],
    [1, end],
  ]);
}

function paintCoreFace(pen: Pen, part: ArmatureView, R: number): void {
  paintCoreDisc(pen, part, { x: 0, y: 0, core: R, riser: 0, comm: 0, commInner: 0, shaft: 0, pxPerM: 1 });
  disc(pen, 0, 0, R, 'rgba(6,14,18,.45)');
}

/** The shaft behind the winding: a bearing seat, a shoulder, the splined drive end. */
function paintLeftShaft(pen: Pen, g: SideGeometry, from: number, to: number): void {
  const r = g.r.shaft;
  const w = to - from;
  const ring = (x: number, radius: number): Ring => ({ x, radius, u: 0 });
  shadeRings(pen, g.axisY, [ring(from + w * 0.02, r * 0.6), ring(from + w * 0.05, r * 0.7)], SHAFT_FINISH);
  shadeRings(pen, g.axisY, [ring(from + w * 0.05, r * 0.72), ring(from + w * 0.36, r * 0.72)], SHAFT_FINISH);
  shadeRings(pen, g.axisY, [ring(from + w * 0.36, r), ring(to, r)], SHAFT_FINISH);
  shadeCorner(pen, g.axisY, [ring(from + w * 0.36, r), ring(to, r)], w * 0.4, 'end', 0.9);
}

/** The shaft before the commutator: seat, groove, turned end with its centre. */
function paintRightShaft(pen: Pen, g: SideGeometry, from: number, to: number): void {
  const r = g.r.shaft;
  const w = to - from;
  const ring = (x: number, radius: number): Ring => ({ x, radius, u: 0 });
  shadeRings(pen, g.axisY, [ring(from, r), ring(from + w * 0.42, r)], SHAFT_FINISH);
  shadeRings(pen, g.axisY, [ring(from + w * 0.42, r * 0.88), ring(from + w * 0.47, r * 0.88)], SHAFT_FINISH);
  shadeRings(pen, g.axisY, [ring(from + w * 0.47, r * 0.96), ring(to, r * 0.96)], SHAFT_FINISH);
  shadeCorner(pen, g.axisY, [ring(from, r), ring(from + w * 0.42, r)], w * 0.2, 'start', 0.5);
  pen.save();
  pen.translate(to, g.axisY);
  pen.scale(YAW, 1);
  disc(
    pen,
    0,
    0,
    r * 0.96,
    linear(pen, -r, -r, r, r, [
      [0, '#e9efef'],
      [0.5, '#aab5b8'],
      [1, '#69767b'],
    ]),
  );
  disc(pen, 0, 0, r * 0.24, '#222a2e');
  pen.restore();
}
