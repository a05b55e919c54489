import type { Point } from '../project.ts';
import type { View } from '../view.ts';
import { type Desk, forgiveness, type Gesture, type Pointer } from './desk.ts';
import { PanDrag, Pinch, wheelFactor } from './eyes.ts';
import { leadAim } from './leadDrag.ts';
import { leadSpots } from './metal.ts';
import { NOTHING } from './panelPress.ts';
import { begin } from './pick.ts';
import { nearest, type Spot } from './spot.ts';
import { armatureSpots, hungSpots, panelSpots, partSpots, toolSpots } from './targets.ts';
import { toolAim } from './toolDrag.ts';
import { WheelTurn } from './turn.ts';

/** A press of one pointer that is down. */
interface Held {
  readonly gesture: Gesture;
  readonly began: Pointer;
}

/** Listens to mouse, pen and touch on the canvas and keeps one gesture for each pointer that is down. */
export class Pointers {
  private readonly desk: Desk;
  private readonly canvas: HTMLCanvasElement;
  private readonly view: View;
  private readonly held = new Map<number, Held>();
  private pinch: Pinch | null = null;
  private readonly wheel: WheelTurn;
  private readonly blocked: () => boolean;

  constructor(canvas: HTMLCanvasElement, desk: Desk, view: View, blocked: () => boolean) {
    this.canvas = canvas;
    this.desk = desk;
    this.view = view;
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
    for (const { gesture } of this.held.values()) gesture.cancel();
    this.held.clear();
    this.pinch = null;
    this.desk.ui.aims.clear();
  }

  private shown(e: MouseEvent): Point {
    const box = this.canvas.getBoundingClientRect();
    return { x: e.clientX - box.left, y: e.clientY - box.top };
  }

  private pointer(e: PointerEvent): Pointer {
    const kind = e.pointerType === 'touch' || e.pointerType === 'pen' ? e.pointerType : 'mouse';
    const shown = this.shown(e);
    return { id: e.pointerId, at: this.view.toBench(shown), shown, kind, fine: e.altKey || e.shiftKey };
  }

  private readonly down = (e: PointerEvent): void => {
    if (this.blocked() || e.button !== 0) return;
    const p = this.pointer(e);
    this.canvas.setPointerCapture?.(e.pointerId);
    this.desk.ui.hover = null;
    const taken = begin(this.desk, p);
    const gesture = taken === NOTHING ? new PanDrag(this.view, p) : taken;
    if (p.kind !== 'touch' || !this.pinches(p, gesture)) this.held.set(p.id, { gesture, began: p });
    this.desk.redraw();
  };

  /** Two fingers that have done nothing yet look closer; two that hold something work with it. */
  private pinches(p: Pointer, gesture: Gesture): boolean {
    const other = [...this.held.values()].find((held) => held.began.kind === 'touch' && isIdle(held.gesture));
    if (!other || !isIdle(gesture)) return false;
    other.gesture.cancel();
    gesture.cancel();
    this.held.delete(other.began.id);
    this.pinch = new Pinch(this.view, other.began, p);
    return true;
  }

  private readonly move = (e: PointerEvent): void => {
    const p = this.pointer(e);
    const held = this.held.get(p.id);
    if (this.pinch?.holds(p.id)) this.pinch.move(p);
    else if (held) held.gesture.move(p);
    else if (p.kind !== 'touch' && !this.blocked()) this.hover(p);
  };

  private readonly up = (e: PointerEvent): void => {
    const p = this.pointer(e);
    if (this.pinch?.holds(p.id)) this.pinch = null;
    const held = this.held.get(p.id);
    this.held.delete(p.id);
    held?.gesture.end(p);
  };

  private readonly lost = (e: PointerEvent): void => {
    if (this.pinch?.holds(e.pointerId)) this.pinch = null;
    this.held.get(e.pointerId)?.gesture.cancel();
    this.held.delete(e.pointerId);
    this.desk.ui.aims.delete(e.pointerId);
  };

  private readonly leave = (): void => {
    if (this.desk.ui.hover === null) return;
    this.desk.ui.hover = null;
    this.desk.redraw();
  };

  private readonly roll = (e: WheelEvent): void => {
    if (this.blocked()) return;
    const shown = this.shown(e);
    const at = this.view.toBench(shown);
    const delta = e.deltaMode === 1 ? e.deltaY * 30 : e.deltaY;
    const spots = armatureSpots(this.desk.situation()).filter((spot) => spot.id === 'core:turn');
    const turns = !e.ctrlKey && nearest(spots, at, 1) !== null;
    if (!turns && !e.ctrlKey && pageScrolls()) return;
    e.preventDefault();
    if (turns) this.wheel.roll(delta, at);
    else this.view.zoom(wheelFactor(delta, e.ctrlKey), shown);
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
      [...handles, ...panelSpots(s), ...partSpots(s), ...hungSpots(s), ...toolSpots(s), ...armatureSpots(s)],
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

function isIdle(gesture: Gesture): boolean {
  return gesture.idle?.() ?? false;
}

/** On a small screen the wheel belongs to the page. */
function pageScrolls(): boolean {
  const page = document.scrollingElement;
  return page !== null && page.scrollHeight > page.clientHeight + 1;
}
