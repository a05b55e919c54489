import type { GrowlerDesign } from '../growler.ts';

/** Half cylinder between two edges that face one another, per length of edge, in units of μ0. */
const HALF_CYLINDER = 0.26;
/** Quarter of a sphere at the corner of a gap, per width of the gap, in units of μ0. */
const QUARTER_SPHERE = 0.077;
/** Slices in which each straight stretch of the jaws is taken. */
const SLICES = 16;

/**
 * Permeance from jaw to jaw round the two ends of an empty growler, in units of μ0, m: what a plane solution does not
 * see. Each slice of height has, at front and back, a half cylinder between its facing edges and half hollow
 * cylinders from end face to end face, (1/π)·ln(1 + t/r_i) with r_i half the gap and t the iron behind it; two quarter
 * spheres close the corners at the mouth of the V.
 * Range: jaws no deeper than wide, ±15 % of the whole empty inductance (tubes of other shape give factors of 1.2 to
 * 1.6 on the plane value; these give 1.38 for the growler of the bench). Never compared with a measurement.
 * @source flux tubes of H. C. Roters, Electromagnetic Devices (1941), as coded in the Modelica Standard Library
 */
export function openEnds(g: GrowlerDesign): number {
  const inner = jawOutline(g);
  let ends = 2 * QUARTER_SPHERE * 2 * g.faceTo * Math.SQRT1_2;
  for (let k = 1; k < inner.length; k++) ends += 2 * stretch(inner[k - 1]!, inner[k]!, g.jaws.outer);
  return ends;
}

/** Place on the inner outline of the far jaw: height above the apex of the V, distance from the middle, m. */
interface Place {
  readonly height: number;
  readonly aside: number;
}

/** From the top of the winding up the leg, along the shoulder to the nose, and up the face. */
function jawOutline(g: GrowlerDesign): Place[] {
  const { jaws } = g;
  const nose = g.faceFrom * Math.SQRT1_2;
  const tip = g.faceTo * Math.SQRT1_2;
  return [
    { height: jaws.windingTop, aside: jaws.inner },
    { height: jaws.shoulder, aside: jaws.inner },
    { height: jaws.nose, aside: nose },
    { height: nose, aside: nose },
    { height: tip, aside: tip },
  ];
}

function stretch(from: Place, to: Place, outer: number): number {
  const rise = (to.height - from.height) / SLICES;
  let sum = 0;
  for (let k = 0; k < SLICES; k++) {
    const aside = from.aside + ((k + 0.5) / SLICES) * (to.aside - from.aside);
    sum += rise * (HALF_CYLINDER + Math.log(outer / aside) / Math.PI);
  }
  return sum;
}
