import { Container, Graphics } from 'pixi.js';
import { BENCH_LEADS, type BenchLead, setOf } from './benchLeads.ts';
import type { Ui } from './handling/desk.ts';
import { TIP_HOLD_MS } from './handling/leadDrag.ts';
import type { Spot } from './handling/spot.ts';
import { AIM, REFUSED } from './materials.ts';
import { alongLead, LEAD_BUILD, leadPose, type Situation } from './pose.ts';
import { onEnd, type Point } from './project.ts';
import type { Shape } from './shapes.ts';

/** Outlines that say what would be touched, what is picked, what was refused and what is hinted at. */
export class Aims {
  readonly node = new Container();
  private readonly pen = new Graphics();

  constructor() {
    this.node.addChild(this.pen);
  }

  show(s: Situation, ui: Ui, nowMs: number, hint: readonly Spot[]): void {
    this.pen.clear();
    for (const spot of hint) this.hint(spot.shape);
    if (ui.hover && ui.aims.size === 0)
      this.outline(ui.hover.shape, ui.armed ? 2.6 : 1.6, ui.armed ? 0.95 : 0.5);
    for (const aim of ui.aims.values()) {
      this.outline(aim.shape, 5, 0.28);
      this.outline(aim.shape, 2.4, 1);
    }
    for (const lead of BENCH_LEADS) if (s.seen.leads[lead].leaning) this.leaning(s, lead);
    if (ui.tipHold) this.tipHold(s, ui.tipHold, nowMs);
    if (ui.refusal && ui.refusal.untilMs > nowMs) this.refusal(ui.refusal.at);
  }

  private trace(shape: Shape, grow: number): Graphics {
    const { pen } = this;
    if (shape.kind === 'circle') return pen.circle(shape.x, shape.y, shape.r + grow);
    if (shape.kind === 'box') {
      return pen.roundRect(shape.x - grow, shape.y - grow, shape.w + 2 * grow, shape.h + 2 * grow, 9);
    }
    if (shape.kind === 'bar') return traceBar(pen, shape.a, shape.b, shape.r + grow);
    const steps = 6;
    const points: number[] = [];
    for (let i = 0; i <= steps; i++) {
      const p = onEnd(shape, shape.outer + grow, shape.deg - shape.halfDeg + (2 * shape.halfDeg * i) / steps);
      points.push(p.x, p.y);
    }
    for (let i = steps; i >= 0; i--) {
      const p = onEnd(shape, shape.inner - grow, shape.deg - shape.halfDeg + (2 * shape.halfDeg * i) / steps);
      points.push(p.x, p.y);
    }
    return pen.poly(closed(points));
  }

  private outline(shape: Shape, width: number, alpha: number): void {
    this.trace(shape, 1).stroke({ width, color: AIM, alpha });
  }

  private hint(shape: Shape): void {
    this.trace(shape, 5).stroke({ width: 7, color: 0xffd27a, alpha: 0.3 });
    this.trace(shape, 5).stroke({ width: 3, color: 0xffd27a, alpha: 1 });
  }

  /** Two chevrons towards the tip: somebody leans on this lead. */
  private leaning(s: Situation, lead: BenchLead): void {
    const pose = leadPose(s, lead);
    const side = { x: -Math.sin(pose.angle) * 22, y: Math.cos(pose.angle) * 22 };
    for (const [i, from] of [46, 60].entries()) {
      const point = alongLead(pose, from);
      const tail = alongLead(pose, from + 10);
      this.pen.moveTo(tail.x + side.x * 1.3, tail.y + side.y * 1.3);
      this.pen.lineTo(point.x + side.x, point.y + side.y);
      this.pen.lineTo(tail.x + side.x * 0.7, tail.y + side.y * 0.7);
      this.pen.stroke({ width: 3, color: 0xffd27a, alpha: 1 - i * 0.3 });
    }
  }

  /** The warning before a bare tip is taken: a closing ring with a hand's four fingers in it. */
  private tipHold(s: Situation, hold: NonNullable<Ui['tipHold']>, nowMs: number): void {
    const pose = leadPose(s, hold.lead);
    const p = alongLead(pose, LEAD_BUILD[setOf(hold.lead)].bare * 0.5);
    const share = Math.min(1, (nowMs - hold.sinceMs) / TIP_HOLD_MS);
    const { pen } = this;
    pen.circle(p.x, p.y, 24).fill({ color: 0x1c0d06, alpha: 0.72 });
    pen.circle(p.x, p.y, 24).stroke({ width: 5, color: 0x6b3520 });
    pen.moveTo(p.x, p.y - 24);
    pen
      .arc(p.x, p.y, 24, -Math.PI / 2, -Math.PI / 2 + Math.PI * 2 * share)
      .stroke({ width: 5, color: 0xffb15e });
    for (let i = 0; i < 4; i++)
      pen.roundRect(p.x - 9 + i * 4.8, p.y - 11 + Math.abs(i - 1.4) * 2, 3.6, 13, 1.8);
    pen.roundRect(p.x - 9, p.y - 2, 18, 13, 5).fill(0xffe2c2);
  }

  /** A barred round: refused. */
  private refusal(at: Point): void {
    const { pen } = this;
    pen.circle(at.x, at.y, 20).fill({ color: 0x160a06, alpha: 0.6 });
    pen.circle(at.x, at.y, 20).stroke({ width: 4, color: REFUSED });
    pen
      .moveTo(at.x - 12, at.y + 12)
      .lineTo(at.x + 12, at.y - 12)
      .stroke({ width: 4, color: REFUSED });
  }
}

function traceBar(pen: Graphics, a: Point, b: Point, r: number): Graphics {
  const angle = Math.atan2(b.y - a.y, b.x - a.x);
  const end = Math.min(r, 8);
  const nx = -Math.sin(angle) * r;
  const ny = Math.cos(angle) * r;
  const ex = Math.cos(angle) * end;
  const ey = Math.sin(angle) * end;
  return pen.poly(
    closed([
      a.x - ex + nx,
      a.y - ey + ny,
      b.x + ex + nx,
      b.y + ey + ny,
      b.x + ex - nx,
      b.y + ey - ny,
      a.x - ex - nx,
      a.y - ey - ny,
    ]),
  );
}

/** The plain canvas leaves the last side of an outline undrawn unless it is led back to its start. */
function closed(points: number[]): number[] {
  return [...points, points[0]!, points[1]!];
}
