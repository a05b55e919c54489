import { linear, type Pen, polygon, type Stop } from '../pen.ts';
import { onSide, TILT_DEG } from '../project.ts';
import type { Ring } from '../turningSkin.ts';

/** How a round surface answers the light above and before the bench: stops from the top of the round to its foot. */
export type Finish = readonly Stop[];

export const IRON_FINISH: Finish = [
  [0, 'rgba(5,12,16,.62)'],
  [0.1, 'rgba(5,12,16,.22)'],
  [0.22, 'rgba(236,248,248,.28)'],
  [0.3, 'rgba(255,255,252,.42)'],
  [0.4, 'rgba(236,248,248,.10)'],
  [0.55, 'rgba(5,12,16,.14)'],
  [0.78, 'rgba(4,10,14,.5)'],
  [0.93, 'rgba(3,8,12,.74)'],
  [1, 'rgba(20,60,66,.66)'],
];

export const COPPER_FINISH: Finish = [
  [0, 'rgba(24,6,0,.66)'],
  [0.1, 'rgba(40,12,0,.2)'],
  [0.2, 'rgba(255,236,208,.18)'],
  [0.285, 'rgba(255,248,236,.72)'],
  [0.34, 'rgba(255,232,200,.3)'],
  [0.46, 'rgba(80,30,0,.02)'],
  [0.62, 'rgba(40,14,2,.22)'],
  [0.82, 'rgba(26,8,2,.56)'],
  [0.94, 'rgba(16,6,4,.76)'],
  [1, 'rgba(26,60,62,.7)'],
];

export const WINDING_FINISH: Finish = [
  [0, 'rgba(14,4,0,.74)'],
  [0.14, 'rgba(20,6,0,.26)'],
  [0.3, 'rgba(255,226,190,.26)'],
  [0.42, 'rgba(40,14,2,.05)'],
  [0.65, 'rgba(16,6,2,.4)'],
  [0.9, 'rgba(10,5,4,.76)'],
  [1, 'rgba(12,30,32,.8)'],
];

export const SHAFT_FINISH: Finish = [
  [0, '#2b3337'],
  [0.12, '#5f6b70'],
  [0.3, '#e8eeee'],
  [0.4, '#cfd7d8'],
  [0.6, '#7d898d'],
  [0.85, '#3c464a'],
  [1, '#2a3a3e'],
];

/** Outline of the visible half between two rings. */
function outline(axisY: number, a: Ring, b: Ring): [number, number][] {
  const points: [number, number][] = [];
  for (let i = 0; i <= 24; i++) {
    const p = onSide(axisY, a.x, a.radius, -180 - TILT_DEG + (180 * i) / 24);
    points.push([p.x, p.y]);
  }
  for (let i = 24; i >= 0; i--) {
    const p = onSide(axisY, b.x, b.radius, -180 - TILT_DEG + (180 * i) / 24);
    points.push([p.x + (i % 24 === 0 ? 0 : 0.4), p.y]);
  }
  return points;
}

/** Lays light and shadow over a stretch of rings; they stay in place while the part turns beneath. */
export function shadeRings(pen: Pen, axisY: number, rings: readonly Ring[], finish: Finish): void {
  for (let i = 0; i + 1 < rings.length; i++) {
    const a = rings[i]!;
    const b = rings[i + 1]!;
    const r = (a.radius + b.radius) / 2;
    polygon(pen, outline(axisY, a, b));
    pen.fillStyle = linear(pen, 0, axisY - r, 0, axisY + r, finish);
    pen.fill();
  }
}

/** Shadow that gathers where a stretch runs in under a larger neighbour: at its start, its end or both. */
export function shadeCorner(
  pen: Pen,
  axisY: number,
  rings: readonly Ring[],
  depth: number,
  from: 'start' | 'end',
  strength = 0.6,
): void {
  const first = rings[0]!;
  const last = rings[rings.length - 1]!;
  const edge = from === 'start' ? first : last;
  const sign = from === 'start' ? 1 : -1;
  pen.save();
  polygon(pen, outline(axisY, first, last));
  pen.clip();
  for (let i = 0; i < 8; i++) {
    const reach = (depth * (i + 1)) / 8;
    pen.fillStyle = `rgba(4,6,8,${strength / 8})`;
    polygon(
      pen,
      outline(
        axisY,
        { ...edge, x: edge.x - sign * 40, radius: edge.radius * 1.3 },
        {
          ...edge,
          x: edge.x + sign * reach,
          radius: edge.radius * 1.3,
        },
      ),
    );
    pen.fill();
  }
  pen.restore();
}
