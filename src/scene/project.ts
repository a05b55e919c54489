import { wrapDeg } from '../bench/geometry.ts';

/** How far above the shaft the eye stands in the main view, degrees. */
export const TILT_DEG = 18;
/** How much the commutator end is turned towards the eye: sine of that angle. */
export const YAW = 0.2;

const RAD = Math.PI / 180;
const SIN_TILT = Math.sin(TILT_DEG * RAD);
const COS_TILT = Math.cos(TILT_DEG * RAD);

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** The armature as drawn in the main view. All CSS px of the host; x runs along the shaft. */
export interface SideGeometry {
  readonly axisY: number;
  /** CSS px per metre of the part. */
  readonly pxPerM: number;
  readonly x: {
    readonly shaftLeft: number;
    readonly windLeft: number;
    readonly coreLeft: number;
    readonly coreRight: number;
    readonly riserLeft: number;
    readonly commLeft: number;
    readonly commRight: number;
    readonly shaftRight: number;
  };
  readonly r: {
    readonly core: number;
    readonly shaft: number;
    readonly winding: number;
    readonly riser: number;
    readonly comm: number;
  };
}

/** The armature as drawn from the commutator end. CSS px of the host. */
export interface EndGeometry {
  readonly x: number;
  readonly y: number;
  readonly core: number;
  readonly riser: number;
  readonly comm: number;
  readonly commInner: number;
  readonly shaft: number;
  readonly pxPerM: number;
}

/** Place in the main view of a point at `along` px, `toward` px to the person and `up` px above the shaft. */
export function projectSide(axisY: number, along: number, toward: number, up: number): Point {
  return {
    x: along - YAW * (toward * COS_TILT + up * SIN_TILT),
    y: axisY - (up * COS_TILT - toward * SIN_TILT),
  };
}

/** Place in the main view of a point on a round of the armature, and how squarely it faces the eye (-1..1). */
export function onSide(
  axisY: number,
  along: number,
  radius: number,
  angleDeg: number,
): Point & { facing: number } {
  const t = (angleDeg + TILT_DEG) * RAD;
  const facing = -Math.sin(t);
  return { x: along - YAW * radius * facing, y: axisY + radius * Math.cos(t), facing };
}

/** The angle of the front surface seen at height y of the main view, degrees in (-180, 180]. */
export function sideAngleAt(axisY: number, radius: number, y: number): number {
  const c = Math.min(1, Math.max(-1, (y - axisY) / radius));
  return wrapDeg(-Math.acos(c) / RAD - TILT_DEG);
}

/** Place in the end view of an angle at a radius: the bottom is down, the far jaw to the right. */
export function onEnd(g: Point, radius: number, angleDeg: number): Point {
  return { x: g.x + radius * Math.sin(angleDeg * RAD), y: g.y + radius * Math.cos(angleDeg * RAD) };
}

/** Angle from the bottom, degrees in (-180, 180], of a point of the end view. */
export function endAngleAt(g: Point, x: number, y: number): number {
  return wrapDeg(Math.atan2(x - g.x, y - g.y) / RAD);
}

/** An angle as the strip counts it, 0..360 from the bottom. */
export function fullTurn(deg: number): number {
  return ((deg % 360) + 360) % 360;
}
