import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { canReach, wrapDeg } from '../../src/bench/geometry.ts';
import {
  endAngleAt,
  onEnd,
  onSide,
  projectSide,
  sideAngleAt,
  TILT_DEG,
  YAW,
} from '../../src/scene/project.ts';

const angle = fc.double({ min: -180, max: 180, noNaN: true });

describe('the two views of a round thing', () => {
  it('agree with a plain projection of the same point in space', () => {
    fc.assert(
      fc.property(angle, fc.double({ min: 1, max: 200, noNaN: true }), (deg, r) => {
        const rad = (deg * Math.PI) / 180;
        const solid = projectSide(100, 50, -r * Math.sin(rad), -r * Math.cos(rad));
        const seen = onSide(100, 50, r, deg);
        expect(seen.x).toBeCloseTo(solid.x, 6);
        expect(seen.y).toBeCloseTo(solid.y, 6);
      }),
    );
  });

  it('give back the angle that was put on the front of the main view', () => {
    fc.assert(
      fc.property(fc.double({ min: -179, max: -1, noNaN: true }), (tilted) => {
        const deg = wrapDeg(tilted - TILT_DEG);
        const { y } = onSide(0, 0, 80, deg);
        expect(Math.abs(wrapDeg(sideAngleAt(0, 80, y) - deg))).toBeLessThan(1e-3);
      }),
    );
  });

  it('give back the angle that was put on the end view', () => {
    fc.assert(
      fc.property(angle, (deg) => {
        const p = onEnd({ x: 7, y: -3 }, 60, deg);
        expect(Math.abs(wrapDeg(endAngleAt({ x: 7, y: -3 }, p.x, p.y) - deg))).toBeLessThan(1e-6);
      }),
    );
  });

  it('put the bottom down, the far jaw to the right and the person to the left of the end view', () => {
    const g = { x: 0, y: 0 };
    expect(onEnd(g, 10, 0).y).toBeCloseTo(10);
    expect(onEnd(g, 10, 45).x).toBeGreaterThan(0);
    expect(onEnd(g, 10, -90).x).toBeCloseTo(-10);
  });

  it('turn the front of the main view downwards when angles rise', () => {
    const before = onSide(0, 0, 50, -90);
    const after = onSide(0, 0, 50, -80);
    expect(before.facing).toBeGreaterThan(0.9);
    expect(after.y).toBeGreaterThan(before.y);
  });

  it('show only what a hand can get to, but for a few degrees at the top', () => {
    for (let deg = -180; deg < 180; deg += 5) {
      if (onSide(0, 0, 1, deg).facing > 0.3) expect(canReach(deg)).toBe(true);
    }
    expect(YAW).toBeGreaterThan(0);
  });
});
