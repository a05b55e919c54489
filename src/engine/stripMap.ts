import type { GrowlerDesign } from './growler.ts';
import type { SolvedPoint } from './operatingPoint.ts';
import type { ArmatureDesign } from './parts/armature.ts';
import { lookAtStrip, newStripLinks } from './stripLinks.ts';

/** Where the strip is held while the armature is turned under it. */
export interface StripPlaces {
  /** Middles of the strip from the bottom, degrees, 65..295. */
  readonly anglesDeg: ArrayLike<number>;
  /** Clear gap strip to core, m, > 0. */
  readonly heightM: number;
  /** Rotation at which slot 0 is counted from, rad; 0 when left out. */
  readonly fromRad?: number;
}

/**
 * Mean pull, N, at slots × places: row k with the armature turned k slot pitches forward from `fromRad`. A core looks
 * the same after each slot pitch, so the strip is looked at once for every place and each rotation is solved once.
 */
export function stripMap(
  a: ArmatureDesign,
  g: GrowlerDesign,
  at: (rotationRad: number) => SolvedPoint,
  { anglesDeg, heightM, fromRad = 0 }: StripPlaces,
): Float64Array {
  const pitch = (2 * Math.PI) / a.slots;
  const points = Array.from({ length: a.slots }, (_, k) => at(fromRad + k * pitch));
  const links = newStripLinks(a.slots);
  const out = new Float64Array(a.slots * anglesDeg.length);
  for (let i = 0; i < anglesDeg.length; i++) {
    lookAtStrip(a, g, points[0]!.frameRotation(), anglesDeg[i]!, heightM, links);
    points.forEach((point, k) => {
      out[k * anglesDeg.length + i] = point.stripAt(links).meanN;
    });
  }
  return out;
}
