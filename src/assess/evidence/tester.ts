import { SOUND_INSULATION_OHM } from '../../engine/instruments/armatureDc.ts';
import {
  DEFAULT_TEST_VOLT,
  seeMegohms,
  type TestVolt,
  terminalVolt,
} from '../../engine/instruments/insulationTester.ts';
import { leakageOhm } from '../../engine/parts/fieldFrame.ts';
import { normalBelow } from './needles.ts';
import type { MegohmReading } from './reading.ts';
import { gauss, MEGOHM_RANGE, TOOL_SLIP } from './toolNoise.ts';

/** What the insulation tester would show over a leak from winding to core. */

/** A leak of anything from one resistance to another, ohm; above a peak voltage, V, it may break down. */
export interface Leak {
  readonly leastOhm: number;
  readonly mostOhm: number;
  readonly breakdownV: number | null;
}

/** Resistance found between the clips, evenly likely on the logarithm between two, ohm. */
export interface Found {
  readonly leastOhm: number;
  readonly mostOhm: number;
}

/** Spread of the tester's own error and of what is read off it, on the logarithm. Ours, no source. */
const READ_SD = 0.02;
/** Finest step of the display, megohms, and how an even spread over it counts. */
const STEP = 0.01;
const STEP_SD = STEP / Math.sqrt(12);
/** Sound insulation is not alike on all parts and falls as they warm: its spread on the logarithm. Ours, no source. */
const SOUND_SD = 0.5;

const beside = (ohm: number) => (ohm * SOUND_INSULATION_OHM) / (ohm + SOUND_INSULATION_OHM);

/** What a leak beside the sound insulation lets the tester find at a voltage; none: the sound insulation alone. */
export function overLeak(leak: Leak | null, volt: TestVolt): Found {
  if (leak === null) return { leastOhm: SOUND_INSULATION_OHM, mostOhm: SOUND_INSULATION_OHM };
  const { breakdownV } = leak;
  const at = (ohm: number) => beside(leakageOhm({ ohm, breakdownV }, terminalVolt(volt, beside(ohm))));
  // Broken down at one end of the range and not at the other, it is taken as at the middle.
  const ends = [leak.leastOhm, leak.mostOhm].map(at);
  const middle = at(Math.sqrt(leak.leastOhm * leak.mostOhm));
  const apart = ends.some((end) => Math.abs(Math.log(end / middle)) > Math.log(leak.mostOhm / leak.leastOhm));
  const [leastOhm, mostOhm] = apart ? [middle, middle] : (ends as [number, number]);
  return { leastOhm, mostOhm };
}

/** Whether a leak reads less than the card allows, at the voltage to start with. */
export function isPoor(leak: Leak | null, leastMohm: number): boolean {
  const { leastOhm, mostOhm } = overLeak(leak, DEFAULT_TEST_VOLT);
  return seeMegohms(Math.sqrt(leastOhm * mostOhm)).megohms < leastMohm;
}

/**
 * Likelihood of a figure, per unit of its natural logarithm.
 * @param found null: nothing to speak of joins the clips
 */
export function testerLikelihood(
  { megohms, from }: Pick<MegohmReading, 'megohms' | 'from'>,
  found: Found | null,
): number {
  const slip = TOOL_SLIP[from];
  if (megohms === 'over' || found === null) {
    if (megohms === 'over') return found === null ? 1 - slip : slip;
    return slip / MEGOHM_RANGE;
  }
  // A step above nothing, so that a reading of nothing has a logarithm.
  const log = (mohm: number) => Math.log(mohm + STEP);
  const [low, high] = [log(found.leastOhm / 1e6), log(found.mostOhm / 1e6)];
  const soundShare = Math.sqrt(found.leastOhm * found.mostOhm) / SOUND_INSULATION_OHM;
  const sd = Math.hypot(READ_SD, SOUND_SD * soundShare, STEP_SD / (megohms + STEP));
  return (1 - slip) * spreadOver(log(megohms), low, high, sd) + slip / MEGOHM_RANGE;
}

/** Density at x of an even spread from low to high, read with a normal error. */
function spreadOver(x: number, low: number, high: number, sd: number): number {
  const width = high - low;
  if (width < sd / 10) return gauss(x - (low + high) / 2, sd);
  return Math.max(0, normalBelow((high - x) / sd) - normalBelow((low - x) / sd)) / width;
}
