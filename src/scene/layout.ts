import { MAT_PARTS, type MatPart } from '../bench/action.ts';
import { toolsOf } from '../scenario/public/benchTools.ts';
import type { ArmatureView, Job } from '../scenario/public/job.ts';
import { columnOf } from './layoutColumn.ts';
import { placePanel } from './layoutPanel.ts';
import type { EndGeometry, Point, SideGeometry } from './project.ts';
import type { Instrument } from './railShape.ts';

export interface Rect {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

/** A round in which something is seen large: its middle, and the radius of what is seen in it. */
export interface Round {
  readonly x: number;
  readonly y: number;
  readonly r: number;
}

/** What a round's rim adds to its radius, px. */
export const RIM = 6;

export type LayoutMode = 'wide' | 'medium' | 'narrow';
export const RAIL_TOOLS = ['strip', 'lens', 'chalk'] as const;
export type RailTool = (typeof RAIL_TOOLS)[number];
/** Tools that only some jobs have: they hang after the others, and open what is done with them. */
export const HUNG_TOOLS = ['tester', 'drop', 'gauges', 'remedies'] as const;
export type HungTool = (typeof HUNG_TOOLS)[number];
type Hung = Partial<Readonly<Record<HungTool, Rect>>>;

export interface PanelLayout {
  readonly frame: Rect;
  readonly meter: Rect;
  /** Plates of the range switch, lowest range first. */
  readonly ranges: readonly [Rect, Rect, Rect, Rect];
  readonly selector: Rect;
  readonly flags: Rect;
  readonly lamp: Rect;
  /** Holsters of ammeter.1, ammeter.2, lamp.1, lamp.2. */
  readonly holsters: readonly [Rect, Rect, Rect, Rect];
}

/** Where everything on the bench stands, CSS px of the host. */
export interface Layout {
  readonly mode: LayoutMode;
  readonly width: number;
  readonly height: number;
  /** Lower edge of the wall, upper edge of the bench top. */
  readonly benchTop: number;
  /** The main view; null where there is room for the end view only. */
  readonly side: SideGeometry | null;
  readonly sideBox: Rect | null;
  readonly end: EndGeometry;
  readonly endBox: Rect;
  readonly mat: Rect;
  readonly rail: Rect;
  readonly tools: Readonly<Record<RailTool, Rect>>;
  /** Where the tools of this job hang. */
  readonly hung: Hung;
  /** Where an instrument of the rail lies while it is in use; on a phone, where it hangs. */
  readonly instruments: Partial<Readonly<Record<Instrument, Rect>>>;
  readonly stand: Rect;
  /** Where field frame and brush plate stand until they are taken up, for the parts this job has. */
  readonly partStands: Partial<Readonly<Record<MatPart, Rect>>>;
  /** Where a part lies that has been taken up; it covers the end view. */
  readonly board: Rect;
  /** Round in which the lens shows what it sees. */
  readonly lens: Round;
  /** Small round in which that is kept once it has been put out of the way. */
  readonly aside: Round;
  readonly panel: PanelLayout;
}

const clamp = (v: number, low: number, high: number) => Math.min(high, Math.max(low, v));

/** The armature along its shaft in radii of its core: every length is drawn, none is measured from. */
const ROOMY = {
  shaftLeft: 0.42,
  windLeft: 0.36,
  stack: 0.9,
  windRight: 0.34,
  riser: 0.2,
  comm: 1,
  shaftRight: 0.46,
};
/** Shorter along, so that it can be larger round where the picture is narrow: bars before likeness. */
const SHORT = {
  ...ROOMY,
  shaftLeft: 0.3,
  windLeft: 0.33,
  stack: 0.8,
  windRight: 0.32,
  comm: 0.96,
  shaftRight: 0.36,
};
type Along = typeof ROOMY;

/** Bars are drawn as large as a finger needs: 24 px apart where the core leaves the room. */
function commutatorRadius(part: ArmatureView, core: number): number {
  const real = (core * part.commutatorRadius) / part.outerRadius;
  return clamp((24.8 * part.bars) / (2 * Math.PI), Math.max(real, 0.66 * core), 0.9 * core);
}

function stackLength(part: ArmatureView, along: Along): number {
  return clamp(part.stackLength / part.outerRadius, 1.2, 1.75) * along.stack;
}

/** Length of the drawn armature in core radii, shaft end to shaft end. */
function drawnLength(part: ArmatureView, along: Along): number {
  const { stack: _, ...ends } = along;
  return Object.values(ends).reduce((sum, each) => sum + each, 0) + stackLength(part, along);
}

function sideGeometry(
  part: ArmatureView,
  along: Along,
  left: number,
  axisY: number,
  core: number,
): SideGeometry {
  const shaftLeft = left;
  const windLeft = shaftLeft + along.shaftLeft * core;
  const coreLeft = windLeft + along.windLeft * core;
  const coreRight = coreLeft + stackLength(part, along) * core;
  const riserLeft = coreRight + along.windRight * core;
  const commLeft = riserLeft + along.riser * core;
  const commRight = commLeft + along.comm * core;
  const comm = commutatorRadius(part, core);
  return {
    axisY,
    pxPerM: core / part.outerRadius,
    x: {
      shaftLeft,
      windLeft,
      coreLeft,
      coreRight,
      riserLeft,
      commLeft,
      commRight,
      shaftRight: commRight + along.shaftRight * core,
    },
    r: {
      core,
      shaft: (core * part.shaftRadius) / part.outerRadius,
      winding: 0.84 * core,
      riser: Math.min(0.955 * core, comm * 1.07),
      comm,
    },
  };
}

function endGeometry(part: ArmatureView, x: number, y: number, core: number): EndGeometry {
  return {
    x,
    y,
    core,
    riser: 0.78 * core,
    comm: 0.71 * core,
    commInner: 0.4 * core,
    shaft: (core * part.shaftRadius) / part.outerRadius,
    pxPerM: core / part.outerRadius,
  };
}

/** Tools along the rail, evenly apart: the bench's own first, then those of the job. */
function alongRail(rail: Rect, hung: readonly HungTool[]): Pick<Layout, 'tools' | 'hung'> {
  const crowded = hung.length > 1;
  const own: Record<RailTool, number> = {
    strip: clamp(rail.w * 0.2, 64, 150),
    lens: clamp(rail.w * (crowded ? 0.11 : 0.13), 40, 84),
    chalk: clamp(rail.w * 0.12, 42, 76),
  };
  const taken = own.strip + own.lens + own.chalk;
  const gaps = hung.length + 2;
  const each = Math.min(84, (rail.w - taken - gaps * 6) / Math.max(1, hung.length));
  const gap = Math.min(36, (rail.w - taken - each * hung.length) / gaps);
  let x = rail.x;
  const next = (w: number): Rect => {
    const box = { x, y: rail.y, w, h: rail.h };
    x += w + gap;
    return box;
  };
  return {
    tools: { strip: next(own.strip), lens: next(own.lens), chalk: next(own.chalk) },
    hung: Object.fromEntries(hung.map((tool) => [tool, next(each)])),
  };
}

/** Two instruments side by side on the bench, before the growler. */
function sideBySide(upper: number, { w: room, h }: Rect): Layout['instruments'] {
  // As large as its figures need to be read, and no higher than leaves the commutator free.
  const w = clamp(Math.min(room * 0.37, (h * 0.36) / 0.66), 116, 220);
  const box = { y: upper - w * 0.66 - 8, w, h: w * 0.66 };
  return { tester: { ...box, x: 10 }, drop: { ...box, x: 16 + w } };
}

/** Radius of what is seen in a round put out of the way, px. */
const ASIDE = 17;

function lensRound(box: Rect): Round {
  const r = clamp(box.h * 0.23, 62, 104);
  return { x: box.x + r + 36, y: box.y + box.h - r - 40, r };
}

/** Parts one above the other or, in a low box, side by side. */
function standsIn(box: Rect, parts: readonly MatPart[]): Layout['partStands'] {
  const h = (box.h - 6 * (parts.length - 1)) / Math.max(1, parts.length);
  if (h < 24) {
    const w = (box.w - 4) / 2;
    return Object.fromEntries(parts.map((part, i) => [part, { ...box, x: box.x + i * (w + 4), w }]));
  }
  return Object.fromEntries(
    parts.map((part, i) => [part, { x: box.x, y: box.y + i * (h + 6), w: box.w, h }]),
  );
}

/** Cables of holstered leads rise over the panel's edge by so much, px. */
const LOOPS = 30;

function wide(part: ArmatureView, width: number, height: number, { parts, hung }: Beside): Layout {
  const mode = width >= 860 ? 'wide' : 'medium';
  const panelH = clamp(height * 0.31, 168, 250);
  const along = mode === 'wide' ? ROOMY : SHORT;
  const column = clamp(width * (mode === 'wide' ? 0.335 : 0.31), 180, 400);
  const railH = clamp(height * 0.115, 54, 92);
  const upper = height - panelH;
  const sideBox = { x: 0, y: railH, w: width - column, h: upper - railH };
  const core = Math.min((sideBox.w - 34) / (drawnLength(part, along) + 0.2), sideBox.h / 2.98);
  const left = (sideBox.w - (drawnLength(part, along) + 0.1) * core) / 2 + 0.14 * core;
  const axisY = sideBox.y + core * 1.1 + Math.max(8, (sideBox.h - core * 2.98) * 0.4);
  const endSize = Math.min(column - 14, upper * 0.66);
  const endBox = { x: width - column, y: 10, w: column - 12, h: endSize };
  const matY = endBox.y + endBox.h + 12;
  const matH = upper - matY - 10;
  const standsW = parts.length > 0 ? clamp(column * 0.27, 64, 92) : 0;
  const stand = clamp(core * 0.5, 52, 66);
  const standY = Math.min(axisY + core * 0.98, upper - 110);
  const hooks = { x: 22, y: 4, w: width - column - 50, h: railH - 8 };
  return {
    mode,
    width,
    height,
    benchTop: railH + 6,
    side: sideGeometry(part, along, left, axisY, core),
    sideBox,
    end: endGeometry(part, endBox.x + endBox.w / 2, endBox.y + endSize * 0.43, endSize * 0.325),
    endBox,
    mat: { x: endBox.x, y: matY, w: endBox.w - standsW, h: matH },
    partStands: standsIn(
      { x: endBox.x + endBox.w - standsW + 6, y: matY, w: standsW - 6, h: Math.max(25, matH - LOOPS) },
      parts,
    ),
    board: { x: endBox.x, y: endBox.y, w: endBox.w, h: upper - LOOPS - 6 - endBox.y },
    rail: { x: 16, y: 4, w: width - column - 40, h: railH - 8 },
    ...alongRail(hooks, hung),
    instruments: sideBySide(upper, sideBox),
    lens: lensRound(sideBox),
    aside: { x: sideBox.w - stand - 34, y: upper - 32, r: ASIDE },
    stand: { x: sideBox.w - stand - 8, y: standY, w: stand, h: upper - standY - 6 },
    panel: placePanel({ x: 0, y: upper, w: width, h: panelH }, mode),
  };
}

/** Breadth of a phone's column of tools, px. */
const COLUMN = 92;

function narrow(part: ArmatureView, width: number, height: number, beside: Beside): Layout {
  const panelH = clamp(height * 0.55, 250, 330);
  const upper = height - panelH;
  const endBox = { x: 6, y: 6, w: width - COLUMN - 12, h: upper - 12 };
  const core = Math.min(endBox.w * 0.325, endBox.h * 0.365);
  // Beside the armature the stand's post and its name are seen whole.
  const x = endBox.x + Math.min(endBox.w / 2 + 2, endBox.w - 47 - core);
  const rail = { x: width - COLUMN, y: 6, w: COLUMN - 6, h: upper - 12 };
  return {
    mode: 'narrow',
    width,
    height,
    benchTop: 0,
    side: null,
    sideBox: null,
    // Over it the handles of probes on its upper bars have room.
    end: endGeometry(part, x, endBox.y + clamp(endBox.h * 0.1, 14, 28) + core * 1.08, core),
    endBox,
    rail,
    ...columnOf(rail, beside),
    board: endBox,
    lens: {
      x: endBox.x + endBox.w / 2,
      y: endBox.y + endBox.h / 2 - 12,
      r: Math.min(endBox.w, endBox.h) * 0.34,
    },
    aside: { x: endBox.x + endBox.w - 30, y: endBox.y + endBox.h - 32, r: ASIDE },
    stand: { x: endBox.x + endBox.w - 57, y: endBox.y + 8, w: 54, h: Math.min(92, endBox.h * 0.42) },
    panel: placePanel({ x: 0, y: upper, w: width, h: panelH }, 'narrow'),
  };
}

/** What a job has beside armature and growler: field frame and brush plate, and tools on the rail. */
export interface Beside {
  readonly parts: readonly MatPart[];
  readonly hung: readonly HungTool[];
}

export function besideOf(job: Job): Beside {
  const tools = toolsOf(job);
  return {
    parts: MAT_PARTS.filter((part) => job[part] !== null),
    hung: HUNG_TOOLS.filter((tool) => tools.includes(tool)),
  };
}

/** Lays the bench out in a host of any size; three arrangements, chosen by width. */
export function layOut(
  part: ArmatureView,
  width: number,
  height: number,
  beside: Beside = { parts: [], hung: [] },
): Layout {
  const w = Math.max(300, width);
  const h = Math.max(420, height);
  // The narrow arrangement stands upright: in a low host its column would have no room.
  return w < 560 && h > w ? narrow(part, w, h, beside) : wide(part, w, h, beside);
}

export function inside(r: Rect, p: Point, margin = 0): boolean {
  return p.x >= r.x - margin && p.x <= r.x + r.w + margin && p.y >= r.y - margin && p.y <= r.y + r.h + margin;
}

export function middle(r: Rect): Point {
  return { x: r.x + r.w / 2, y: r.y + r.h / 2 };
}
