import { expect, it } from 'vitest';
import { layOut, type Rect } from '../../src/scene/layout.ts';
import {
  POSITIONS,
  selectorLetters,
  selectorMark,
  selectorShape,
} from '../../src/scene/panel/selectorShape.ts';
import { JOB } from './bench.ts';

/** Widths of the words in the bench’s own letters as a browser measures them, and the height of capitals, in ems. */
const WIDE = { off: 1.88, low: 2.15, high: 2.53 } as const;
const HIGH = 0.69;
/** Between what is engraved and what turns, px. */
const APART = 1;

function wordRects(box: Rect): Rect[] {
  const size = selectorLetters(selectorShape(box));
  return POSITIONS.map(({ to }) => {
    const at = selectorMark(box, to);
    const [w, h] = [WIDE[to] * size, HIGH * size];
    return { x: at.x - w / 2, y: at.y - h / 2, w, h };
  });
}

const away = (from: { x: number; y: number }, { x, y, w, h }: Rect) =>
  Math.hypot(Math.max(x - from.x, from.x - x - w, 0), Math.max(y - from.y, from.y - y - h, 0));
const within = (inner: Rect, outer: Rect) =>
  inner.x >= outer.x &&
  inner.y >= outer.y &&
  inner.x + inner.w <= outer.x + outer.w &&
  inner.y + inner.h <= outer.y + outer.h;
const apart = (a: Rect, b: Rect) =>
  a.x + a.w <= b.x || b.x + b.w <= a.x || a.y + a.h <= b.y || b.y + b.h <= a.y;

it.each([420, 500, 615, 747, 900])(
  'the words of the selector keep clear of its lever, its plate and each other at every width, %i px high',
  (height) => {
    const wrong: string[] = [];
    for (let width = 320; width <= 1500; width += 1) {
      const box = layOut(JOB.armature, width, height).panel.selector;
      const shape = selectorShape(box);
      const words = wordRects(box);
      const [off, low, high] = words;
      if (words.some((word) => away(shape, word) < shape.r + APART)) wrong.push(`${width}: on the lever`);
      if (!words.every((word) => within(word, box))) wrong.push(`${width}: over the plate`);
      if (!(apart(off!, low!) && apart(low!, high!) && apart(off!, high!))) wrong.push(`${width}: together`);
    }
    expect(wrong).toEqual([]);
  },
);
