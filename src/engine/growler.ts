import { type Excitation, MAINS, type Mains, type MainsId } from './drive.ts';
import { openEnds } from './magnetics/openJaws.ts';
import { copperRise, MU0 } from './math/constants.ts';

/** One setting of the growler winding. */
export interface GrowlerWinding {
  readonly turns: number;
  /** Resistance at 20 C, ohm. */
  readonly ohm20: number;
}

/** Outline of the jaws and legs beside the V, m; heights above its apex. */
export interface JawOutline {
  /** Distance of the outer and inner side of a leg from the middle. */
  readonly outer: number;
  readonly inner: number;
  /** Foot of the nose under the face, foot of the shoulder under the nose, top of the winding between the legs. */
  readonly nose: number;
  readonly shoulder: number;
  readonly windingTop: number;
}

/**
 * The growler as data: a core of laminations with two flat jaw faces that meet at a right angle in a V.
 * Lengths m. All dimensions are invented.
 */
export interface GrowlerDesign {
  readonly coreDepth: number;
  /** Each jaw face lies on its 45 degree plane from `faceFrom` to `faceTo`, measured from the apex of the V. */
  readonly faceFrom: number;
  readonly faceTo: number;
  /** Mean length of the iron path from face to face over its width, and its relative permeability. */
  readonly pathLengthOverWidth: number;
  readonly relativePermeability: number;
  /** Leakage from jaw to jaw past the armature and round the winding, per metre of depth, in units of μ0. Fitted to FEM. */
  readonly jawLeakage: number;
  readonly windingLeakage: number;
  /** Leakage round the ends of the winding, which a plane solution does not see, μ0 times this length, m. Estimate. */
  readonly endLeakage: number;
  /** Inductance per metre of depth and turn squared with nothing in the jaws, H/m (plane finite elements). */
  readonly openInductance: number;
  readonly jaws: JawOutline;
  /** Whether teeth under the jaws saturate. Without, the iron is linear: for comparison with linear solutions. */
  readonly teethSaturate: boolean;
  /** Field of an armature and this growler reaches this far beyond the shorter of the two stacks, m. */
  readonly depthFringe: number;
  readonly windings: Readonly<Record<MainsId, Readonly<Record<Excitation, GrowlerWinding>>>>;
}

/**
 * The growler of the bench. HIGH uses fewer turns than LOW; the 120 V winding is scaled by turns squared.
 * @source invented; jawLeakage, windingLeakage and openInductance from plane finite elements of the same geometry
 */
export const BENCH_GROWLER: GrowlerDesign = {
  coreDepth: 0.05,
  faceFrom: 0.01225,
  faceTo: 0.04825,
  pathLengthOverWidth: 7.6,
  relativePermeability: 2000,
  jawLeakage: 1.13,
  windingLeakage: 0.618,
  endLeakage: 0.07,
  openInductance: 3.926437849637538e-6,
  jaws: { outer: 0.042, inner: 0.022, nose: 0.002, shoulder: -0.007, windingTop: -0.01 },
  teethSaturate: true,
  depthFringe: 0.002,
  windings: {
    '230V50Hz': { high: { turns: 2000, ohm20: 240 }, low: { turns: 3200, ohm20: 480 } },
    '120V60Hz': { high: { turns: 870, ohm20: 45.4 }, low: { turns: 1392, ohm20: 90.8 } },
  },
};

/** The same growler with iron that never saturates. */
export const LINEAR_GROWLER: GrowlerDesign = { ...BENCH_GROWLER, teethSaturate: false };

/** Resistance of a growler winding at a temperature, ohm. */
export function windingOhm(winding: GrowlerWinding, celsius: number): number {
  return winding.ohm20 * copperRise(celsius);
}

/** Name of a supply: windings are wound for one. */
export function mainsIdOf(mains: Mains): MainsId {
  return mains.volt === MAINS['230V50Hz'].volt ? '230V50Hz' : '120V60Hz';
}

/** Depth over which armature and growler share their field, m. */
export function sharedDepth(g: GrowlerDesign, stackLength: number): number {
  return Math.min(stackLength, g.coreDepth) + g.depthFringe;
}

/** Leakage inductance of the growler winding's ends for one turn, H. */
export function endLeakageHenry(g: GrowlerDesign): number {
  return MU0 * g.endLeakage;
}

/**
 * Inductance of one turn of the growler winding with nothing in the jaws, H: the plane solution over the depth of the
 * core, the field round its two ends, and the winding's own ends. Its iron stays linear (0.5 T in the core).
 */
export function emptyHenry(g: GrowlerDesign): number {
  return g.openInductance * g.coreDepth + MU0 * openEnds(g) + endLeakageHenry(g);
}
