import { type BenchEvent, isHappening } from './happening.ts';
import { emptiesCharge } from './memory.ts';
import { ALL_LEADS, leadSet, type Place, partOf } from './places.ts';
import type { Standing } from './standing.ts';
import type { BenchState } from './state.ts';
import { handledPart } from './touched.ts';

/** Precautions of insulation tester and millivolt-drop test. */

export function testerUnderPower({ pressed, power }: Standing): boolean {
  return pressed && power !== 'off';
}

export function testerInCradle({ tested, cradled }: Standing): boolean {
  return tested === 'armature' && cradled;
}

/** Another lead or the feed lies on the part under test. */
export function testerNotAlone({ tested, tips, feed }: Standing): boolean {
  if (tested === null) return false;
  const on = (place: Place | null) => place !== null && partOf(place) === tested;
  const others = ALL_LEADS.some((lead) => leadSet(lead) !== 'tester' && on(tips[lead].touches));
  return others || (feed?.some(on) ?? false);
}

/** The tester at work on a part whose card asks for the lamp first, and that has had none. */
export function testerBeforeLamp({ tested }: Standing, { lampFirst, memory }: BenchState): boolean {
  return tested !== null && lampFirst.includes(tested) && !memory.lampTested.includes(tested);
}

export function handUnderTester({ pressed, tested, tips, handOnArmature }: Standing): boolean {
  const byTip = ALL_LEADS.some((lead) => leadSet(lead) === 'tester' && tips[lead].grip === 'tip');
  return pressed && (byTip || (tested === 'armature' && handOnArmature));
}

/** A bare hand laid for a moment on the part under test. */
export function reachesUnderTester(state: BenchState, event: BenchEvent): boolean {
  return state.tester.pressed && handledPart(event) !== null && handledPart(event) === state.memory.charged;
}

/** A hand or another lead on a part the tester has charged, or the job handed in with one. */
export function touchesCharged({ memory, tester }: BenchState, event: BenchEvent): boolean {
  if (memory.charged === null || tester.pressed || isHappening(event)) return false;
  return event.type === 'job.handIn' || emptiesCharge(event, memory.charged);
}

export function feedUnderPower({ feed, power }: Standing): boolean {
  return feed !== null && power !== 'off';
}

export function dropInCradle({ feed, cradled }: Standing): boolean {
  return cradled && feed !== null && partOf(feed[0]) === 'armature';
}
