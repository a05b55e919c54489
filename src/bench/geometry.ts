/**
 * Angles of the bench, in degrees from the bottom of the armature, seen from the commutator end, positive towards
 * the far jaw (+45); the near jaw, on the side of the person working, stands at -45 and -90 points at that person.
 */

/** Wraps an angle into (-180, 180]. */
export function wrapDeg(deg: number): number {
  const wrapped = ((((deg + 180) % 360) + 360) % 360) - 180;
  return wrapped === -180 ? 180 : wrapped;
}

/** What the outside of an armature shows anyone: all that drawing, reaching and counting need. */
export interface CommutatorGeometry {
  readonly bars: number;
  /** Angle of bar 0 from the bottom when the rotation is zero, degrees. */
  readonly barZeroDeg: number;
}

/** Angle of a bar's middle from the bottom at the given rotation, degrees in (-180, 180]. */
export function barAngleDeg(g: CommutatorGeometry, bar: number, rotationDeg: number): number {
  return wrapDeg(g.barZeroDeg + rotationDeg + (360 * bar) / g.bars);
}

/** The bar whose middle is nearest to a fixed station, at the given rotation; ties go to the higher number. */
export function barAt(g: CommutatorGeometry, stationDeg: number, rotationDeg: number): number {
  const turns = (stationDeg - rotationDeg - g.barZeroDeg) / (360 / g.bars);
  return ((Math.round(turns) % g.bars) + g.bars) % g.bars;
}

/** The side of the commutator a person standing in front can get a probe or a lens to: 115 degrees either way. */
export const REACH_CENTRE_DEG = -90;
export const REACH_HALF_DEG = 115;

export function canReach(angleDeg: number): boolean {
  return Math.abs(wrapDeg(angleDeg - REACH_CENTRE_DEG)) <= REACH_HALF_DEG;
}

/** The upper arc over which the strip can be held just above the core, degrees from the bottom. */
export const STRIP_ARC_DEG = { from: 65, to: 295, clearFrom: 95, clearTo: 265 } as const;
