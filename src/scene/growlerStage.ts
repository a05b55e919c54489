import { OUTER, restHeight } from './growlerShape.ts';
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
