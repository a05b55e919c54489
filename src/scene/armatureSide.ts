import { Container, Sprite, type Texture } from 'pixi.js';
import type { ArmatureView } from '../scenario/public/job.ts';
import type { Makers, Skin } from './makers.ts';
import type { Shading } from './paint/armatureStills.ts';
import { type SideGeometry, TILT_DEG, YAW } from './project.ts';
import { type SkinPlan, type Stretch, skinPlan } from './skinPlan.ts';
import type { Easel } from './studio/easel.ts';
import { around } from './studio/order.ts';
import type { Ring } from './turningSkin.ts';

const RAD = Math.PI / 180;

/** The armature as a solid in the main view. Built once; per frame only the skin shifts and the end faces turn. */
export class ArmatureSide {
  readonly node = new Container();
  private readonly skins: Skin[] = [];
  private readonly makers: Makers;
  private readonly faces: Sprite[] = [];
  private readonly g: SideGeometry;
  private readonly plan: SkinPlan;
  private readonly easel: Easel;

  constructor(part: ArmatureView, g: SideGeometry, easel: Easel, makers: Makers) {
    this.g = g;
    this.makers = makers;
    this.easel = easel;
    this.plan = skinPlan(part, g);
    const { width, height } = this.plan;
    const resolution = Math.max(1, Math.min(easel.resolution, 2040 / height, 3));
    const skin = easel.picture(
      'skin',
      { plan: this.plan },
      { x: 0, y: 0, w: width, h: height },
      { resolution, mipmaps: true },
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
    this.addStretch(skin, leftWinding(this.g, plan.windLeft), 'winding', {
      from: 'end',
      depth: r.core * 0.16,
    });
    this.addStretch(skin, straight(plan.core, x.coreLeft, r.core), 'iron', null);
    this.addFace(x.coreRight, r.core, 'coreFace', part);
    this.addStretch(skin, rightWinding(this.g, plan.windRight), 'winding', {
      from: 'start',
      depth: r.core * 0.2,
    });
    this.addStretch(skin, straight(plan.riser, x.riserLeft, r.riser), 'copper', null);
    this.addFace(x.commLeft, r.riser, 'riserFace', part);
    this.addStretch(skin, straight(plan.comm, x.commLeft, r.comm), 'copper', {
      from: 'start',
      depth: r.core * 0.06,
    });
    this.addFace(x.commRight, r.comm, 'barFace', part);
    this.addShaft(x.commRight, x.shaftRight, 'right');
  }

  private addStretch(
    skin: Texture,
    rings: readonly Ring[],
    finish: Shading['finish'],
    corner: Shading['corner'],
  ): void {
    const { axisY } = this.g;
    const turning = this.makers.skin(skin, axisY, withSkin(rings, this.plan), this.easel.resolution);
    this.skins.push(turning);
    this.node.addChild(turning.node);
    const left = Math.min(...rings.map((ring) => ring.x - YAW * ring.radius)) - 4;
    const right = Math.max(...rings.map((ring) => ring.x)) + 4;
    const radius = Math.max(...rings.map((ring) => ring.radius)) + 3;
    const box = { x: left, y: axisY - radius, w: right - left, h: radius * 2 };
    this.node.addChild(this.easel.still('shading', { axisY, rings, finish, corner }, box));
  }

  /** A round face across the shaft, seen nearly edge-on. */
  private addFace(
    x: number,
    radius: number,
    name: 'coreFace' | 'riserFace' | 'barFace',
    part: ArmatureView,
  ): void {
    const args = { part, radius, shaft: this.g.r.shaft };
    // Squeezed five to one: fewer pixels to begin with alias less, and cost less than smaller copies would.
    const resolution = this.easel.resolution * 0.7;
    const face = new Sprite(this.easel.picture(name, args, around(radius * 2 + 4), { resolution }));
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
    const box = { x: from - r.shaft * YAW - 4, y: axisY - h / 2, w: to - from + r.shaft + 8, h };
    const name = end === 'right' ? 'rightShaft' : 'leftShaft';
    this.node.addChild(this.easel.still(name, { g: this.g, from, to }, box));
  }
}

/** Fills in where on the skin each ring lies, from its place along the shaft. */
function withSkin(rings: readonly Ring[], plan: SkinPlan): Ring[] {
  return rings.map((ring) => ({ ...ring, u: ring.u / plan.width }));
}

function straight(stretch: Stretch, x: number, radius: number): Ring[] {
  return [
    { x, radius, u: stretch.from },
    { x: x + stretch.to - stretch.from, radius, u: stretch.to },
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
