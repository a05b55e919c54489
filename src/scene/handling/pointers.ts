import type { Point } from '../project.ts';
import { type Desk, forgiveness, type Gesture, type Pointer } from './desk.ts';
import { leadAim } from './leadDrag.ts';
import { leadSpots } from './metal.ts';
import { begin } from './pick.ts';
import { nearest, type Spot } from './spot.ts';
import { armatureSpots, panelSpots, partSpots, toolSpots } from './targets.ts';
import { toolAim } from './toolDrag.ts';
import { WheelTurn } from './turn.ts';

/** Listens to mouse, pen and touch on the canvas and keeps one gesture for each pointer that is down. */
export class Pointers {
  private readonly desk: Desk;
  private readonly canvas: HTMLCanvasElement;
  private readonly gestures = new Map<number, Gesture>();
  private readonly wheel: WheelTurn;
  private readonly blocked: () => boolean;

  constructor(canvas: HTMLCanvasElement, desk: Desk, blocked: () => boolean) {
    this.canvas = canvas;
    this.desk = desk;
    this.blocked = blocked;
    this.wheel = new WheelTurn(desk);
    canvas.style.touchAction = 'none';
    canvas.addEventListener('pointerdown', this.down);
    canvas.addEventListener('pointermove', this.move);
    canvas.addEventListener('pointerup', this.up);
    canvas.addEventListener('pointercancel', this.lost);
    canvas.addEventListener('pointerleave', this.leave);
    canvas.addEventListener('wheel', this.roll, { passive: false });
  }

  destroy(): void {
    this.dropAll();
    this.wheel.stop();
    this.canvas.removeEventListener('pointerdown', this.down);
    this.canvas.removeEventListener('pointermove', this.move);
    this.canvas.removeEventListener('pointerup', this.up);
    this.canvas.removeEventListener('pointercancel', this.lost);
    this.canvas.removeEventListener('pointerleave', this.leave);
    this.canvas.removeEventListener('wheel', this.roll);
  }

  /** Lets go of everything, as when the bench is isolated or laid out anew. */
  dropAll(): void {
    for (const gesture of this.gestures.values()) gesture.cancel();
    this.gestures.clear();
    this.desk.ui.aims.clear();
  }

  private at(e: MouseEvent): Point {
    const box = this.canvas.getBoundingClientRect();
    return { x: e.clientX - box.left, y: e.clientY - box.top };
  }

  private pointer(e: PointerEvent): Pointer {
    const kind = e.pointerType === 'touch' || e.pointerType === 'pen' ? e.pointerType : 'mouse';
    return { id: e.pointerId, at: this.at(e), kind, fine: e.altKey || e.shiftKey };
  }

  private readonly down = (e: PointerEvent): void => {
    if (this.blocked() || e.button !== 0) return;
    const p = this.pointer(e);
    this.canvas.setPointerCapture?.(e.pointerId);
    this.desk.ui.hover = null;
    this.gestures.set(p.id, begin(this.desk, p));
    this.desk.redraw();
  };

  private readonly move = (e: PointerEvent): void => {
    const p = this.pointer(e);
    const gesture = this.gestures.get(p.id);
    if (gesture) gesture.move(p);
    else if (p.kind !== 'touch' && !this.blocked()) this.hover(p);
  };

  private readonly up = (e: PointerEvent): void => {
    const p = this.pointer(e);
    const gesture = this.gestures.get(p.id);
    this.gestures.delete(p.id);
    gesture?.end(p);
  };

  private readonly lost = (e: PointerEvent): void => {
    this.gestures.get(e.pointerId)?.cancel();
    this.gestures.delete(e.pointerId);
    this.desk.ui.aims.delete(e.pointerId);
  };

  private readonly leave = (): void => {
    if (this.desk.ui.hover === null) return;
    this.desk.ui.hover = null;
    this.desk.redraw();
  };

  private readonly roll = (e: WheelEvent): void => {
    const at = this.at(e);
    const spots = armatureSpots(this.desk.situation()).filter((spot) => spot.id === 'core:turn');
    if (this.blocked() || !nearest(spots, at, 1)) return;
    e.preventDefault();
    if (!e.ctrlKey) this.wheel.roll(e.deltaMode === 1 ? e.deltaY * 30 : e.deltaY, at);
  };

  private hover(p: Pointer): void {
    const { ui } = this.desk;
    const found = this.armedAim(p) ?? this.graspable(p);
    this.canvas.style.cursor = found ? (ui.armed ? 'crosshair' : 'grab') : 'default';
    const carried = this.carryArmed(p.at);
    if (found?.id === ui.hover?.id && !carried) return;
    ui.hover = found;
    this.desk.redraw();
  }

  private armedAim(p: Pointer): Spot | null {
    const { armed } = this.desk.ui;
    if (!armed || armed.kind === 'strip') return null;
    if (armed.kind === 'lead') return leadAim(this.desk, armed.lead, [p.at], forgiveness(p.kind) * 0.7);
    return toolAim(this.desk, armed.kind, p.at, forgiveness(p.kind) * 0.5);
  }

  private graspable(p: Pointer): Spot | null {
    const s = this.desk.situation();
    const handles = leadSpots(s).filter((spot) => spot.part === 'handle');
    return nearest(
      [...handles, ...panelSpots(s), ...partSpots(s), ...toolSpots(s), ...armatureSpots(s)],
      p.at,
      3,
    );
  }

  /** A picked thing follows the mouse until it is put down. */
  private carryArmed(at: Point): boolean {
    const { armed, leads, tools } = this.desk.ui;
    if (!armed) return false;
    if (armed.kind === 'lead') {
      if (this.desk.situation().seen.leads[armed.lead].touches !== null) return false;
      leads[armed.lead] = at;
    } else if (armed.kind !== 'strip') tools[armed.kind] = at;
    else if (this.desk.situation().seen.strip.at === 'hand') tools.strip = at;
    return true;
  }
}
