import type { Action } from '../../bench/action.ts';
import type { BenchLead } from '../benchLeads.ts';
import type { HungTool, RailTool } from '../layout.ts';
import type { Situation } from '../pose.ts';
import type { Point } from '../project.ts';
import type { Spot } from './spot.ts';

export type Armed = { readonly kind: 'lead'; readonly lead: BenchLead } | { readonly kind: RailTool };

/** What the learner's hands are in the middle of: known to the scene alone until it becomes an action. */
export interface Ui {
  /** Picked by a click; the next click puts it somewhere. */
  armed: Armed | null;
  /** Tips of leads a hand carries or has left hovering. */
  leads: Partial<Record<BenchLead, Point>>;
  readonly dragging: Set<BenchLead>;
  /** Tools and the armature on their way under a pointer. */
  readonly tools: Partial<Record<RailTool | 'armature', Point>>;
  /** What each pointer would touch if it let go now. */
  readonly aims: Map<number, Spot>;
  hover: Spot | null;
  /** A bare tip pressed, not yet held. */
  tipHold: { readonly lead: BenchLead; readonly sinceMs: number } | null;
  refusal: { readonly at: Point; readonly untilMs: number } | null;
  /** Turn of the armature shown but not yet sent, degrees. */
  turning: number;
  /** What lens or gauge last showed was put out of the way. */
  closeUpShut: boolean;
}

export function freshUi(): Ui {
  return {
    armed: null,
    leads: {},
    dragging: new Set(),
    tools: {},
    aims: new Map(),
    hover: null,
    tipHold: null,
    refusal: null,
    turning: 0,
    closeUpShut: false,
  };
}

/** What a gesture may ask of the scene. */
export interface Desk {
  readonly ui: Ui;
  situation(): Situation;
  /** Sends an action; false when it was refused, which is then shown at the point. */
  act(action: Action, at: Point): boolean;
  /** Opens what is done with a tool of the rail. */
  openTool(tool: HungTool): void;
  redraw(): void;
  now(): number;
}

export interface Pointer {
  readonly id: number;
  /** On the bench as it is laid out. */
  readonly at: Point;
  /** On the host, px: not the same while the bench is looked at closer. */
  readonly shown: Point;
  readonly kind: 'mouse' | 'pen' | 'touch';
  /** Fine work: no detents. */
  readonly fine: boolean;
}

/** One press of one pointer, from down to up. */
export interface Gesture {
  move(p: Pointer): void;
  end(p: Pointer): void;
  cancel(): void;
  /** True while nothing was done and nothing has moved: a second finger may still make a pinch of it. */
  idle?(): boolean;
}

/** Movement below which a press is a click, px. */
export const SLOP = 5;

export function far(a: Point, b: Point): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}

/** How near counts as on it: a finger covers more than a mouse. */
export function forgiveness(kind: Pointer['kind']): number {
  return kind === 'touch' ? 30 : 22;
}

/** Puts a picked thing out of mind: a lead hovers where it is, a tool goes back to the rail. */
export function disarm(ui: Ui): void {
  if (ui.armed && ui.armed.kind !== 'lead') delete ui.tools[ui.armed.kind];
  ui.armed = null;
}
