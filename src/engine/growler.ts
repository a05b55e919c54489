import { type Excitation, MAINS, type Mains, type MainsId } from './drive.ts';
import { copperRise, MU0 } from './math/constants.ts';

/** One setting of the growler winding. */
export interface GrowlerWinding {
  readonly turns: number;
  /** Resistance at 20 C, ohm. */
  readonly ohm20: number;
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
  /**
   * Inductance per metre of depth and turn squared with nothing in the jaws, H/m (plane finite elements), and the
   * factor by which the open jaws spread their field beyond the core's depth (estimate; 1.2..1.6).
   */
  readonly openInductance: number;
  readonly openFringe: number;
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
  openFringe: 1.4,
  depthFringe: 0.002,
  windings: {
    '230V50Hz': { high: { turns: 2000, ohm20: 240 }, low: { turns: 3200, ohm20: 480 } },
    '120V60Hz': { high: { turns: 870, ohm20: 45.4 }, low: { turns: 1392, ohm20: 90.8 } },
  },
};

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

/** Inductance of one turn of the growler winding with nothing in the jaws, H. */
export function emptyHenry(g: GrowlerDesign): number {
  return g.openInductance * g.openFringe * (g.coreDepth + g.depthFringe) + endLeakageHenry(g);
}
