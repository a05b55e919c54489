import { FACE_TO, OUTER, restHeight } from './growlerShape.ts';
import type { Rect } from './layout.ts';
import { projectSide, type SideGeometry } from './project.ts';

/** The growler of the main view: where a point of its section, mm, stands on screen at a place along the shaft. */
export interface GrowlerStage {
  readonly left: number;
  readonly right: number;
  readonly s: number;
  readonly axisY: number;
  /** Screen height of the base's upper side at the near leg, px. */
  readonly floor: number;
  /** Height over the apex at which the near leg's outer flat meets the base, mm. */
  readonly foot: number;
  readonly at: (along: number, x: number, y: number) => [number, number];
}

export function growlerStage(g: SideGeometry, outerRadiusM: number, floor: number): GrowlerStage {
  const s = g.pxPerM / 1000;
  const rest = restHeight(outerRadiusM);
  const at = (along: number, x: number, y: number): [number, number] => {
    const p = projectSide(g.axisY, along, -x * s, (y - rest) * s);
    return [p.x, p.y];
  };
  const [, y0] = at(0, -OUTER, 0);
  const [, y1] = at(0, -OUTER, 1);
  return {
    left: g.x.coreLeft + 2,
    right: g.x.coreRight - 2,
    s,
    axisY: g.axisY,
    floor,
    foot: (floor - y0) / (y1 - y0),
    at,
  };
}

/** Part of the main view that the growler covers behind or before the armature, px. */
export function growlerBox(k: GrowlerStage, which: 'back' | 'front'): Rect {
  const edge = which === 'back' ? 46 * k.s : 4;
  const [left] = k.at(k.left, which === 'back' ? 0 : -OUTER, 0);
  const [, top] = which === 'back' ? k.at(0, FACE_TO + 5, FACE_TO) : k.at(0, -FACE_TO, FACE_TO);
  const x = left - edge - 4;
  return { x, y: top - 4, w: k.right + 8 * k.s + edge * 1.2 - x, h: k.floor + 24 - top + 4 };
}
