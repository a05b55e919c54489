import type { StripForce } from './drive.ts';
import type { GrowlerDesign } from './growler.ts';
import type { ArmatureDesign } from './parts/armature.ts';
import { lookAtStrip, newStripLinks, STRIP, type StripLinks } from './stripLinks.ts';

export { STRIP };

/** Magnetic potentials at one instant of the cycle's complex plane: tooth tips, then near and far jaw; rms A. */
export interface TipPotentials {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/**
 * Pull on the steel strip held flat above the core, lengthwise. The strip takes the potential at which as much flux
 * enters as leaves, u_b = Σpu/Σp, and each tooth pulls with ½|u_t − u_b|²·q_t: rms phasors give the mean, the complex
 * square gives the part at twice mains frequency. Saturation of the thin steel divides by 1 + (B/Bs)², B its peak flux density.
 * The potentials are taken as they come: what the strip does to the currents under it is the caller's affair.
 * Range: 90 to 270 degrees from the bottom; 5 % of the pull over the slot with its middle up to half a slot pitch
 * aside, gaps of 0.5 to 1 mm; beside a jaw (75 degrees) 10 % of a coil's pull; the jaws' own to a factor of two near 90.
 * @param rotation   of the core, rad, in the frame of `u`
 * @param angleDeg   middle of the strip from the bottom
 * @param heightM    clear gap strip to core, m
 * @source five constants fitted to plane finite elements of the same strip on two armatures (fem-strip.json)
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
  const links = newStripLinks(a.slots);
  lookAtStrip(a, g, rotation, angleDeg, heightM, links);
  return pullOf(links, depth, u);
}

/** The pull once the strip has been looked at. */
export function pullOf({ count, places, p, q, s }: StripLinks, depth: number, u: TipPotentials): StripForce {
  const touched = { count, places, p };
  const strip = stripPotential(touched, u);
  let mean = 0;
  let twiceRe = 0;
  let twiceIm = 0;
  let tangential = 0;
  for (let k = 0; k < count; k++) {
    const re = u.re[places[k]!]! - strip.re;
    const im = u.im[places[k]!]! - strip.im;
    const square = re * re + im * im;
    mean += square * q[k]!;
    twiceRe += (re * re - im * im) * q[k]!;
    twiceIm += 2 * re * im * q[k]!;
    tangential += square * s[k]!;
  }
  const half = (0.5 * depth) / (1 + (stripTesla(stripFlux(touched, u)) / STRIP.saturationT) ** 2);
  return {
    meanN: half * mean,
    alternatingN: half * Math.sqrt(twiceRe * twiceRe + twiceIm * twiceIm),
    tangentialN: half * tangential,
  };
}

/** The potential at which as much flux enters the strip as leaves it. */
function stripPotential({ count, places, p }: Touched, u: TipPotentials): { re: number; im: number } {
  let sum = 0;
  let re = 0;
  let im = 0;
  for (let k = 0; k < count; k++) {
    sum += p[k]!;
    re += p[k]! * u.re[places[k]!]!;
    im += p[k]! * u.im[places[k]!]!;
  }
  return { re: re / sum, im: im / sum };
}

type Touched = Pick<StripLinks, 'count' | 'places' | 'p'>;

/** All flux into the strip and out of it, rms, Wb/m: twice what it carries. */
export function stripFlux({ count, places, p }: Touched, u: TipPotentials): number {
  const strip = stripPotential({ count, places, p }, u);
  let flux = 0;
  for (let k = 0; k < count; k++) {
    const re = u.re[places[k]!]! - strip.re;
    const im = u.im[places[k]!]! - strip.im;
    flux += p[k]! * Math.sqrt(re * re + im * im);
  }
  return flux;
}

/** Peak flux density of the strip, T. @param flux as `stripFlux` has it, Wb/m */
export function stripTesla(flux: number): number {
  return (Math.SQRT2 * flux) / 2 / STRIP.thickness;
}
