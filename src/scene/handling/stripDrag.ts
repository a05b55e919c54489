import { STRIP_ARC_DEG } from '../../bench/geometry.ts';
import { inside, type Rect } from '../layout.ts';
import { forwardPart, type Situation } from '../pose.ts';
import { endAngleAt, fullTurn, type Point, sideAngleAt } from '../project.ts';
import { type Desk, disarm, far, type Gesture, type Pointer, SLOP } from './desk.ts';
import { STRIP_HEIGHT_MM, STRIP_PX_PER_MM, stripRing } from './stripSpots.ts';

const SEND_EVERY_MS = 60;

export interface StripPlace {
  readonly angleDeg: number;
  readonly heightMm: number;
}

const clamp = (v: number, low: number, high: number) => Math.min(high, Math.max(low, v));

/** Where a point would hold the strip, or null when it is away from the core. */
export function stripPlaceAt(s: Situation, p: Point): StripPlace | null {
  if (s.seen.cradle !== 'armature') return null;
  return (forwardPart(s) === null ? inEndView(s, p) : null) ?? inSideView(s, p);
}

/** A clearance of px as a height, mm: close by it is the usual half millimetre. */
function heightOf(px: number): number {
  const mm = px / STRIP_PX_PER_MM;
  return mm < 1.6 ? STRIP_HEIGHT_MM : Math.round(clamp(mm, STRIP_HEIGHT_MM, 8) * 2) / 2;
}

function inEndView(s: Situation, p: Point): StripPlace | null {
  const g = s.layout.end;
  const ring = stripRing(s);
  const radius = Math.hypot(p.x - g.x, p.y - g.y);
  if (radius < ring.inner || radius > ring.outer) return null;
  const angle = fullTurn(endAngleAt(g, p.x, p.y));
  if (angle < STRIP_ARC_DEG.from - 12 || angle > STRIP_ARC_DEG.to + 12) return null;
  return {
    angleDeg: Math.round(clamp(angle, STRIP_ARC_DEG.from, STRIP_ARC_DEG.to)),
    heightMm: heightOf(radius - g.core - 8),
  };
}

function inSideView(s: Situation, p: Point): StripPlace | null {
  const g = s.layout.side;
  if (!g) return null;
  const R = g.r.core;
  const zone: Rect = {
    x: g.x.coreLeft - R * 0.3,
    y: g.axisY - R * 1.3,
    w: g.x.coreRight - g.x.coreLeft + R * 0.4,
    h: R * 1.85,
  };
  if (!inside(zone, p)) return null;
  const angle = fullTurn(sideAngleAt(g.axisY, R * 1.04, p.y));
  return {
    angleDeg: Math.round(clamp(angle, STRIP_ARC_DEG.from, STRIP_ARC_DEG.to)),
    heightMm: heightOf(g.axisY - R - p.y - 4),
  };
}

/** Taking the strip, holding it over the core, drawing it away, hanging it up. */
export class StripDrag implements Gesture {
  private readonly desk: Desk;
  private readonly start: Point;
  private phase: 'pressed' | 'carried' | 'dead' = 'pressed';
  private sentAt = Number.NEGATIVE_INFINITY;
  private held: StripPlace | null = null;

  constructor(desk: Desk, p: Pointer) {
    this.desk = desk;
    this.start = p.at;
    const { strip } = desk.situation().seen;
    if (strip.at === 'core')
      this.held = { angleDeg: strip.angleDeg ?? 180, heightMm: strip.heightMm ?? STRIP_HEIGHT_MM };
  }

  move(p: Pointer): void {
    if (this.phase === 'dead') return;
    if (this.phase === 'pressed') {
      if (far(p.at, this.start) < SLOP) return;
      if (!takeStrip(this.desk, p.at)) {
        this.cancel();
        return;
      }
      this.phase = 'carried';
    }
    this.carry(p.at, false);
  }

  end(p: Pointer): void {
    const { ui } = this.desk;
    if (this.phase === 'pressed') this.click(p.at);
    else if (this.phase === 'carried') this.drop(p.at);
    delete ui.tools.strip;
    this.desk.redraw();
  }

  cancel(): void {
    this.phase = 'dead';
    delete this.desk.ui.tools.strip;
    this.desk.redraw();
  }

  private carry(at: Point, now: boolean): void {
    const place = stripPlaceAt(this.desk.situation(), at);
    if (place) this.hold(place, at, now);
    else if (this.held) {
      this.held = null;
      this.desk.act({ type: 'strip.away' }, at);
    }
    if (this.held) delete this.desk.ui.tools.strip;
    else this.desk.ui.tools.strip = at;
    this.desk.redraw();
  }

  private hold(place: StripPlace, at: Point, now: boolean): void {
    const same = this.held && this.held.angleDeg === place.angleDeg && this.held.heightMm === place.heightMm;
    if (same || (!now && this.desk.now() - this.sentAt < SEND_EVERY_MS)) return;
    this.sentAt = this.desk.now();
    if (this.desk.act({ type: 'strip.hold', ...place }, at)) this.held = place;
  }

  private drop(at: Point): void {
    if (inside(this.desk.situation().layout.tools.strip, at, 10)) this.desk.act({ type: 'strip.hang' }, at);
    else this.carry(at, true);
  }

  private click(at: Point): void {
    const { ui } = this.desk;
    if (ui.armed?.kind === 'strip') {
      disarm(ui);
      if (inside(this.desk.situation().layout.tools.strip, at, 10)) this.desk.act({ type: 'strip.hang' }, at);
    } else if (takeStrip(this.desk, at)) ui.armed = { kind: 'strip' };
  }
}

export function takeStrip(desk: Desk, at: Point): boolean {
  return desk.situation().seen.strip.at !== 'rail' || desk.act({ type: 'strip.take' }, at);
}
