import { isArmatureRemedy } from '../engine/parts/remedies.ts';
import type { BenchEvent } from './happening.ts';
import { makesLampTest, powerAfter } from './lampTests.ts';
import {
  handOnLiveMetal,
  heldByLiveTip,
  holdsCrackedHandle,
  mixesLeads,
  reachesForLiveMetal,
} from './liveRules.ts';
import type { Breach } from './port.ts';
import { becomes, stripOverLow } from './standing.ts';
import { type BenchState, onArmature, touching } from './state.ts';
import {
  dropInCradle,
  feedUnderPower,
  handUnderTester,
  reachesUnderTester,
  testerBeforeLamp,
  testerInCradle,
  testerNotAlone,
  testerUnderPower,
  touchesCharged,
} from './toolRules.ts';

/**
 * One rule of the bench. `broken` is a pure predicate on the bench as it stands and what is about to happen.
 * The rules are common practice of the trade, no source.
 */
export interface Interlock {
  readonly code: InterlockCode;
  /** Why, in one sentence to the person at the bench. */
  readonly sentence: string;
  /** A critical breach stops the attempt. */
  readonly critical: boolean;
  broken(state: BenchState, event: BenchEvent): boolean;
}

export type InterlockCode =
  | 'emptyCradle'
  | 'emptyCradleTrip'
  | 'placedLive'
  | 'liftedLive'
  | 'liveTip'
  | 'liveMetal'
  | 'turnedUnderLamp'
  | 'leadsMixed'
  | 'stripOnLow'
  | 'lampNotProvedBefore'
  | 'lampNotProvedAfter'
  | 'leftOn'
  | 'overheated'
  | 'crackedHandle'
  | 'remedyLive'
  | 'remedyInCradle'
  | 'setRightLive'
  | 'gaugeLive'
  | 'testerLive'
  | 'testerInCradle'
  | 'testerNotAlone'
  | 'testerBeforeLamp'
  | 'testerHand'
  | 'notDischarged'
  | 'dropLive'
  | 'dropInCradle';

export const INTERLOCKS: readonly Interlock[] = [
  {
    code: 'emptyCradle',
    critical: false,
    sentence:
      'The cradle is empty: without an armature to close the magnetic circuit the growler winding draws several times its current and overheats.',
    broken: (state, event) =>
      event.type === 'selector.turn' && state.cradle === 'empty' && powerAfter(state, event) !== 'off',
  },
  {
    code: 'emptyCradleTrip',
    critical: true,
    sentence: 'The growler was kept on with an empty cradle until its cut-out tripped.',
    broken: (state, event) => event.type === 'bench.tripped' && state.cradle === 'empty',
  },
  {
    code: 'placedLive',
    critical: false,
    sentence: 'The bench was on while the armature was laid in: switch off before placing a part.',
    broken: (state, event) => event.type === 'armature.place' && state.supply === 'on',
  },
  {
    code: 'liftedLive',
    critical: true,
    sentence: 'The armature was lifted out with the bench on: switch off before removing a part.',
    broken: (state, event) => event.type === 'armature.lift' && state.supply === 'on',
  },
  {
    code: 'liveTip',
    critical: true,
    sentence: 'A lamp lead was held by its bare tip while it carried mains voltage: that can kill.',
    broken: (state, event) => becomes(state, event, heldByLiveTip),
  },
  {
    code: 'liveMetal',
    critical: true,
    sentence:
      'A hand was on the part while a live lamp probe touched it: everything joined to that probe carries mains voltage.',
    broken: (state, event) => becomes(state, event, handOnLiveMetal) || reachesForLiveMetal(state, event),
  },
  {
    code: 'turnedUnderLamp',
    critical: false,
    sentence: 'Take both lamp probes off the part before turning it.',
    broken: (state, event) =>
      event.type === 'armature.turn' && touching(state.leads, 'lamp', onArmature).length > 0,
  },
  {
    code: 'leadsMixed',
    critical: false,
    sentence:
      'The lead sets were mixed up: the ammeter leads belong to HIGH, the lamp leads to LOW, and never one of each.',
    broken: mixesLeads,
  },
  {
    code: 'stripOnLow',
    critical: false,
    sentence: 'The strip was used on LOW: its pull is weaker there, so a still strip would prove nothing.',
    broken: (state, event) => becomes(state, event, stripOverLow),
  },
  {
    code: 'lampNotProvedBefore',
    critical: false,
    sentence:
      'The lamp was not proved first: touch its tips together and see it light before you trust it dark.',
    broken: (state, event) => state.lamp === 'unproved' && makesLampTest(state, event),
  },
  {
    code: 'lampNotProvedAfter',
    critical: false,
    sentence: 'The lamp was not proved again afterwards: its dark results count only between two proofs.',
    broken: (state, event) =>
      state.lamp === 'used' &&
      (event.type === 'job.handIn' || (event.type === 'selector.turn' && event.to !== 'low')),
  },
  {
    code: 'leftOn',
    critical: false,
    sentence: 'The bench was left humming with nobody at it: switch off whenever it is not in use.',
    broken: (state, event) =>
      event.type === 'bench.idle' || (event.type === 'job.handIn' && state.supply === 'on'),
  },
  {
    code: 'overheated',
    critical: false,
    sentence:
      'Something on the bench has grown too hot: a shorted winding heats as long as the growler is on.',
    broken: (_state, event) => event.type === 'bench.overheated',
  },
  {
    code: 'crackedHandle',
    critical: false,
    sentence:
      'A lamp lead with a cracked handle was held while live: fingers can reach the metal inside, so look leads and handles over before power.',
    broken: (state, event) => becomes(state, event, (bench) => holdsCrackedHandle(bench, state)),
  },
  {
    code: 'remedyLive',
    critical: true,
    sentence: 'A remedy was begun with the bench on: switch off before any work on a part.',
    broken: (state, event) => event.type === 'remedy.do' && state.supply === 'on',
  },
  {
    code: 'remedyInCradle',
    critical: false,
    sentence:
      'The armature was worked on in the cradle: take it out first, filings and solder do not belong in the jaws.',
    broken: (state, event) =>
      event.type === 'remedy.do' && isArmatureRemedy(event.remedy) && state.cradle === 'armature',
  },
  {
    code: 'setRightLive',
    critical: true,
    sentence:
      'The bench itself was worked on with its supply on: switch off before you change a bulb or a lead.',
    broken: (state, event) => event.type === 'bench.setRight' && state.supply === 'on',
  },
  {
    code: 'gaugeLive',
    critical: false,
    sentence: 'Something was measured with the bench on: switch off whenever it is not in use.',
    broken: (state, event) => event.type === 'gauge.read' && state.supply === 'on',
  },
  {
    code: 'testerLive',
    critical: false,
    sentence:
      'The insulation tester was used with the growler on: switch off first, or its reading means nothing.',
    broken: (state, event) => becomes(state, event, testerUnderPower),
  },
  {
    code: 'testerInCradle',
    critical: false,
    sentence:
      'The insulation tester was used with the armature in the cradle: take it out, or the bench is tested with it.',
    broken: (state, event) => becomes(state, event, testerInCradle),
  },
  {
    code: 'testerNotAlone',
    critical: false,
    sentence:
      'The insulation tester was used with other leads on the part: take every one of them off first.',
    broken: (state, event) => becomes(state, event, testerNotAlone),
  },
  {
    code: 'testerBeforeLamp',
    critical: false,
    sentence:
      'The insulation tester was used before the lamp: a winding that has gone to ground is found at low voltage first.',
    broken: (state, event) => becomes(state, event, (bench) => testerBeforeLamp(bench, state)),
  },
  {
    code: 'testerHand',
    critical: false,
    sentence: 'A hand was on the metal under the insulation tester: several hundred volts make anyone jump.',
    broken: (state, event) => becomes(state, event, handUnderTester) || reachesUnderTester(state, event),
  },
  {
    code: 'notDischarged',
    critical: false,
    sentence:
      'The part was touched before it was discharged: the insulation tester leaves a winding charged.',
    broken: touchesCharged,
  },
  {
    code: 'dropLive',
    critical: false,
    sentence:
      'The feed of the millivolt-drop test was on the part with the growler on: the two do not go together.',
    broken: (state, event) => becomes(state, event, feedUnderPower),
  },
  {
    code: 'dropInCradle',
    critical: false,
    sentence: 'The feed was clamped on with the armature in the cradle: take it out first.',
    broken: (state, event) => becomes(state, event, dropInCradle),
  },
];

/** Every rule the event would break, in the order of the list. */
export function breachesOf(state: BenchState, event: BenchEvent): readonly Breach[] {
  return INTERLOCKS.filter((rule) => rule.broken(state, event)).map(({ code, sentence, critical }) => ({
    interlock: code,
    sentence,
    critical,
  }));
}
