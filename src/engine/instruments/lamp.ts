/**
 * The test lamp: an incandescent lamp at mains voltage in series with an isolated winding of mains voltage and
 * whatever lies between its two probes.
 *
 *   C dT/dt = I^2 R(T) - P(T),   I = V / |R(T) + Z|
 *   R(T) = R_hot (T/T_hot)^1.2                                          (references T05, T06)
 *   P(T) = P_rated [(1-k) (T^4 e(T) - Ta^4 e(Ta)) + k (T - Ta)] / same at T_hot,   e(T) ~ T^0.5
 *
 * Radiation with the fourth power, an emissivity that rises with temperature as tungsten's does, and a little
 * conduction. The rise (0.5) and the share k (0.4 %) are chosen between the rerating exponents near rated voltage
 * (T01) and the leakage at which a lamp just glows (T08).
 */

/** A complex impedance, ohm. */
export interface Impedance {
  readonly re: number;
  readonly im: number;
}

/** A lamp as it is marked, with the temperature it runs at. */
export interface LampType {
  readonly ratedVolt: number;
  readonly ratedWatt: number;
  /** Filament temperature at rated voltage, K. */
  readonly hotK: number;
}

/** The lamp in its circuit: source voltage, V rms, and the path between the probes; null: no path. */
export interface LampCircuit {
  readonly volt: number;
  readonly path: Impedance | null;
}

/** Surroundings, K. */
export const AMBIENT_K = 293;
/** Below this an incandescent body gives no light an eye sees, K (references T07, Draper 1847). */
export const DRAPER_K = 798;
/** Filament time step, ms, on the grid of simulated time. */
export const FILAMENT_STEP_MS = 5;
/** Highest glow an eye tells apart. */
export const FULL_GLOW = 8;

const RESISTANCE_EXPONENT = 1.2;
const EMISSIVITY_EXPONENT = 0.5;
const CONDUCTION_SHARE = 0.004;
const SUBSTEPS = 5;
/** Change over one step below which the filament counts as settled, K. */
const SETTLED_K = 1e-7;

/** The lamp of the bench: 15 W at mains voltage, a vacuum lamp run at 2500 K (references T08). */
export function benchLamp(mainsVolt: number): LampType {
  return { ratedVolt: mainsVolt, ratedWatt: 15, hotK: 2500 };
}

/** Resistance at the running temperature, ohm: V^2 / P. */
export function hotOhm(lamp: LampType): number {
  return lamp.ratedVolt ** 2 / lamp.ratedWatt;
}

/** Resistance of the filament, ohm. */
export function filamentOhm(lamp: LampType, tempK: number): number {
  return hotOhm(lamp) * (tempK / lamp.hotK) ** RESISTANCE_EXPONENT;
}

/** Heat the filament gives away, W. */
export function filamentLossW(lamp: LampType, tempK: number): number {
  const n = 4 + EMISSIVITY_EXPONENT;
  const radiated = (tempK ** n - AMBIENT_K ** n) / (lamp.hotK ** n - AMBIENT_K ** n);
  const conducted = (tempK - AMBIENT_K) / (lamp.hotK - AMBIENT_K);
  return lamp.ratedWatt * ((1 - CONDUCTION_SHARE) * radiated + CONDUCTION_SHARE * conducted);
}

/** Current through the lamp at a filament temperature, A rms. */
export function lampCurrent(lamp: LampType, tempK: number, { volt, path }: LampCircuit): number {
  if (path === null) return 0;
  return volt / Math.hypot(filamentOhm(lamp, tempK) + path.re, path.im);
}

/**
 * Heat capacity of the filament, J/K. Surface from the radiated power, wire thickness from surface and hot
 * resistance:  A = P / (e sigma T^4),  d^3 = 4 rho A / (pi^2 R),  C = c density A d / 4, times the coiling factor.
 * Tungsten at working heat, from memory: emissivity 0.30 at 2500 K, resistivity 7.4e-7 ohm m at 2500 K,
 * 160 J/(kg K), 19 300 kg/m3. The coiling factor (turns shade one another, so there is more wire than surface seen)
 * is set by the 0.13 s a 100 W 120 V lamp takes to 90 % of its light (references T04).
 */
export function heatCapacity(lamp: LampType): number {
  const emissivity = 0.3 * (lamp.hotK / 2500) ** EMISSIVITY_EXPONENT;
  const resistivity = 7.4e-7 * (lamp.hotK / 2500) ** RESISTANCE_EXPONENT;
  const surface = lamp.ratedWatt / (emissivity * 5.67e-8 * lamp.hotK ** 4);
  const thickness = Math.cbrt((4 * resistivity * surface) / (Math.PI ** 2 * hotOhm(lamp)));
  return COILING * 160 * 19_300 * surface * (thickness / 4);
}
const COILING = 1.45;

/**
 * The filament a whole number of 5 ms steps later. Each step is divided and taken with an exponential integrator, so
 * a cold filament on full voltage neither overshoots nor depends on who asks when.
 * @param tempK temperature now, K, >= AMBIENT_K
 * @param steps whole number >= 0
 */
export function stepFilament(lamp: LampType, tempK: number, circuit: LampCircuit, steps: number): number {
  const capacity = heatCapacity(lamp);
  let now = tempK;
  for (let step = 0; step < steps; step += 1) {
    const before = now;
    for (let i = 0; i < SUBSTEPS; i += 1) now = substep(lamp, now, circuit, capacity);
    if (Math.abs(now - before) < SETTLED_K) break;
  }
  return now;
}

/** Temperature the filament settles at, K. */
export function steadyFilament(lamp: LampType, circuit: LampCircuit): number {
  let low = AMBIENT_K;
  let high = 4000;
  for (let i = 0; i < 60; i += 1) {
    const middle = (low + high) / 2;
    if (surplusW(lamp, middle, circuit) > 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/**
 * Brightness an eye sees: 0 dark below the Draper point, 1 dull red, up to 8 full. An eye goes by the logarithm of
 * the luminance, and the logarithm of what a hot body radiates at one wavelength falls with 1/T (Wien's law):
 *   glow = 1 + 7 (1/798 - 1/T) / (1/798 - 1/2500), cut down to a whole number.
 */
export function glow(tempK: number): number {
  if (tempK < DRAPER_K) return 0;
  const share = (1 / DRAPER_K - 1 / tempK) / (1 / DRAPER_K - 1 / 2500);
  // A lamp settles just short of its rated temperature: the last thousandth must not cost a step.
  return Math.min(FULL_GLOW, Math.floor(1 + (FULL_GLOW - 1) * share + 0.02));
}

/** Power in less power out, W. */
function surplusW(lamp: LampType, tempK: number, circuit: LampCircuit): number {
  const current = lampCurrent(lamp, tempK, circuit);
  return current * current * filamentOhm(lamp, tempK) - filamentLossW(lamp, tempK);
}

function substep(lamp: LampType, tempK: number, circuit: LampCircuit, capacity: number): number {
  const h = FILAMENT_STEP_MS / 1000 / SUBSTEPS;
  const slope = surplusW(lamp, tempK, circuit) / capacity;
  const nudge = 0.01;
  const stiffness = (surplusW(lamp, tempK + nudge, circuit) / capacity - slope) / nudge;
  const x = stiffness * h;
  // phi(x) = (e^x - 1)/x: the exact step of the problem made linear about the temperature now.
  const phi = Math.abs(x) < 1e-6 ? 1 + x / 2 : Math.expm1(x) / x;
  return Math.max(AMBIENT_K, tempK + h * slope * phi);
}
