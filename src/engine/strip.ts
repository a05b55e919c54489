import type { StripForce } from './drive.ts';
import type { GrowlerDesign } from './growler.ts';
import { newJawView, toJaw } from './magnetics/gap.ts';
import { MU0 } from './math/constants.ts';
import type { ArmatureDesign } from './parts/armature.ts';

/** The steel strip of the bench, m and T. Invented; the saturation value is that of spring steel. */
export const STRIP = { thickness: 0.00065, width: 0.013, saturationT: 1.9 } as const;

/** Paper, paint and roughness keep the steel at least this far from the iron, m. */
const CLOSEST = 0.00005;
const ELEMENTS = 52;
/** Fitted to FEM of the same strip: permeance and pull of a tooth, weight over a slot mouth, permeance and reach of a jaw. */
const PERMEANCE = 0.94;
const PULL = 0.82;
const MOUTH = 0.6;
const JAW = 0.95;
const JAW_REACH = 0.0065;

/** Magnetic potentials at one instant of the cycle's complex plane: tooth tips, then near and far jaw; rms A. */
export interface TipPotentials {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/** Permeances of the strip to every tooth and both jaws, per metre of depth, at one place and height. */
interface StripLinks {
  /** p: flux per ampere, H/m; q: pull per ampere squared, N/m/A² (twice); length S + 2. */
  readonly p: Float64Array;
  readonly q: Float64Array;
  /** Tangential pull per ampere squared, jaws only. */
  readonly s: Float64Array;
}

/**
 * Pull on the steel strip held flat above the core, lengthwise. The strip takes the potential at which as much flux
 * enters as leaves, u_b = Σpu/Σp, and each tooth pulls with ½|u_t − u_b|²·q_t: rms phasors give the mean, the complex
 * square gives the part at twice mains frequency. Saturation of the thin steel divides by 1 + (B/Bs)², B its peak flux density.
 * The strip does not disturb the field of growler and armature (a small error).
 * @param rotation   of the core, rad, in the frame of `u`
 * @param angleDeg   middle of the strip from the bottom
 * @param heightM    clear gap strip to core, m
 * @source plane finite elements of the same geometry: 8 % over a slot centre, 20 % beside it
 */
export function stripForce(
  a: ArmatureDesign,
  g: GrowlerDesign,
  depth: number,
  u: TipPotentials,
  rotation: number,
  angleDeg: number,
  heightM: number,
): StripForce {
  const links = stripLinks(a, g, rotation, (angleDeg * Math.PI) / 180, Math.max(CLOSEST, heightM));
  const n = a.slots + 2;
  let sum = 0;
  let bRe = 0;
  let bIm = 0;
  for (let t = 0; t < n; t++) {
    sum += links.p[t]!;
    bRe += links.p[t]! * u.re[t]!;
    bIm += links.p[t]! * u.im[t]!;
  }
  bRe /= sum;
  bIm /= sum;
  let mean = 0;
  let twiceRe = 0;
  let twiceIm = 0;
  let tangential = 0;
  let flux = 0;
  for (let t = 0; t < n; t++) {
    const re = u.re[t]! - bRe;
    const im = u.im[t]! - bIm;
    const square = re * re + im * im;
    mean += square * links.q[t]!;
    twiceRe += (re * re - im * im) * links.q[t]!;
    twiceIm += 2 * re * im * links.q[t]!;
    tangential += square * links.s[t]!;
    flux += links.p[t]! * Math.sqrt(square);
  }
  const b = (Math.SQRT2 * flux) / 2 / STRIP.thickness;
  const half = (0.5 * depth) / (1 + (b / STRIP.saturationT) ** 2);
  return {
    meanN: half * mean,
    alternatingN: half * Math.hypot(twiceRe, twiceIm),
    tangentialN: half * tangential,
  };
}

/** Permeances of a strip standing at `beta` (rad) with a gap `height` (m) to the core. */
function stripLinks(
  a: ArmatureDesign,
  g: GrowlerDesign,
  rotation: number,
  beta: number,
  height: number,
): StripLinks {
  const n = a.slots + 2;
  const links = { p: new Float64Array(n), q: new Float64Array(n), s: new Float64Array(n) };
  const dx = STRIP.width / ELEMENTS;
  const seat = a.outerRadius + height;
  for (let k = 0; k < ELEMENTS; k++) {
    const x = (k + 0.5) * dx - STRIP.width / 2;
    const radius = Math.hypot(x, seat);
    const at = beta + Math.atan2(x, seat);
    addTooth(a, links, at - rotation, radius - a.outerRadius, dx);
    const back = beta + Math.atan2(x, seat + STRIP.thickness);
    const backRadius = Math.hypot(x, seat + STRIP.thickness);
    addJaw(a, g, links, -1, back, backRadius, beta, dx);
    addJaw(a, g, links, 1, back, backRadius, beta, dx);
  }
  return links;
}

/** One element of the strip above the core; over a slot mouth its flux bends aside to the nearer tooth edge. */
function addTooth(a: ArmatureDesign, { p, q }: StripLinks, fromSlot0: number, gap: number, dx: number): void {
  const pitch = (2 * Math.PI) / a.slots;
  const turns = fromSlot0 / pitch;
  const slot = Math.round(turns);
  const beside = (turns - slot) * pitch * a.outerRadius;
  const overMouth = a.slotMouth / 2 - Math.abs(beside);
  const tooth = (((beside >= 0 ? slot : slot - 1) % a.slots) + a.slots) % a.slots;
  const path = overMouth > 0 ? Math.hypot(gap, overMouth) : gap;
  const weight = (overMouth > 0 ? MOUTH : 1) * MU0 * dx;
  p[tooth]! += (PERMEANCE * weight) / path;
  q[tooth]! += (PULL * weight) / (path * path);
}

/**
 * One element of the strip's upper side and a jaw, whose ends stand higher than the strip: pulled straight towards
 * the closest point of the face, and never nearer to it than roughness allows.
 */
function addJaw(
  a: ArmatureDesign,
  g: GrowlerDesign,
  { p, q, s }: StripLinks,
  side: 1 | -1,
  at: number,
  radius: number,
  beta: number,
  dx: number,
): void {
  toJaw(a, g, at, radius, side, view);
  const d = Math.max(CLOSEST, view.distance);
  const fade = 1 + (d / JAW_REACH) ** 2;
  const jaw = a.slots + (side < 0 ? 0 : 1);
  p[jaw]! += (MU0 * JAW * dx) / (d * fade);
  const pull = (MU0 * JAW * dx) / (d * d * fade);
  const outward = view.towardX * Math.sin(beta) - view.towardY * Math.cos(beta);
  const along = view.towardX * Math.cos(beta) + view.towardY * Math.sin(beta);
  q[jaw]! -= pull * outward;
  s[jaw]! += pull * along;
}

const view = newJawView();
