/**
 * Heating of the growler winding and of a coil that carries a circulating current: one node each, stepped on the
 * grid of simulated time.
 */

/** Room, degrees C. */
export const ROOM_C = 20;
/** Thermal time step, ms, on the grid of simulated time. */
export const THERMAL_STEP_MS = 100;

/** Growler winding of the invented bench: 0.14 kg of copper and bobbin. */
export const WINDING_CAPACITY = 64; // J/K
export const WINDING_COOLING = 8; // K/W
/** Temperature of the winding at which the cut-out opens, and below which it can be set again, degrees C. */
export const TRIP_C = ROOM_C + 75;
export const REARM_C = ROOM_C + 45;

export interface WindingState {
  readonly windingC: number;
  /** The thermal cut-out has opened: the winding carries nothing until someone sets it again. */
  readonly cutOut: boolean;
}
export const COLD_WINDING: WindingState = { windingC: ROOM_C, cutOut: false };

export interface WindingStep extends WindingState {
  /** Number of the step, from 1, at the end of which the cut-out opened; null when it did not. */
  readonly trippedAfter: number | null;
}

/**
 * The winding a whole number of 100 ms steps later:  C dT/dt = P(T) - (T - T_room) / R_th, each step exact for its own P.
 * @param lossW power lost in the winding at a winding temperature (degrees C), W; called once a step
 */
export function stepWinding(
  state: WindingState,
  lossW: (windingC: number) => number,
  steps: number,
): WindingStep {
  let { windingC, cutOut } = state;
  let trippedAfter: number | null = null;
  for (let step = 1; step <= steps; step += 1) {
    const power = cutOut ? 0 : lossW(windingC);
    windingC = ROOM_C + relax(windingC - ROOM_C, power, WINDING_CAPACITY, WINDING_COOLING);
    if (!cutOut && windingC >= TRIP_C) {
      cutOut = true;
      trippedAfter = step;
    }
  }
  return { windingC, cutOut, trippedAfter };
}

/** What a hand near the winding feels. Bounds: common practice, no source. */
export function growlerHeat(windingC: number): 'cool' | 'warm' | 'hot' | 'tooHotToTouch' {
  if (windingC < 35) return 'cool';
  if (windingC < 55) return 'warm';
  return windingC < 80 ? 'hot' : 'tooHotToTouch';
}

/** Specific heat, J/(kg K), and density, kg/m3, of copper: handbook values. */
export const COPPER_HEAT = 385;
export const COPPER_DENSITY = 8960;
/** Time in which a coil bedded in its slots gives its heat to the core, s: an estimate for the invented bench. */
export const COIL_COOLING_S = 240;

/**
 * Rise of a coil above the room a whole number of 100 ms steps later, K.
 * @param riseK rise now
 * @param lossW power lost in the copper, W
 * @param massKg copper of the coil, kg, > 0
 */
export function stepCoil(riseK: number, lossW: number, massKg: number, steps: number): number {
  const capacity = massKg * COPPER_HEAT;
  const cooling = COIL_COOLING_S / capacity;
  const settled = lossW * cooling;
  return settled + (riseK - settled) * Math.exp((-steps * THERMAL_STEP_MS) / 1000 / COIL_COOLING_S);
}

/**
 * What nose and eye get from the hottest coil of the part. `hot` from 60 C on, where it hurts to touch; `smoking`
 * from 155 C on, the limit of thermal class F (IEC 60085, from memory), where old varnish chars.
 */
export function partHeat(riseK: number): 'cool' | 'warm' | 'hot' | 'smoking' {
  const tempC = ROOM_C + riseK;
  if (tempC < 35) return 'cool';
  if (tempC < 60) return 'warm';
  return tempC < 155 ? 'hot' : 'smoking';
}

/** One step of  C dx/dt = P - x / R, exact for a constant P; C in J/K, R in K/W, result in K. */
function relax(rise: number, power: number, capacity: number, cooling: number): number {
  const settled = power * cooling;
  return settled + (rise - settled) * Math.exp(-THERMAL_STEP_MS / 1000 / (capacity * cooling));
}
