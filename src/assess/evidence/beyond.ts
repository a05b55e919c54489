import { anywhere, densityAbout } from './needles.ts';
import { READING_NOISE } from './noise.ts';
import type { MeterReading } from './reading.ts';
import { PULLS, STRIP_SLIP } from './strip.ts';

/**
 * "None of these": what the readings look like when the part has something that is on no list. Nobody can work that
 * out, but two things can be said. It may disturb some of the readings and leave the others as a listed fault would
 * have them: then a listed fault explains most of them and fails at more than slips account for. Or it may put all
 * readings off by amounts nobody knows. A listed fault has to explain the readings better than either to be believed:
 * this is what takes the belief from the best of them when even the best does not fit.
 */

/** Share of the readings that have nothing to do with the listed fault: an unlisted one reaches some bars of a pass. */
const DISTURBED = 0.1;

/** Makes the likelihood of a reading loose: scale · likelihood + offset. */
export interface Slack {
  readonly scale: number;
  readonly offset: number;
}

/**
 * @param slip     share of mistaken readings the likelihood counts on already
 * @param anything likelihood of a reading that has nothing to do with the suspect
 */
export function slackOf(slip: number, anything: number): Slack {
  const scale = (1 - DISTURBED) / (1 - slip);
  return { scale, offset: (DISTURBED - scale * slip) * anything };
}

export function slackOfNeedle(shown: Pick<MeterReading, 'pegged' | 'from'>): Slack {
  return slackOf(READING_NOISE[shown.from].slip, anywhere(shown.pegged));
}

/** A place of the strip feels one of all pulls, a whole pass is felt or still. */
export const SLACK_OF_PULL = slackOf(STRIP_SLIP, 1 / PULLS);
export const SLACK_OF_PASS = slackOf(STRIP_SLIP, 1 / 2);

/** Shares by which all readings may lie off those of a sound part, and how far each lies about that, of full scale. */
const SHIFTS = [-0.4, -0.2, -0.1, -0.05, 0, 0.1];
const SPREADS = [0.02, 0.04, 0.08, 0.16];

/** Readings off by amounts nobody knows, all of them: how far and how unevenly is averaged over. */
export class Adrift {
  private readonly logs = new Float64Array(SHIFTS.length * SPREADS.length);

  /** @param sound where the needle of a sound part would stand */
  add(reading: MeterReading, sound: number): void {
    const { slip } = READING_NOISE[reading.from];
    SHIFTS.forEach((shift, s) => {
      SPREADS.forEach((spread, w) => {
        const density = densityAbout(reading, sound * (1 + shift), spread, slip);
        this.logs[s * SPREADS.length + w]! += Math.log(density);
      });
    });
  }

  /** Logarithm of the mean likelihood. */
  log(): number {
    return logSum(this.logs) - Math.log(this.logs.length);
  }
}

export function logSum(logs: ArrayLike<number>): number {
  let most = -Infinity;
  for (let k = 0; k < logs.length; k++) most = Math.max(most, logs[k]!);
  if (most === -Infinity) return most;
  let sum = 0;
  for (let k = 0; k < logs.length; k++) sum += Math.exp(logs[k]! - most);
  return most + Math.log(sum);
}

/** What lies further below the best is not looked into. */
const REACH = 14;

/**
 * Marks (1) what comes near the best before the instrument's errors are averaged.
 * @param logs   by number and case
 * @param plusOf what is added to all cases of a number
 */
export function withinReach(logs: Float64Array, cases: number, plusOf: (k: number) => number): Uint8Array {
  const tops = new Float64Array(logs.length / cases);
  let best = -Infinity;
  for (let k = 0, at = 0; k < tops.length; k++) {
    let top = -Infinity;
    for (const end = at + cases; at < end; at++) if (logs[at]! > top) top = logs[at]!;
    tops[k] = top + plusOf(k);
    if (tops[k]! > best) best = tops[k]!;
  }
  return Uint8Array.from(tops, (top) => (top >= best - REACH ? 1 : 0));
}
