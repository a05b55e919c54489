/** A gain never jumps: it closes in on its target, so that no step is heard wherever in its swing the loop stands. */

/** Time in which the distance to the target falls to 1/e, s. */
export const RAMP_S = 0.04;
/** After this the rest is 100 dB down and the loop may be stopped unheard, ms. */
export const FADED_MS = 500;

/** Gain `seconds` after it was sent from `from` to `to`: what the browser's own ramp does. */
export function rampAt(from: number, to: number, seconds: number): number {
  return to + (from - to) * Math.exp(-seconds / RAMP_S);
}

/** A gain of the browser's sound graph. */
export interface GainParam {
  setTargetAtTime(target: number, startTime: number, timeConstant: number): unknown;
}

/** Sends a gain to its target from wherever it is now; a ramp under way is taken over without a step. */
export function rampTo(gain: GainParam, target: number, now: number): void {
  gain.setTargetAtTime(target, now, RAMP_S);
}
