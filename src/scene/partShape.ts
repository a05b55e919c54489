import type { MatPart } from '../bench/action.ts';
import type { FieldPlace, PlatePlace } from '../bench/places.ts';
import type { Rect } from './layout.ts';
import type { Point } from './project.ts';
import type { Shape } from './shapes.ts';

/** A field frame looked into from its brush end, px of the host. */
export interface FrameGeometry extends Point {
  /** Outside of the yoke. */
  readonly r: number;
  /** Middles of the two field brushes. */
  readonly brushes: readonly [Point, Point];
  readonly brush: { readonly w: number; readonly h: number };
  readonly terminal: Point;
}

/** Lower than this a board has no room for the brushes under the frame: they lie beside it, px. */
const LOW = 190;
/** Under the brushes stand their names and whether they touch, px. */
const BRUSH_FOOT = 40;

/** @param apart the brushes are kept from touching one another */
export function frameGeometry(box: Rect, apart: boolean): FrameGeometry {
  const low = box.h < LOW;
  const r = low
    ? Math.min(box.w * 0.25, (box.h - 60) * 0.43)
    : Math.min(box.w * 0.37, box.h * 0.26, (box.h - 120) / 2.34);
  const x = low ? box.x + 42 + r : box.x + box.w / 2;
  const y = low ? box.y + box.h - 12 - r : box.y + 44 + r * 1.34;
  const brush = { w: Math.max(24, r * 0.4), h: Math.max(30, r * 0.36) };
  const middle = low
    ? { x: (x + r + box.x + box.w) / 2, y: box.y + box.h * 0.52 }
    : { x, y: Math.min(y + r * 1.82, box.y + box.h - brush.h * 0.5 - BRUSH_FOOT) };
  const spread = apart ? Math.max(brush.w * 0.5 + 13, r * 0.62) : brush.w * 0.53;
  return {
    x,
    y,
    r,
    brush,
    brushes: [
      { x: middle.x - spread, y: middle.y },
      { x: middle.x + spread, y: middle.y },
    ],
    terminal: { x, y: y - r * 1.14 },
  };
}

/** Where each contact of the frame can be touched. */
export function frameContacts(g: FrameGeometry): Readonly<Record<FieldPlace, Shape>> {
  const brush = (p: Point): Shape => ({
    kind: 'box',
    x: p.x - g.brush.w / 2,
    y: p.y - g.brush.h / 2,
    w: g.brush.w,
    h: g.brush.h,
  });
  return {
    'field:terminal': { kind: 'circle', ...g.terminal, r: Math.max(14, g.r * 0.15) },
    'field:brush1': brush(g.brushes[0]),
    'field:brush2': brush(g.brushes[1]),
    'field:case': {
      kind: 'wedge',
      x: g.x,
      y: g.y,
      inner: g.r * 0.77,
      outer: Math.max(g.r * 1.02, g.r * 0.77 + 25),
      deg: -105,
      halfDeg: 34,
    },
  };
}

/** Between and under the brushes: the fibre slip that keeps them apart is put in and taken out here. */
export function slipShape(box: Rect): Shape {
  const g = frameGeometry(box, true);
  const [a, b] = g.brushes;
  const w = Math.max(44, b.x - a.x - g.brush.w);
  return { kind: 'box', x: (a.x + b.x) / 2 - w / 2, y: a.y + g.brush.h * 0.5 + 4, w, h: 30 };
}

export interface PlateGeometry extends Point {
  readonly r: number;
  /** Middle and direction (degrees from the bottom) of each holder. */
  readonly holders: Readonly<Record<Exclude<PlatePlace, 'plate:metal'>, Point & { readonly deg: number }>>;
}

const HOLDER_DEG = {
  'plate:insulated1': -135,
  'plate:earthed1': 135,
  'plate:insulated2': 45,
  'plate:earthed2': -45,
} as const;

export function plateGeometry(box: Rect): PlateGeometry {
  const low = box.h < LOW;
  const r = Math.min(box.w * 0.44, low ? (box.h - 66) / 2 : (box.h - 70) * 0.46);
  const x = box.x + box.w / 2;
  const y = low ? box.y + 40 + r : box.y + 48 + (box.h - 48) * 0.48;
  const at = (deg: number) => ({
    x: x + r * 0.64 * Math.sin((deg * Math.PI) / 180),
    y: y + r * 0.64 * Math.cos((deg * Math.PI) / 180),
    deg,
  });
  return {
    x,
    y,
    r,
    holders: {
      'plate:insulated1': at(HOLDER_DEG['plate:insulated1']),
      'plate:earthed1': at(HOLDER_DEG['plate:earthed1']),
      'plate:insulated2': at(HOLDER_DEG['plate:insulated2']),
      'plate:earthed2': at(HOLDER_DEG['plate:earthed2']),
    },
  };
}

export function plateContacts(g: PlateGeometry): Readonly<Record<PlatePlace, Shape>> {
  const inner = Math.min(g.r * 0.72, g.r - 25);
  const holder = (p: Point): Shape => ({ kind: 'circle', x: p.x, y: p.y, r: Math.max(16, g.r * 0.2) });
  return {
    'plate:insulated1': holder(g.holders['plate:insulated1']),
    'plate:insulated2': holder(g.holders['plate:insulated2']),
    'plate:earthed1': holder(g.holders['plate:earthed1']),
    'plate:earthed2': holder(g.holders['plate:earthed2']),
    'plate:metal': { kind: 'wedge', x: g.x, y: g.y, inner, outer: g.r, deg: 0, halfDeg: g.r < 60 ? 22 : 17 },
  };
}

/** The tab by which a part that lies forward is put back. */
export function putBackTab(box: Rect): Rect {
  return { x: box.x + box.w - 98, y: box.y + 8, w: 90, h: 30 };
}

export const PART_WORDS: Readonly<Record<MatPart, string>> = {
  fieldFrame: 'field frame',
  brushPlate: 'brush plate',
};
