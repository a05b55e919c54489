import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { areaOf, distanceTo, roundOf, type Shape } from '../../src/scene/shapes.ts';

const SHAPES: readonly Shape[] = [
  { kind: 'circle', x: 10, y: 20, r: 8 },
  { kind: 'box', x: -5, y: 4, w: 30, h: 12 },
  { kind: 'bar', a: { x: 0, y: 0 }, b: { x: 40, y: 10 }, r: 7 },
  { kind: 'wedge', x: 0, y: 0, inner: 30, outer: 60, deg: -100, halfDeg: 8 },
];

describe('outlines of what can be touched', () => {
  it.each(SHAPES)('a $kind holds its own middle', (shape) => {
    expect(distanceTo(shape, roundOf(shape))).toBe(0);
    expect(areaOf(shape)).toBeGreaterThan(0);
  });

  it.each(SHAPES)('no point is further from a $kind than from its middle', (shape) => {
    const middle = roundOf(shape);
    fc.assert(
      fc.property(
        fc.double({ min: -200, max: 200, noNaN: true }),
        fc.double({ min: -200, max: 200, noNaN: true }),
        (x, y) => {
          const d = distanceTo(shape, { x, y });
          expect(d).toBeGreaterThanOrEqual(0);
          // Round a wedge the way is measured along the arc, which is never longer than half a turn of it.
          const way = Math.hypot(x - middle.x, y - middle.y) * (shape.kind === 'wedge' ? Math.PI : 1);
          expect(d).toBeLessThanOrEqual(way + 1e-6);
        },
      ),
    );
  });

  it('a wedge reaches across the turn from 180 to -180 degrees', () => {
    const top: Shape = { kind: 'wedge', x: 0, y: 0, inner: 10, outer: 20, deg: 178, halfDeg: 6 };
    expect(distanceTo(top, { x: -0.5, y: -15 })).toBe(0);
  });
});
