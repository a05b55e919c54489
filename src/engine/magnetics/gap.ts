import type { GrowlerDesign } from '../growler.ts';
import { MU0 } from '../math/constants.ts';
import type { ArmatureDesign } from '../parts/armature.ts';

/** Where a point outside or on the core stands to a jaw face. Filled in by `toJaw`, so that loops allocate nothing. */
export interface JawView {
  /** Equivalent gap, m. */
  gap: number;
  /** Straight distance to the closest point of the face, m, and the unit vector that way (x, y). */
  distance: number;
  towardX: number;
  towardY: number;
  /** Whether that closest point is an end of the face. */
  beyondEnds: boolean;
}

export function newJawView(): JawView {
  return { gap: 0, distance: 0, towardX: 0, towardY: 0, beyondEnds: false };
}

/** Largest angle between normal and line of sight that the gap formula follows, rad. */
const WIDEST = 2.7;

/**
 * Equivalent gap from a point of the core's surface to a jaw face.
 * g = d·ψ/sin ψ, d distance to the closest point of the face, ψ angle between the normal and that direction: the
 * length of a circular flux line that leaves the core along its normal. Near the contact line g → g0 + r·δ²/2.
 * @param beta    place of the point from the bottom, rad, positive towards the far jaw
 * @param radius  distance of the point from the armature's centre, m
 * @param side    +1 far jaw (+45 degrees), -1 near jaw (-45 degrees)
 */
export function toJaw(
  a: ArmatureDesign,
  g: GrowlerDesign,
  beta: number,
  radius: number,
  side: 1 | -1,
  view: JawView,
): void {
  const sin = Math.sin(beta);
  const cos = Math.cos(beta);
  const x = radius * sin;
  const y = -radius * cos;
  const apexY = -(a.outerRadius + a.jawGap) * Math.SQRT2;
  const along = (side * x + y - apexY) * Math.SQRT1_2;
  const clamped = Math.min(g.faceTo, Math.max(g.faceFrom, along));
  const dx = side * clamped * Math.SQRT1_2 - x;
  const dy = apexY + clamped * Math.SQRT1_2 - y;
  const d = Math.hypot(dx, dy);
  const psi = Math.min(WIDEST, Math.acos(Math.min(1, Math.max(-1, (dx * sin - dy * cos) / d))));
  view.distance = d;
  view.towardX = dx / d;
  view.towardY = dy / d;
  view.beyondEnds = clamped !== along;
  view.gap = psi < 1e-6 ? d : (d * psi) / Math.sin(psi);
}

/**
 * Carter's fraction: the share of a slot mouth's flux that is lost to the mouth.
 * κ = (2/π)·(atan x − ln(1 + x²)/(2x)), x = b0/(2g)
 * @source F. W. Carter, Journal IEE 29 (1901), from memory
 */
export function carterFraction(mouth: number, gap: number): number {
  const x = mouth / (2 * gap);
  return (2 / Math.PI) * (Math.atan(x) - Math.log(1 + x * x) / (2 * x));
}

/**
 * Permeance from one tooth tip to the next across the slot mouth, per metre.
 * μ0·[h0/b0 + h1·ln(bs/b0)/(bs − b0) + c·g/(g + b0)]; the last term is the field bulging outward, which a jaw close
 * by takes away. c = 0.786 fitted to FEM.
 * @param gap smaller jaw gap at the mouth, m
 */
export function mouthPermeance(a: ArmatureDesign, gap: number): number {
  const { slotMouth: b0, slotWidth: bs } = a;
  const taper = bs - b0 < 1e-9 * bs ? 1 / bs : Math.log(bs / b0) / (bs - b0);
  return MU0 * (a.lipHeight / b0 + a.wedgeHeight * taper + (0.786 * gap) / (gap + b0));
}
