import type { ArmatureView } from '../../scenario/public/job.ts';
import { disc, linear, type Pen } from '../pen.ts';
import { type SideGeometry, YAW } from '../project.ts';
import type { Ring } from '../turningSkin.ts';
import { paintCoreDisc } from './discs.ts';
import {
  COPPER_FINISH,
  IRON_FINISH,
  SHAFT_FINISH,
  shadeCorner,
  shadeRings,
  WINDING_FINISH,
} from './shade.ts';

const FINISHES = { winding: WINDING_FINISH, iron: IRON_FINISH, copper: COPPER_FINISH } as const;

/** A stretch of the armature's outside: where it lies, and how it takes the light. */
export interface Shading {
  readonly axisY: number;
  readonly rings: readonly Ring[];
  readonly finish: keyof typeof FINISHES;
  /** Shadow where it runs in under a larger neighbour, and how far along it reaches, px. */
  readonly corner: { readonly from: 'start' | 'end'; readonly depth: number } | null;
}

/** Light and shadow over a stretch; they stay in place while the part turns beneath. */
export function paintShading(pen: Pen, { axisY, rings, finish, corner }: Shading): void {
  shadeRings(pen, axisY, rings, FINISHES[finish]);
  if (corner) shadeCorner(pen, axisY, rings, corner.depth, corner.from);
}

export function paintCoreFace(pen: Pen, part: ArmatureView, R: number): void {
  paintCoreDisc(pen, part, { x: 0, y: 0, core: R, riser: 0, comm: 0, commInner: 0, shaft: 0, pxPerM: 1 });
  disc(pen, 0, 0, R, 'rgba(6,14,18,.45)');
}

/** The shaft behind the winding: a bearing seat, a shoulder, the splined drive end. */
export function paintLeftShaft(pen: Pen, g: SideGeometry, from: number, to: number): void {
  const r = g.r.shaft;
  const w = to - from;
  const ring = (x: number, radius: number): Ring => ({ x, radius, u: 0 });
  shadeRings(pen, g.axisY, [ring(from + w * 0.02, r * 0.6), ring(from + w * 0.05, r * 0.7)], SHAFT_FINISH);
  shadeRings(pen, g.axisY, [ring(from + w * 0.05, r * 0.72), ring(from + w * 0.36, r * 0.72)], SHAFT_FINISH);
  shadeRings(pen, g.axisY, [ring(from + w * 0.36, r), ring(to, r)], SHAFT_FINISH);
  shadeCorner(pen, g.axisY, [ring(from + w * 0.36, r), ring(to, r)], w * 0.4, 'end', 0.9);
}

/** The shaft before the commutator: seat, groove, turned end with its centre. */
export function paintRightShaft(pen: Pen, g: SideGeometry, from: number, to: number): void {
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
