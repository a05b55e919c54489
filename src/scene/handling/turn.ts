import { wrapDeg } from '../../bench/geometry.ts';
import { endAngleAt, type Point } from '../project.ts';
import { type Desk, far, type Gesture, type Pointer, SLOP } from './desk.ts';

/** Turns are sent at most this often, ms: the hand moves faster than a log needs to know. */
const SEND_EVERY_MS = 45;
/** Share of a bar's pitch round each bar-to-bar place in which the armature settles by itself. */
const CATCH = 0.12;
const SETTLE = 0.32;

/**
 * Soft detents one bar apart. Readings compare only at the same place over the cradle, and a hand finds that place
 * again by the bars passing it.
 * @param deg free angle, degrees
 * @param pitch degrees between bars, > 0
 * @returns the angle shown: level across the catch, continuous everywhere
 */
export function softDetent(deg: number, pitch: number): number {
  const n = Math.round(deg / pitch);
  const off = deg / pitch - n;
  const eased = (Math.sign(off) * Math.max(0, Math.abs(off) - CATCH) * 0.5) / (0.5 - CATCH);
  return (n + eased) * pitch;
}

/** Where a turn comes to rest when let go: the nearest bar-to-bar place if it is near, else where it is. */
export function settle(deg: number, pitch: number): number {
  const n = Math.round(deg / pitch);
  return Math.abs(deg / pitch - n) < SETTLE ? n * pitch : deg;
}

/** Turning the armature by hand: down its front in the main view, around it in the end view. */
export class TurnDrag implements Gesture {
  private readonly desk: Desk;
  private readonly view: 'side' | 'end';
  private readonly start: Point;
  private last: Point;
  private phase: 'pressed' | 'turning' | 'dead' = 'pressed';
  /** Free angle of the hand, and the angle already sent, degrees on the scale of the rotation. */
  private free = 0;
  private sent = 0;
  private sentAt = 0;

  constructor(desk: Desk, view: 'side' | 'end', p: Pointer) {
    this.desk = desk;
    this.view = view;
    this.start = p.at;
    this.last = p.at;
  }

  move(p: Pointer): void {
    if (this.phase === 'dead') return;
    if (this.phase === 'pressed') {
      if (far(p.at, this.start) < SLOP) return;
      if (!this.desk.act({ type: 'armature.hold' }, p.at)) {
        this.die();
        return;
      }
      this.phase = 'turning';
      this.free = this.desk.situation().seen.rotationDeg;
      this.sent = this.free;
    }
    this.free += this.step(p.at);
    this.last = p.at;
    this.showAt(p.fine ? this.free : softDetent(this.free, this.pitch()), p.at, false);
  }

  end(p: Pointer): void {
    if (this.phase !== 'turning') return;
    this.showAt(p.fine ? this.free : settle(softDetent(this.free, this.pitch()), this.pitch()), p.at, true);
    if (this.phase === 'turning') this.desk.act({ type: 'armature.release' }, p.at);
    this.die();
  }

  cancel(): void {
    if (this.phase === 'turning') this.desk.act({ type: 'armature.release' }, this.last);
    this.die();
  }

  idle(): boolean {
    return this.phase === 'pressed';
  }

  private pitch(): number {
    return 360 / this.desk.situation().part.bars;
  }

  private step(at: Point): number {
    const s = this.desk.situation();
    const g = s.layout.side;
    if (this.view === 'side' && g) return ((at.y - this.last.y) / g.r.core) * (180 / Math.PI);
    return wrapDeg(endAngleAt(s.layout.end, at.x, at.y) - endAngleAt(s.layout.end, this.last.x, this.last.y));
  }

  private showAt(deg: number, at: Point, now: boolean): void {
    const by = Math.round((deg - this.sent) * 100) / 100;
    this.desk.ui.turning = by;
    const due = this.desk.now() - this.sentAt >= SEND_EVERY_MS && Math.abs(by) >= 0.5;
    if ((now && by !== 0) || due) {
      this.desk.ui.turning = 0;
      this.sent += by;
      this.sentAt = this.desk.now();
      if (!this.desk.act({ type: 'armature.turn', byDeg: by }, at)) this.die();
    }
    this.desk.redraw();
  }

  private die(): void {
    this.phase = 'dead';
    this.desk.ui.turning = 0;
    this.desk.redraw();
  }
}

/** Wheel over the armature: one notch is one bar; the hand is laid on for as long as the wheel runs. */
export class WheelTurn {
  private readonly desk: Desk;
  private gathered = 0;
  private holding = false;
  private rest: ReturnType<typeof setTimeout> | null = null;

  constructor(desk: Desk) {
    this.desk = desk;
  }

  roll(deltaPx: number, at: Point): void {
    this.gathered += deltaPx;
    const notches = Math.trunc(this.gathered / 50);
    if (notches === 0) return;
    this.gathered = 0;
    if (!this.holding && !this.desk.act({ type: 'armature.hold' }, at)) return;
    this.holding = true;
    const s = this.desk.situation();
    const pitch = 360 / s.part.bars;
    const from = s.seen.rotationDeg;
    const to = (Math.round(from / pitch) + Math.sign(notches)) * pitch;
    this.desk.act({ type: 'armature.turn', byDeg: Math.round((to - from) * 100) / 100 }, at);
    this.letGoSoon(at);
  }

  stop(): void {
    if (this.rest !== null) clearTimeout(this.rest);
    this.rest = null;
  }

  private letGoSoon(at: Point): void {
    this.stop();
    this.rest = setTimeout(() => {
      this.holding = false;
      this.desk.act({ type: 'armature.release' }, at);
    }, 320);
  }
}
