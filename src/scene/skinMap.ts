import type { Rect } from './layout.ts';
import { YAW } from './project.ts';
import { SKIN_TURNS } from './skinPlan.ts';
import type { Ring } from './turningSkin.ts';
import { wholeAround } from './wholePixels.ts';

/** Places on a skin are counted in parts of one of its px. */
export const PARTS = 65536;
/** Numbers that make a run: its first px, the one after its last, column and row of the first, and their steps. */
export const RUN = 6;

/** By so little a run may miss its places when its px are taken side by side, parts of a px of the skin. */
const ASTRAY = PARTS / 4;

/** So far a stretch goes on under the next one, that nothing gapes between them, CSS px. */
const LAP = 0.6;

/** Which places of an unrolled skin the px of a turned part show. Turning the part adds one number to all rows. */
export interface SkinMap {
  /** What it covers, CSS px of the host. */
  readonly box: Rect;
  /** Device px. */
  readonly width: number;
  readonly height: number;
  /**
   * Px of one line that show evenly spaced places, six numbers each. A px is counted from the picture's corner, line
   * after line; columns and rows are in parts, rows from the one that lies uppermost.
   */
  readonly runs: Int32Array;
  /** Px that are covered in part only, each followed by how much, 0..255. */
  readonly edges: Int32Array;
}

/** A skin in its own px. */
export interface SkinSize {
  readonly pixelWidth: number;
  readonly pixelHeight: number;
}

/** A ring as one line of the picture meets it. */
interface Crossing {
  /** Device px of the picture. */
  readonly x: number;
  /** On the skin, parts. */
  readonly column: number;
  readonly row: number;
  /** Share of the line's height that lies within the outline, 0..1. */
  readonly covered: number;
}

/** @param resolution device px of the picture per CSS px */
export function skinMap(axisY: number, rings: readonly Ring[], skin: SkinSize, resolution: number): SkinMap {
  const box = boxOf(axisY, rings);
  const width = Math.ceil(box.w * resolution);
  const height = Math.ceil(box.h * resolution);
  const inPx = rings.map(({ x, radius, u }) => ({
    x: (x - box.x) * resolution,
    radius: radius * resolution,
    u,
  }));
  const lines = new Lines(width, LAP * resolution);
  for (let y = 0; y < height; y++)
    lines.add(y, crossings(inPx, y + 0.5 - (axisY - box.y) * resolution, skin));
  return { box, width, height, runs: new Int32Array(lines.runs), edges: new Int32Array(lines.edges) };
}

/** Whole px round the part, with one to spare for its outline. */
function boxOf(axisY: number, rings: readonly Ring[]): Rect {
  const radius = Math.max(...rings.map((ring) => ring.radius)) + 1;
  const left = Math.min(...rings.map((ring) => ring.x - YAW * ring.radius)) - 1;
  const right = Math.max(...rings.map((ring) => ring.x)) + LAP + 1;
  return wholeAround({ x: left, y: axisY - radius, w: right - left, h: 2 * radius });
}

function between(a: Ring, b: Ring, share: number): Ring {
  return {
    x: mix(a.x, b.x, share),
    radius: mix(a.radius, b.radius, share),
    u: mix(a.u, b.u, share),
  };
}

function mix(from: number, to: number, share: number): number {
  return from + (to - from) * share;
}

/** @param off of the line's middle from the axis, px */
function crossings(rings: readonly Ring[], off: number, skin: SkinSize): readonly Crossing[] {
  // Half a line lower its upper edge still shows a little of the part.
  const reach = Math.abs(off) - 0.5;
  const met: Crossing[] = [];
  for (let i = 0; i < rings.length; i++) {
    const ring = rings[i]!;
    const before = rings[i - 1] ?? ring;
    if (before.radius !== ring.radius)
      for (const share of bends(before, ring, reach))
        met.push(crossing(between(before, ring, share), off, skin));
    if (ring.radius > reach) met.push(crossing(ring, off, skin));
  }
  return met;
}

/**
 * Where between two rings a line that is followed straight would miss the taper: where it comes into sight, where it is
 * covered whole, and the closer to that the more.
 * @param reach radius that comes into sight, px
 * @returns shares of the way, in order
 */
function bends(a: Ring, b: Ring, reach: number): readonly number[] {
  const whole = reach + 1;
  const room = Math.max(a.radius, b.radius) - whole;
  return [reach, whole, whole + room / 16, whole + room / 4, whole + (room * 9) / 16]
    .map((radius) => (radius - a.radius) / (b.radius - a.radius))
    .filter((share) => share > 0 && share < 1)
    .sort((p, q) => p - q);
}

function crossing({ x, radius, u }: Ring, off: number, { pixelWidth, pixelHeight }: SkinSize): Crossing {
  const height = Math.min(1, Math.max(-1, off / radius));
  const halfTurn = pixelHeight / (2 * SKIN_TURNS);
  return {
    x: x - YAW * radius * Math.sqrt(1 - height * height),
    column: (u * pixelWidth - 0.5) * PARTS,
    row: (Math.acos(-height) / Math.PI) * halfTurn * PARTS,
    covered: Math.min(1, Math.max(0, radius - Math.abs(off) + 0.5)),
  };
}

/**
 * Goes along each line of the picture from ring to ring. Where a taper turns away from the eye it runs back, and is
 * covered by what comes after.
 */
class Lines {
  readonly runs: number[] = [];
  readonly edges: number[] = [];
  private readonly width: number;
  private readonly lap: number;
  /** First px of the line. */
  private start = 0;

  /** @param lap how far a line goes on beyond the last ring, px */
  constructor(width: number, lap: number) {
    this.width = width;
    this.lap = lap;
  }

  add(y: number, met: readonly Crossing[]): void {
    const first = met[0];
    const last = met.at(-1);
    if (!first || !last) return;
    this.start = y * this.width;
    let left = first.x;
    for (const { x } of met) left = Math.min(left, x);
    const right = last.x + this.lap;
    this.run(Math.floor(left), middleAfter(first.x), first, first);
    for (let i = 1; i < met.length; i++)
      this.run(middleAfter(met[i - 1]!.x), middleAfter(met[i]!.x), met[i - 1]!, met[i]!);
    this.run(middleAfter(last.x), Math.ceil(right), last, last);
    this.ends(met, left, right);
  }

  private run(from: number, to: number, a: Crossing, b: Crossing): void {
    if (to <= from) return;
    const share = a === b ? 0 : 1 / (b.x - a.x);
    const column = (b.column - a.column) * share;
    const row = (b.row - a.row) * share;
    const beyond = from + 0.5 - a.x;
    // Even runs are laid in a fraction of the time.
    const astray = (column - PARTS) * (to - from);
    const even = Math.abs(astray) < ASTRAY;
    this.runs.push(
      this.start + from,
      this.start + to,
      Math.round(a.column + column * beyond + (even ? astray / 2 : 0)),
      Math.round(a.row + row * beyond),
      even ? PARTS : Math.round(column),
      Math.round(row),
    );
  }

  private ends(met: readonly Crossing[], left: number, right: number): void {
    const from = Math.floor(left);
    const to = Math.ceil(right);
    // Most lines are covered all along, but for their ends.
    const whole = met.every(({ covered }) => covered === 1);
    for (let x = from; x < to; x = whole && x < to - 1 ? to - 1 : x + 1) {
      const across = Math.min(1, x + 1 - left, right - x);
      const alpha = Math.round(255 * across * (whole ? 1 : coveredAt(met, x + 0.5)));
      if (alpha < 255) this.edges.push(this.start + x, alpha);
    }
  }
}

function coveredAt(met: readonly Crossing[], x: number): number {
  const i = met.findLastIndex((each, at) => at === 0 || each.x <= x);
  const a = met[i]!;
  const b = met[i + 1] ?? a;
  return b.x > a.x ? mix(a.covered, b.covered, Math.max(0, (x - a.x) / (b.x - a.x))) : a.covered;
}

/** The first px whose middle lies at x or after it. */
function middleAfter(x: number): number {
  return Math.ceil(x - 0.5);
}
