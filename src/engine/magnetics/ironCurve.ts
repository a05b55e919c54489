import { MU0 } from '../math/constants.ts';

/** Saturation polarisation of the armature's laminations, T: Armco-type iron 2.12 (published tables); 2.0 as in the finite elements. */
const SATURATION = 2;

/**
 * Iron whose polarisation follows an arc tangent: B = μ0·H + (2·Js/π)·atan(π·(μr − 1)·μ0·H/(2·Js)).
 * Valid for B from 0 to about 2.2 T; no hysteresis.
 * @source usual one-knee fit of a magnetisation curve (the curve of the finite-element reference, fem-saturation.json)
 */
export interface IronCurve {
  readonly relativePermeability: number;
  /** π·(μr − 1)·μ0/(2·Js), m/A */
  readonly knee: number;
}

export function ironCurve(relativePermeability: number): IronCurve {
  return { relativePermeability, knee: (Math.PI * (relativePermeability - 1) * MU0) / (2 * SATURATION) };
}

const SLOPE = (2 * SATURATION) / Math.PI;

/**
 * Field strength (A/m) that drives a flux through iron with air beside it, per metre of depth:
 * B(H)·iron + μ0·H·air = flux.
 * The sum is concave, so Newton's steps climb to the answer from the left and never pass it.
 * @param flux Wb/m, >= 0  @param iron width of iron, m, > 0  @param air width of air beside it, m, >= 0
 */
export function fieldStrength(curve: IronCurve, flux: number, iron: number, air: number): number {
  const { knee } = curve;
  // Less than both of these it cannot be: iron never carries more than unsaturated, nor more than Js beyond air.
  const unsaturated = flux / ((iron * curve.relativePermeability + air) * MU0);
  let h = Math.max(unsaturated, (flux - SATURATION * iron) / (MU0 * (iron + air)));
  for (let pass = 0; pass < 60; pass++) {
    const carried = (MU0 * h + SLOPE * Math.atan(knee * h)) * iron + MU0 * h * air;
    const step = (flux - carried) / fluxSlope(curve, h, iron, air);
    h += step;
    if (step <= 1e-10 * h) break;
  }
  return h;
}

/** Change of that flux with the field strength, H/m·m. */
export function fluxSlope({ knee }: IronCurve, h: number, iron: number, air: number): number {
  return (MU0 + (SLOPE * knee) / (1 + knee * knee * h * h)) * iron + MU0 * air;
}
