/** Vacuum permeability, H/m: 4π·1e-7, the pre-2019 exact value (SI, from memory); ample here. */
export const MU0 = 4e-7 * Math.PI;

/**
 * Copper as drawn into winding wire, resistivity at 20 C, ohm·m.
 * The international standard of annealed copper is 1.7241e-8 (IEC 60028); 1.75e-8 allows for drawn wire.
 */
export const COPPER_RESISTIVITY = 1.75e-8;

/**
 * Copper, rise of resistance per kelvin, referred to 20 C: R(T) = R20·(1 + α(T − 20)).
 * @source IACS value 0.00393 1/K, NBS Handbook 100 (1966)
 */
export const COPPER_PER_K = 0.00393;

/** Resistance of copper at `celsius` over its resistance at 20 C; valid about -50..200 C. */
export function copperRise(celsius: number): number {
  return 1 + COPPER_PER_K * (celsius - 20);
}
