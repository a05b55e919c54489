import { armatureResistance } from '../../engine/instruments/armatureDc.ts';
import { DEFAULT_TEST_VOLT, seeMegohms, terminalVolt } from '../../engine/instruments/insulationTester.ts';
import { FEED_MOST_V, neighbourDrops } from '../../engine/instruments/millivoltDrop.ts';
import { ROOM_C } from '../../engine/instruments/thermal.ts';
import type { ArmatureDesign } from '../../engine/parts/armature.ts';
import type { ArmatureFault } from '../../engine/parts/armatureFault.ts';
import { standing } from './place.ts';
import { deviations } from './shown.ts';

/** What insulation tester and millivolt drop tell of an armature. */

/**
 * Share by which a drop must differ from its likes before it stands out: contacts do not enter, so what is left is what
 * sound parts differ by. Trade practice: readings of a healthy armature lie within 5 % of one another (references A11).
 */
export const DROP_BAND = 0.05;

/**
 * Whether an insulation tester reads less than the card allows at the usual voltage.
 * @param at resistance at a peak voltage, ohm; null: none
 */
export function readsPoor(at: (peakV: number) => number | null, leastMohm: number): boolean {
  const ohm = at(terminalVolt(DEFAULT_TEST_VOLT, at(0)));
  return ohm !== null && seeMegohms(ohm).megohms < leastMohm;
}

export function armatureLeaks(
  design: ArmatureDesign,
  faults: readonly ArmatureFault[],
  leastMohm: number,
): boolean {
  const at = (peakV: number) => armatureResistance(design, faults, 0, 'core', { peakV, tempC: ROOM_C });
  return readsPoor(at, leastMohm);
}

/** Pairs of neighbouring bars whose drop stands out; a pair no current reaches drops the feed's whole voltage. */
export function droppingPairs(design: ArmatureDesign, faults: readonly ArmatureFault[]): number[] {
  const drops = (list: readonly ArmatureFault[]) =>
    neighbourDrops(design, list).map((volt) => volt ?? FEED_MOST_V);
  return standing(deviations(drops(faults), drops([])), DROP_BAND);
}
