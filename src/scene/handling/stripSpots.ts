import { STRIP_ARC_DEG } from '../../bench/geometry.ts';
import { forwardPart, type Situation } from '../pose.ts';
import { onEnd, onSide, type Point, type SideGeometry } from '../project.ts';
import type { Shape } from '../shapes.ts';
import type { Spot } from './spot.ts';

/** Height above the core, mm, at which the strip is drawn when nothing else is said. */
export const STRIP_HEIGHT_MM = 0.5;
/** px of drawn clearance per mm of height: the gap is drawn wider than life, or no one could see it. */
export const STRIP_PX_PER_MM = 5;

/** Length of the strip's wooden grip in the main view, px. */
export const GRIP = 54;

/** Where the strip is taken hold of: over the core at its end and, in the main view, by its grip. */
export function stripShapes(s: Situation): Shape[] {
  const { strip } = s.seen;
  if (strip.at === 'rail') return [{ kind: 'box', ...s.layout.tools.strip }];
  if (strip.at === 'hand' || strip.angleDeg === null) {
    const p = stripInHand(s);
    return [{ kind: 'box', x: p.x - (s.layout.side ? 70 : 20), y: p.y - 16, w: 140, h: 32 }];
  }
  const p = stripAtEnd(s, strip.angleDeg, strip.heightMm ?? STRIP_HEIGHT_MM);
  const end: Shape[] = forwardPart(s) === null ? [{ kind: 'circle', ...p, r: 18 }] : [];
  const g = s.layout.side;
  if (!g) return end;
  const { y } = onSide(g.axisY, 0, g.r.core, strip.angleDeg);
  return [...end, { kind: 'box', x: stripLeft(g), y: y - 14, w: GRIP, h: 28 }];
}

/** Left-hand end of the strip's grip while it is held over the core. */
export function stripLeft(g: SideGeometry): number {
  return Math.max(16, g.x.coreLeft - g.r.core * 0.4 - GRIP);
}

export function stripInHand(s: Situation): Point {
  const g = s.layout.side;
  // On a phone to the left of the stand.
  if (!g) return { x: s.layout.endBox.x + 30, y: s.layout.endBox.y + 22 };
  return { x: g.x.coreLeft - g.r.core * 0.35, y: g.axisY - g.r.core * 0.98 };
}

export function stripAtEnd(s: Situation, angleDeg: number, heightMm: number): Point {
  const g = s.layout.end;
  return onEnd(g, g.core + 4 + heightMm * STRIP_PX_PER_MM, angleDeg);
}

/** Ring of the end view in which the strip can be held. */
export function stripRing(s: Situation): { inner: number; outer: number } {
  const { core } = s.layout.end;
  return { inner: core * 0.9, outer: core + Math.max(38, core * 0.34) };
}

/** A few stations of the strip, so that it can be aimed at by name. */
export function stripSpots(s: Situation): Spot[] {
  const spots: Spot[] = [];
  for (let deg: number = STRIP_ARC_DEG.from; deg <= STRIP_ARC_DEG.to; deg += 5) {
    spots.push({
      id: `strip-at:${deg}`,
      view: 'end',
      shape: { kind: 'circle', ...stripAtEnd(s, deg, STRIP_HEIGHT_MM), r: 14 },
    });
  }
  return spots;
}
