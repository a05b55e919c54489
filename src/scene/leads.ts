import {
  Container,
  Graphics,
  MeshRope,
  Point as PixiPoint,
  type RopeGeometry,
  Sprite,
  type Texture,
} from 'pixi.js';
import { LEAD_IDS, type LeadId, leadSet } from '../bench/places.ts';
import { paintAmmeterLead, paintCable, paintClamp, paintLampLead } from './paint/probes.ts';
import {
  alongLead,
  endTip,
  LEAD_BUILD,
  type LeadPose,
  leadPose,
  leadTail,
  type Situation,
  socketOf,
} from './pose.ts';
import type { Point } from './project.ts';
import { painted } from './surface.ts';

const CABLE_POINTS = 28;

interface Drawn {
  readonly probe: Sprite;
  readonly ghost: Sprite;
  readonly clamp: Sprite;
  readonly cable: MeshRope;
  readonly points: PixiPoint[];
  pose: LeadPose;
}

/** The four leads: probe, cable, and their small likeness in the end view. */
export class Leads {
  /** Behind the armature, before it, and over the end view. */
  readonly back = new Container();
  readonly front = new Container();
  readonly end = new Container();
  private readonly arms = new Graphics();
  private readonly drawn = new Map<LeadId, Drawn>();

  constructor(resolution: number) {
    this.front.addChild(this.arms);
    const textures = {
      ammeter: probeTexture(resolution, 'ammeter'),
      lamp: probeTexture(resolution, 'lamp'),
    };
    const clamp = painted(34, 34, resolution, (pen) => paintClamp(pen, 34));
    for (const lead of LEAD_IDS) this.add(lead, textures[leadSet(lead)], clamp, resolution);
    for (const lead of LEAD_IDS)
      this.front.addChild(this.drawn.get(lead)!.probe, this.drawn.get(lead)!.clamp);
  }

  private add(lead: LeadId, texture: Texture, clampTexture: Texture, resolution: number): void {
    const probe = probeSprite(texture);
    const ghost = probeSprite(texture);
    const clamp = new Sprite(clampTexture);
    clamp.anchor.set(0.5);
    const points = Array.from({ length: CABLE_POINTS }, () => new PixiPoint());
    const lamp = leadSet(lead) === 'lamp';
    const width = lamp ? 7 : 4.6;
    const cableTexture = painted(8, width, resolution, (pen) => paintCable(pen, 8, width, lamp));
    const cable = new MeshRope({ texture: cableTexture, points, width });
    cable.autoUpdate = false;
    this.front.addChild(cable);
    this.end.addChild(ghost);
    const pose = { tip: { x: 0, y: 0 }, angle: 0, scale: 1, behind: false };
    this.drawn.set(lead, { probe, ghost, clamp, cable, points, pose });
  }

  /** @param wanted pose of each lead now, which may still be on its way to where it rests */
  show(s: Situation, poses: Readonly<Record<LeadId, LeadPose>>): void {
    this.arms.clear();
    for (const lead of LEAD_IDS) {
      const d = this.drawn.get(lead)!;
      d.pose = poses[lead];
      this.place(d, s, lead);
      this.placeGhost(d, s, lead);
      if (s.seen.leads[lead].at === 'stand') this.drawArm(s, d, lead);
      d.clamp.visible = s.seen.leads[lead].at === 'stand';
    }
  }

  private place(d: Drawn, s: Situation, lead: LeadId): void {
    const { probe, pose } = d;
    const home = pose.behind ? this.back : this.front;
    if (probe.parent !== home) home.addChild(probe);
    probe.position.set(pose.tip.x, pose.tip.y);
    probe.rotation = pose.angle;
    probe.scale.set(pose.scale);
    hangCable(d.points, leadTail(pose, lead), pose.angle, socketOf(s.layout, lead), s.layout.panel.frame.y);
    (d.cable.geometry as RopeGeometry).update();
  }

  private placeGhost(d: Drawn, s: Situation, lead: LeadId): void {
    const at = s.layout.side ? endTip(s, lead) : null;
    d.ghost.visible = at !== null;
    if (!at) return;
    d.ghost.position.set(at.tip.x, at.tip.y);
    d.ghost.rotation = at.angle;
    d.ghost.scale.set(Math.min(0.62, d.pose.scale * 0.62));
  }

  /** A jointed steel arm from the stand to the handle it keeps. */
  private drawArm(s: Situation, d: Drawn, lead: LeadId): void {
    const base = standHead(s, lead);
    const build = LEAD_BUILD[leadSet(lead)];
    const grip = alongLead(d.pose, build.bare + build.neck + 30);
    const elbow = {
      x: (base.x + grip.x) / 2 + (lead.endsWith('1') ? -8 : 14),
      y: Math.min(base.y, grip.y) - 16,
    };
    for (const [width, colour, dy] of [
      [8, 0x0a1416, 2],
      [6.5, 0x58686e, 0],
      [2, 0xc4d2d4, -1.4],
    ] as const) {
      this.arms
        .moveTo(base.x, base.y + dy)
        .lineTo(elbow.x, elbow.y + dy)
        .lineTo(grip.x, grip.y + dy);
      this.arms.stroke({ width, color: colour, cap: 'round', join: 'round' });
    }
    this.arms.circle(elbow.x, elbow.y, 6).fill(0x2d3b40).circle(elbow.x, elbow.y, 3).fill(0xb9c8ca);
    d.clamp.position.set(grip.x, grip.y);
    d.clamp.rotation = d.pose.angle;
  }
}

/** Top of the stand's post for one of its two arms. */
export function standHead(s: Situation, lead: LeadId): Point {
  const r = s.layout.stand;
  return { x: r.x + r.w * (lead.endsWith('1') ? 0.42 : 0.58), y: r.y + r.h * 0.22 };
}

const BLEED = 14;

function probeTexture(resolution: number, set: 'ammeter' | 'lamp'): Texture {
  const b = LEAD_BUILD[set];
  const length = b.bare + b.neck + b.handle + BLEED * 2;
  const height = Math.max(b.width, b.guard * 2) + BLEED * 2;
  return painted(
    length,
    height,
    Math.max(2, resolution),
    (pen) => {
      pen.translate(BLEED, height / 2);
      if (set === 'ammeter') paintAmmeterLead(pen, b);
      else paintLampLead(pen, b);
    },
    true,
  );
}

function probeSprite(texture: Texture): Sprite {
  const sprite = new Sprite(texture);
  sprite.anchor.set(BLEED / texture.width, 0.5);
  return sprite;
}

/** A cable leaves the handle in its direction, sags to the bench and rises over its edge to the socket. */
function hangCable(points: PixiPoint[], tail: Point, angle: number, socket: Point, edgeY: number): void {
  const reach = Math.hypot(socket.x - tail.x, socket.y - tail.y);
  const pull = Math.min(90, 24 + reach * 0.28);
  const sag = Math.min(110, reach * 0.34);
  const up = tail.y > edgeY ? 44 : 0;
  const c1 = {
    x: tail.x + Math.cos(angle) * pull,
    y: tail.y + Math.sin(angle) * pull + sag * 0.6 - up * 0.2,
  };
  const c2 = {
    x: socket.x + (tail.x < socket.x ? -reach * 0.06 : reach * 0.06),
    y: edgeY - 34 - up + Math.min(0, sag * -0.1),
  };
  for (let i = 0; i < points.length; i++) {
    const t = i / (points.length - 1);
    const m = 1 - t;
    const a = m * m * m;
    const b = 3 * m * m * t;
    const c = 3 * m * t * t;
    const d = t * t * t;
    points[i]!.set(
      a * tail.x + b * c1.x + c * c2.x + d * socket.x,
      a * tail.y + b * c1.y + c * c2.y + d * socket.y,
    );
  }
}

export function restingPoses(s: Situation): Record<LeadId, LeadPose> {
  return Object.fromEntries(LEAD_IDS.map((lead) => [lead, leadPose(s, lead)])) as Record<LeadId, LeadPose>;
}
