import { Container, Graphics, Sprite, type Texture } from 'pixi.js';
import { BENCH_LEADS, type BenchLead, setOf } from './benchLeads.ts';
import { CABLE_POINTS, cableOf } from './cables.ts';
import type { Cable, Makers } from './makers.ts';
import {
  alongLead,
  endTip,
  isCovered,
  LEAD_BUILD,
  type LeadPose,
  leadPose,
  leadsInSight,
  type Situation,
} from './pose.ts';
import type { Point } from './project.ts';
import type { Easel } from './studio/easel.ts';

interface Drawn {
  readonly probe: Sprite;
  readonly ghost: Sprite;
  readonly clamp: Sprite;
  readonly cable: Cable;
  pose: LeadPose;
}

/** The four leads: probe, cable, and their small likeness in the end view. */
export class Leads {
  /** Behind the armature, under a part brought forward, before everything, and over the end view. */
  readonly back = new Container();
  readonly under = new Container();
  readonly front = new Container();
  readonly end = new Container();
  private readonly arms = new Graphics();
  private readonly drawn = new Map<BenchLead, Drawn>();

  private readonly makers: Makers;

  constructor(easel: Easel, makers: Makers) {
    this.makers = makers;
    this.under.addChild(this.arms);
    const textures = {
      ammeter: probeTexture(easel, 'ammeter'),
      lamp: probeTexture(easel, 'lamp'),
      tester: probeTexture(easel, 'lamp'),
      drop: probeTexture(easel, 'ammeter'),
    };
    const clamp = easel.picture('clamp', { size: 34 }, { x: 0, y: 0, w: 34, h: 34 });
    for (const lead of BENCH_LEADS) this.add(lead, textures[setOf(lead)], clamp, easel);
    for (const lead of BENCH_LEADS)
      this.front.addChild(this.drawn.get(lead)!.probe, this.drawn.get(lead)!.clamp);
  }

  private add(lead: BenchLead, texture: Texture, clampTexture: Texture, easel: Easel): void {
    const probe = probeSprite(texture);
    const ghost = probeSprite(texture);
    const clamp = new Sprite(clampTexture);
    clamp.anchor.set(0.5);
    const lamp = setOf(lead) === 'lamp';
    const width = lamp ? 7 : 4.6;
    const cableTexture = easel.picture('cable', { width, lamp }, { x: 0, y: 0, w: 8, h: width });
    const colour = lamp ? 0xa83a2f : 0x6a9bb0;
    const cable = this.makers.cable(cableTexture, CABLE_POINTS, width, colour);
    this.front.addChild(cable.node);
    this.end.addChild(ghost);
    const pose = { tip: { x: 0, y: 0 }, angle: 0, scale: 1, behind: false };
    this.drawn.set(lead, { probe, ghost, clamp, cable, pose });
  }

  /** @param wanted pose of each lead now, which may still be on its way to where it rests */
  show(s: Situation, poses: Readonly<Record<BenchLead, LeadPose>>): void {
    this.arms.clear();
    const inSight = leadsInSight(s);
    for (const lead of BENCH_LEADS) {
      const d = this.drawn.get(lead)!;
      const seen = inSight.includes(lead);
      const held = seen && s.seen.leads[lead].at === 'stand';
      d.pose = poses[lead];
      d.probe.visible = seen;
      d.cable.node.visible = seen;
      d.clamp.visible = held;
      this.place(d, s, lead);
      this.placeGhost(d, s, lead);
      if (held) this.drawArm(s, d, lead);
    }
  }

  private place(d: Drawn, s: Situation, lead: BenchLead): void {
    const { probe, clamp, cable, pose } = d;
    const top = isCovered(s, lead) ? this.under : this.front;
    if (cable.node.parent !== top) top.addChild(cable.node, probe, clamp);
    const home = pose.behind ? this.back : top;
    if (probe.parent !== home) home.addChild(probe, clamp);
    probe.position.set(pose.tip.x, pose.tip.y);
    probe.rotation = pose.angle;
    probe.scale.set(pose.scale);
    cable.lay(cableOf(s, lead, pose));
  }

  private placeGhost(d: Drawn, s: Situation, lead: BenchLead): void {
    const at = s.layout.side ? endTip(s, lead) : null;
    d.ghost.visible = at !== null;
    if (!at) return;
    d.ghost.position.set(at.tip.x, at.tip.y);
    d.ghost.rotation = at.angle;
    d.ghost.scale.set(Math.min(0.62, s.layout.end.core / 190));
  }

  /** A jointed steel arm from the stand to the handle it keeps. */
  private drawArm(s: Situation, d: Drawn, lead: BenchLead): void {
    const base = standHead(s, lead);
    const build = LEAD_BUILD[setOf(lead)];
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
export function standHead(s: Situation, lead: BenchLead): Point {
  const r = s.layout.stand;
  return { x: r.x + r.w * (lead.endsWith('1') ? 0.42 : 0.58), y: r.y + r.h * 0.22 };
}

const BLEED = 14;

function probeTexture(easel: Easel, set: 'ammeter' | 'lamp'): Texture {
  const build = LEAD_BUILD[set];
  const w = build.bare + build.neck + build.handle + BLEED * 2;
  const h = Math.max(build.width, build.guard * 2) + BLEED * 2;
  const options = { resolution: Math.max(2, easel.resolution), mipmaps: true };
  return easel.picture('probe', { set, build }, { x: -BLEED, y: -h / 2, w, h }, options);
}

function probeSprite(texture: Texture): Sprite {
  const sprite = new Sprite(texture);
  sprite.anchor.set(BLEED / texture.width, 0.5);
  return sprite;
}

export function restingPoses(s: Situation): Record<BenchLead, LeadPose> {
  return Object.fromEntries(BENCH_LEADS.map((lead) => [lead, leadPose(s, lead)])) as Record<
    BenchLead,
    LeadPose
  >;
}
