import { describe, expect, it } from 'vitest';
import { View } from '../../src/scene/view.ts';

function view(): View {
  const made = new View(() => {});
  made.fit({ width: 1000, height: 600 });
  return made;
}

describe('looking closer', () => {
  it('keeps what is under the pointer under the pointer, and finds the way back and forth', () => {
    const eye = view();
    const shown = { x: 420, y: 250 };
    const before = eye.toBench(shown);
    eye.zoom(1.8, shown);
    expect(eye.toBench(shown).x).toBeCloseTo(before.x, 9);
    expect(eye.toBench(shown).y).toBeCloseTo(before.y, 9);
    const there = eye.toShown(eye.toBench({ x: 17, y: 599 }));
    expect(there.x).toBeCloseTo(17, 9);
    expect(there.y).toBeCloseTo(599, 9);
  });

  it('never shows anything beyond the bench, nor less than the whole of it', () => {
    const eye = view();
    for (const [factor, x, y] of [
      [2, 0, 0],
      [1.5, 1000, 600],
      [9, 300, 10],
      [0.5, 900, 20],
    ] as const) {
      eye.zoom(factor, { x, y });
      eye.shift(400, -900);
      expect(eye.toShown({ x: 0, y: 0 }).x).toBeLessThanOrEqual(0);
      expect(eye.toShown({ x: 0, y: 0 }).y).toBeLessThanOrEqual(0);
      expect(eye.toShown({ x: 1000, y: 600 }).x).toBeGreaterThanOrEqual(1000);
      expect(eye.toShown({ x: 1000, y: 600 }).y).toBeGreaterThanOrEqual(600);
    }
    eye.zoom(0.01, { x: 10, y: 10 });
    expect([eye.scale, eye.x, eye.y]).toEqual([1, 0, 0]);
    expect(eye.closer).toBe(false);
  });

  it('tells of a change only when there is one', () => {
    let told = 0;
    const eye = new View(() => told++);
    eye.fit({ width: 500, height: 500 });
    eye.whole();
    expect(told).toBe(0);
    eye.closeTo({ x: 250, y: 250 });
    expect([told, eye.closer]).toEqual([1, true]);
    eye.whole();
    expect([told, eye.closer]).toEqual([2, false]);
  });
});
