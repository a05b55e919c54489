/**
 * What an ear gets from the growler. Both sources of the hum go with the square of a field and so sound at twice mains
 * frequency (references P02):
 *   - the laminated core and the seat of the armature, with the core flux squared: a smooth hum;
 *   - the stray field around winding and open jaws, with the ampere-turns squared: it shakes winding and case, a rattle.
 * Loudness goes with the logarithm of their sum. The weights are ours, by ear; nothing was measured.
 */

/** Core flux, Wb peak, and ampere-turns, A rms, that alone sound at level LEVEL_OF_ONE. */
const FLUX_OF_ONE = 0.5e-3;
const AMPERE_TURNS_OF_ONE = 600;
const LEVEL_OF_ONE = 10;
/** Steps of loudness for a tenfold sound pressure (20 dB): a step is the 1 to 1.5 dB an ear just tells apart. */
const STEPS_PER_TENFOLD = 15;
export const LOUDEST = 20;
export const HARSHEST = 10;

export interface GrowlerSound {
  /** Winding current times turns, A rms. */
  readonly ampereTurns: number;
  /** Peak flux in the core, Wb. */
  readonly fluxWb: number;
}

export interface Hum {
  /** 0 silent .. 20. */
  readonly level: number;
  readonly pitchHz: number;
  /** Share of rattle, 0..10. */
  readonly harshness: number;
}

/** @param growler the growler now; null when it carries no current */
export function hum(growler: GrowlerSound | null, mainsHz: number): Hum {
  const pitchHz = 2 * mainsHz;
  if (growler === null) return { level: 0, pitchHz, harshness: 0 };
  const smooth = (growler.fluxWb / FLUX_OF_ONE) ** 2;
  const rattle = (growler.ampereTurns / AMPERE_TURNS_OF_ONE) ** 2;
  const pressure = smooth + rattle;
  if (pressure <= 0) return { level: 0, pitchHz, harshness: 0 };
  const loudness = LEVEL_OF_ONE + STEPS_PER_TENFOLD * Math.log10(pressure);
  return {
    level: Math.round(Math.min(LOUDEST, Math.max(0, loudness))),
    pitchHz,
    harshness: Math.round((HARSHEST * rattle) / pressure),
  };
}
