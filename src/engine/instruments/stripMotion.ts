/**
 * What a hand feels in the steel strip held lengthwise just above the core: the pull, and the trembling at twice mains
 * frequency, as a cantilever that may meet the iron.
 */

export interface StripBlade {
  readonly thicknessM: number;
  readonly widthM: number;
  /** Length that stands free of the fingers, m. */
  readonly freeLengthM: number;
  /** Young's modulus, Pa, and density, kg/m3. */
  readonly youngPa: number;
  readonly densityKgM3: number;
}

/** The strip of the bench; steel as references M13. */
export const STRIP: StripBlade = {
  thicknessM: 0.65e-3,
  widthM: 13e-3,
  freeLengthM: 0.15,
  youngPa: 205e9,
  densityKgM3: 7850,
};

/** First root of the clamped-free bar (references V01). */
const FIRST_ROOT = 1.8751;
/** Damping ratio of a strip in the fingers: an estimate. */
const DAMPING = 0.03;
/** Share of the mass that moves with the tip in the first mode. */
const MOVING_SHARE = 0.243;
/**
 * Stiffness with which fingers and strip together hold the gap, N/m: an estimate, so that at the usual gap of half a
 * millimetre half a newton is the most that can be held off.
 */
const HOLDING_STIFFNESS = 2000;

/** Pull a hand just feels; from here on plain, and strong, N. Common practice, no source. */
export const JUST_FELT_N = 0.05;
const PLAIN_N = 0.15;
const STRONG_N = 0.3;
export const SNAPPED = 4;
export const RATTLING = 8;

/**
 * First natural frequency, Hz:  f1 = (1.8751^2 / 2 pi) sqrt(E h^2 / (12 rho L^4))
 * @source references V01, V02
 */
export function naturalHz(blade: StripBlade): number {
  const { youngPa, thicknessM, densityKgM3, freeLengthM } = blade;
  const root = Math.sqrt((youngPa * thicknessM ** 2) / (12 * densityKgM3 * freeLengthM ** 4));
  return (FIRST_ROOT ** 2 / (2 * Math.PI)) * root;
}

/** Stiffness at the tip, N/m: 3 E I / L^3 (references V07). */
export function tipStiffness(blade: StripBlade): number {
  const inertia = (blade.widthM * blade.thicknessM ** 3) / 12;
  return (3 * blade.youngPa * inertia) / blade.freeLengthM ** 3;
}

/** Mass that moves with the tip, kg. */
export function movingMass(blade: StripBlade): number {
  return MOVING_SHARE * blade.densityKgM3 * blade.widthM * blade.thicknessM * blade.freeLengthM;
}

/**
 * Amplitude of the tip under a force that alternates at `forceHz`, m:
 *   x = F / (m sqrt((w1^2 - w^2)^2 + (2 z w1 w)^2))
 */
export function amplitude(blade: StripBlade, alternatingN: number, forceHz: number): number {
  const own = 2 * Math.PI * naturalHz(blade);
  const w = 2 * Math.PI * forceHz;
  const denominator = Math.hypot(own * own - w * w, 2 * DAMPING * own * w);
  return Math.abs(alternatingN) / (movingMass(blade) * denominator);
}

/**
 * Whether the strip snaps on to the iron. The pull grows about as 1/g^2, so it stiffens negatively by 2F/g; when that
 * beats what fingers and strip hold against it, no place above the iron is stable.
 */
export function snapsOn(pullN: number, gapM: number): boolean {
  return (2 * pullN) / gapM >= HOLDING_STIFFNESS;
}

export interface StripPull {
  /** Radial mean, towards the armature positive; alternating amplitude at twice mains frequency; tangential; N. */
  readonly meanN: number;
  readonly alternatingN: number;
  readonly tangentialN: number;
}

export interface StripFeel {
  /** 0 none, 1 just felt, 2 plain, 3 strong, 4 snapped on. */
  readonly pull: number;
  /** 0 still .. 8 rattling on the iron. */
  readonly buzz: number;
}

export const STILL: StripFeel = { pull: 0, buzz: 0 };

/**
 * @param force as the engine gives it for this gap
 * @param gapM clear gap between strip and core, m, > 0
 * @param mainsHz mains frequency
 */
export function feel(force: StripPull, gapM: number, mainsHz: number, blade: StripBlade = STRIP): StripFeel {
  const pullN = Math.hypot(force.meanN, force.tangentialN);
  const swing = amplitude(blade, force.alternatingN, 2 * mainsHz);
  if (force.meanN > 0 && snapsOn(force.meanN, gapM)) return { pull: SNAPPED, buzz: RATTLING };
  return { pull: pullClass(pullN), buzz: buzzClass(swing, gapM, blade, mainsHz) };
}

function pullClass(pullN: number): number {
  if (pullN < JUST_FELT_N) return 0;
  if (pullN < PLAIN_N) return 1;
  return pullN < STRONG_N ? 2 : 3;
}

/** Even steps of the logarithm from the amplitude of a just felt force (1) to meeting the iron (8). */
function buzzClass(swing: number, gapM: number, blade: StripBlade, mainsHz: number): number {
  const least = amplitude(blade, JUST_FELT_N, 2 * mainsHz);
  if (swing < least) return 0;
  if (swing >= gapM) return RATTLING;
  const share = Math.log(swing / least) / Math.log(gapM / least);
  return 1 + Math.floor((RATTLING - 1) * share);
}
