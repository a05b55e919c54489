import { wrapDeg } from '../bench/geometry.ts';
import type { Rect } from './layout.ts';
import { endAngleAt, type Point } from './project.ts';

/** Outline of something that can be touched; all px of the host, angles degrees from the bottom. */
export type Shape =
  | { readonly kind: 'circle'; readonly x: number; readonly y: number; readonly r: number }
  | ({ readonly kind: 'box' } & Rect)
  | { readonly kind: 'bar'; readonly a: Point; readonly b: Point; readonly r: number }
  | {
      readonly kind: 'wedge';
      readonly x: number;
      readonly y: number;
      readonly inner: number;
      readonly outer: number;
      readonly deg: number;
      readonly halfDeg: number;
    };

/** Distance from a point to a shape, px; 0 inside it. */
export function distanceTo(shape: Shape, p: Point): number {
  if (shape.kind === 'circle') return Math.max(0, Math.hypot(p.x - shape.x, p.y - shape.y) - shape.r);
  if (shape.kind === 'box') {
    const dx = Math.max(shape.x - p.x, 0, p.x - shape.x - shape.w);
    const dy = Math.max(shape.y - p.y, 0, p.y - shape.y - shape.h);
    return Math.hypot(dx, dy);
  }
  if (shape.kind === 'bar') return Math.max(0, distanceToSegment(p, shape.a, shape.b) - shape.r);
  return distanceToWedge(shape, p);
}

function distanceToSegment(p: Point, a: Point, b: Point): number {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const length = dx * dx + dy * dy;
  const t = length === 0 ? 0 : Math.min(1, Math.max(0, ((p.x - a.x) * dx + (p.y - a.y) * dy) / length));
  return Math.hypot(p.x - a.x - t * dx, p.y - a.y - t * dy);
}

function distanceToWedge(shape: Extract<Shape, { kind: 'wedge' }>, p: Point): number {
  const radius = Math.hypot(p.x - shape.x, p.y - shape.y);
  const off = Math.abs(wrapDeg(endAngleAt(shape, p.x, p.y) - shape.deg)) - shape.halfDeg;
  const radial = Math.max(shape.inner - radius, 0, radius - shape.outer);
  const around = (Math.max(0, off) * Math.PI * radius) / 180;
  return Math.hypot(radial, around);
}

/** Middle of a shape and the radius of the round that fits in it. */
export function roundOf(shape: Shape): { x: number; y: number; r: number } {
  if (shape.kind === 'circle') return { x: shape.x, y: shape.y, r: shape.r };
  if (shape.kind === 'box') {
    return { x: shape.x + shape.w / 2, y: shape.y + shape.h / 2, r: Math.min(shape.w, shape.h) / 2 };
  }
  if (shape.kind === 'bar') {
    return { x: (shape.a.x + shape.b.x) / 2, y: (shape.a.y + shape.b.y) / 2, r: shape.r };
  }
  const radius = (shape.inner + shape.outer) / 2;
  const rad = (shape.deg * Math.PI) / 180;
  return {
    x: shape.x + radius * Math.sin(rad),
    y: shape.y + radius * Math.cos(rad),
    r: Math.min((shape.outer - shape.inner) / 2, (shape.halfDeg * Math.PI * radius) / 180),
  };
}

/** Area of a shape, px^2. */
export function areaOf(shape: Shape): number {
  if (shape.kind === 'circle') return Math.PI * shape.r ** 2;
  if (shape.kind === 'box') return shape.w * shape.h;
  if (shape.kind === 'bar') {
    const length = Math.hypot(shape.b.x - shape.a.x, shape.b.y - shape.a.y);
    return 2 * shape.r * length + Math.PI * shape.r ** 2;
  }
  return ((shape.outer ** 2 - shape.inner ** 2) * shape.halfDeg * Math.PI) / 180;
}
