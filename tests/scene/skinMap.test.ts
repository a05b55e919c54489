import { describe, expect, it } from 'vitest';
import { onSide, TILT_DEG } from '../../src/scene/project.ts';
import { laySkin } from '../../src/scene/skinLaying.ts';
import { type SkinMap, skinMap } from '../../src/scene/skinMap.ts';
import { SKIN_TURNS } from '../../src/scene/skinPlan.ts';
import type { Ring } from '../../src/scene/turningSkin.ts';

const AXIS_Y = 100.3;
const SKIN = { pixelWidth: 160, pixelHeight: 240 };
const CYLINDER: readonly Ring[] = [ring(20.4, 60, 0.5), ring(170.4, 60, 150.5)];
const TAPER: readonly Ring[] = [ring(20.4, 40, 0.5), ring(90.4, 60, 70.5), ring(170.4, 64, 150.5)];

function ring(x: number, radius: number, column: number): Ring {
  return { x, radius, u: column / SKIN.pixelWidth };
}

/** A skin of which every px says where it lies: its column in the first byte, its row in the second. */
function telling(): { px: Uint32Array; stride: number } {
  const { pixelWidth: stride, pixelHeight } = SKIN;
  const px = Uint32Array.from(
    { length: stride * (pixelHeight + 1) },
    (_, i) => 0xff000000 | (Math.floor(i / stride) << 8) | (i % stride),
  );
  return { px, stride };
}

function laid(map: SkinMap, down: number): Uint32Array {
  const out = new Uint32Array(map.width * map.height);
  laySkin(map, telling(), down, out);
  return out;
}

/** Places on the visible half, not quite up to the outline, where a px holds many rows. */
function places(rings: readonly Ring[]) {
  return rings.slice(1).flatMap((b, i) =>
    [0.1, 0.5, 0.9].flatMap((share) =>
      [25, 50, 90, 131, 155].map((deg) => {
        const a = rings[i]!;
        const mix = (from: number, to: number) => from + (to - from) * share;
        const u = mix(a.u, b.u) * SKIN.pixelWidth - 0.5;
        const seen = onSide(AXIS_Y, mix(a.x, b.x), mix(a.radius, b.radius), -180 - TILT_DEG + deg);
        return { seen, column: u, row: (deg / (360 * SKIN_TURNS)) * SKIN.pixelHeight };
      }),
    ),
  );
}

describe.each([
  ['a cylinder', CYLINDER],
  ['a taper', TAPER],
])('the skin laid on %s', (_, rings) => {
  it.each([1, 2, 1.5])('shows every place where it is seen, at %f px per px', (resolution) => {
    const map = skinMap(AXIS_Y, rings, SKIN, resolution);
    for (const down of [0, 17.25, 159.6]) {
      const out = laid(map, down);
      for (const { seen, column, row } of places(rings)) {
        const x = Math.floor((seen.x - map.box.x) * resolution);
        const y = Math.floor((seen.y - map.box.y) * resolution);
        const px = out[y * map.width + x]!;
        // It tells whole px, and the middle of a px lies up to a row away near the outline.
        expect(Math.abs((px & 255) - column)).toBeLessThan(2);
        expect(Math.abs(((px >> 8) & 255) - row - Math.max(0, down - 0.5))).toBeLessThan(2);
        expect(px >>> 24).toBe(255);
      }
    }
  });
});

it('covers what its outline encloses, a px of the outline as much as lies within', () => {
  const [a, b] = [CYLINDER[0]!, CYLINDER[1]!];
  const map = skinMap(AXIS_Y, CYLINDER, SKIN, 1);
  const covered = laid(map, 0).reduce((sum, px) => sum + (px >>> 24) / 255, 0);
  // Every line is as long as the part, and goes on for 0.6 px under what comes next.
  expect(covered / ((b.x - a.x + 0.6) * 2 * a.radius)).toBeCloseTo(1, 2);
});

it('a skin that is turned slowly moves by parts of a px', () => {
  const map = skinMap(AXIS_Y, CYLINDER, SKIN, 1);
  const middle = Math.round(AXIS_Y - map.box.y) * map.width + 80;
  const { px, stride } = telling();
  // Grows lighter by eight from row to row, so that an eighth of a row is told apart.
  const skin = { px: px.map((_, i) => 0xff000000 | clamped(8 * (Math.floor(i / stride) - 100))), stride };
  const shown = Array.from({ length: 200 }, (_, i) => {
    const out = new Uint32Array(map.width * map.height);
    laySkin(map, skin, 65 + i / 8, out);
    return out[middle]! & 255;
  });
  for (const [i, value] of shown.entries()) if (i > 0) expect([0, 1, 2]).toContain(value - shown[i - 1]!);
  expect(Math.abs(shown.at(-1)! - shown[0]! - 199)).toBeLessThanOrEqual(2);
});

function clamped(byte: number): number {
  return Math.min(255, Math.max(0, byte));
}
