import type { PartType } from './desk.ts';
import { RINGS, type Ring, type Spot, spotsIn } from './spots.ts';

/** Radii of the rings in the end view, inner and outer, in units of a picture 200 wide. */
export const RADII: Readonly<Record<Ring, readonly [inner: number, outer: number]>> = {
  surface: [0, 20],
  bar: [23, 41],
  gap: [23, 41],
  riser: [43, 51],
  slot: [53, 66],
  coil: [68, 83],
  core: [88, 95],
};

/** Middle of a place and half of what it takes of the circle, degrees from the bottom, counter-clockwise. */
export function sectorOf({ ring, n }: Spot, part: PartType): { readonly mid: number; readonly half: number } {
  const { view, coils } = part;
  const pitch = 360 / view.bars;
  const bar = view.barZeroDeg + n * pitch;
  if (ring === 'bar') return { mid: bar, half: 0.32 * pitch };
  if (ring === 'gap') return { mid: bar + pitch / 2, half: 0.16 * pitch };
  if (ring === 'riser') return { mid: bar, half: 0.36 * pitch };
  if (ring === 'slot') return { mid: (360 * n) / view.slots, half: 0.4 * (360 / view.slots) };
  if (ring === 'coil') return coilSector(n, coils, view.slots);
  return { mid: 0, half: 180 };
}

/** Top sides that share a slot lie side by side. */
function coilSector(coil: number, coils: PartType['coils'], slots: number): { mid: number; half: number } {
  const slot = coils[coil]?.topSlot ?? 0;
  const mates = coils.flatMap((one, n) => (one.topSlot === slot ? [n] : []));
  const width = (0.84 * (360 / slots)) / mates.length;
  const offset = (mates.indexOf(coil) - (mates.length - 1) / 2) * width;
  return { mid: (360 * slot) / slots + offset, half: 0.44 * width };
}

function point(radius: number, deg: number): string {
  const rad = (deg * Math.PI) / 180;
  return `${(radius * Math.sin(rad)).toFixed(2)} ${(radius * Math.cos(rad)).toFixed(2)}`;
}

/** Outline of a place as the data of a path; full rings are drawn as discs with a hole. */
export function outlineOf(spot: Spot, part: PartType): string {
  const [inner, outer] = RADII[spot.ring];
  if (spotsIn(spot.ring, part) === 1) return disc(outer) + (inner > 0 ? disc(inner) : '');
  const { mid, half } = sectorOf(spot, part);
  return sectorPath([inner, outer], mid, half);
}

/** Part of a ring: radii in units of the picture, middle and half of its width in degrees from the bottom. */
export function sectorPath([inner, outer]: readonly [number, number], mid: number, half: number): string {
  const [from, to] = [mid - half, mid + half];
  return (
    `M${point(outer, from)}A${outer} ${outer} 0 0 0 ${point(outer, to)}` +
    `L${point(inner, to)}A${inner} ${inner} 0 0 1 ${point(inner, from)}Z`
  );
}

const disc = (r: number) => `M0 ${r}A${r} ${r} 0 1 0 0 ${-r}A${r} ${r} 0 1 0 0 ${r}Z`;

/** How far apart two directions are, 0..180 degrees. */
const apart = (a: number, b: number) => Math.abs(((((a - b + 180) % 360) + 360) % 360) - 180);

/** The place one further round its ring in the sense of rising angle, or the nearest on the next ring out or in. */
export function moved(spot: Spot, round: number, out: number, part: PartType): Spot {
  const from = spotsIn(spot.ring, part);
  if (out === 0) return { ring: spot.ring, n: (spot.n + round + from) % from };
  const at = Math.min(RINGS.length - 1, Math.max(0, RINGS.indexOf(spot.ring) + out));
  const ring = RINGS[at]!;
  if (ring === spot.ring) return spot;
  const { mid } = sectorOf(spot, part);
  const away = (n: number) => apart(sectorOf({ ring, n }, part).mid, mid);
  const all = Array.from({ length: spotsIn(ring, part) }, (_, n) => n);
  return { ring, n: all.reduce((best, n) => (away(n) < away(best) - 1e-9 ? n : best), 0) };
}
