import type { Action, Selector } from './action.ts';
import type { BenchEvent } from './happening.ts';
import { LEAD_IDS, leadSet } from './places.ts';
import type { Breach } from './port.ts';
import { type BenchState, onArmature, onPart, supplyOf, touching } from './state.ts';
import { lampTipsOnPart, type Tips, tipsAfter } from './tips.ts';

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
  | 'overheated';

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
];

/** Every rule the event would break, in the order of the list. */
export function breachesOf(state: BenchState, event: BenchEvent): readonly Breach[] {
  return INTERLOCKS.filter((rule) => rule.broken(state, event)).map(({ code, sentence, critical }) => ({
    interlock: code,
    sentence,
    critical,
  }));
}

/** Excitation after an event that goes through; `off` also when cut-out or isolation keeps the bench dead. */
export function powerAfter(state: BenchState, event: BenchEvent): Selector {
  const selector = event.type === 'selector.turn' ? event.to : state.selector;
  const cutOut = event.type === 'bench.tripped' ? 'tripped' : state.cutOut;
  return supplyOf(state.stage, cutOut, selector) === 'on' ? selector : 'off';
}

/** An event that puts both live lamp tips on the part, or makes tips that lie there live. */
export function makesLampTest(state: BenchState, event: BenchEvent): boolean {
  const acts = event.type === 'selector.turn' || (event.type === 'lead.touch' && isLamp(event));
  if (!acts || powerAfter(state, event) !== 'low') return false;
  return lampTipsOnPart(tipsAfter(state.leads, event, state)).length === 2;
}

/** Bench after an event, as far as the rules on standing conditions need it. */
interface After {
  readonly power: Selector;
  readonly tips: Tips;
  readonly handOnArmature: boolean;
  readonly stripOverCore: boolean;
}

/** A standing condition counts as broken by the act that brings it about, not by every act that follows. */
function becomes(state: BenchState, event: BenchEvent, condition: (bench: After) => boolean): boolean {
  return !condition(before(state)) && condition(after(state, event));
}

function before(state: BenchState): After {
  return {
    power: state.supply === 'on' ? state.selector : 'off',
    tips: state.leads,
    handOnArmature: state.hands.includes('armature'),
    stripOverCore: state.strip.at === 'core',
  };
}

function after(state: BenchState, event: BenchEvent): After {
  const held = state.hands.includes('armature');
  return {
    power: powerAfter(state, event),
    tips: tipsAfter(state.leads, event, state),
    handOnArmature: event.type === 'armature.hold' || (held && event.type !== 'armature.release'),
    stripOverCore: event.type === 'strip.hold' || (state.strip.at === 'core' && !isStripAction(event)),
  };
}

function heldByLiveTip({ power, tips }: After): boolean {
  return power === 'low' && LEAD_IDS.some((lead) => leadSet(lead) === 'lamp' && tips[lead].grip === 'tip');
}

/** Skin on metal joined to a live probe: a hand on the part, or fingers on the bare tip of another lead that touches it. */
function handOnLiveMetal({ power, tips, handOnArmature }: After): boolean {
  if (power !== 'low') return false;
  const liveOnPart = LEAD_IDS.some((lead) => leadSet(lead) === 'lamp' && onPart(tips[lead].touches));
  const skinOnPart = LEAD_IDS.some((lead) => tips[lead].grip === 'tip' && onPart(tips[lead].touches));
  const skinOnTip = LEAD_IDS.some(
    (lead) => leadSet(lead) === 'ammeter' && tips[lead].grip === 'tip' && touchesLampTip(tips, lead),
  );
  return (liveOnPart && (handOnArmature || skinOnPart)) || skinOnTip;
}

function touchesLampTip(tips: Tips, lead: (typeof LEAD_IDS)[number]): boolean {
  return (
    tips[lead].touches?.startsWith('tip:lamp') === true ||
    LEAD_IDS.some((other) => leadSet(other) === 'lamp' && tips[other].touches === `tip:${lead}`)
  );
}

/** A bare hand laid on the part for a moment, to turn it or lift it out, with a live probe on it. */
function reachesForLiveMetal(state: BenchState, event: BenchEvent): boolean {
  const reaches =
    event.type === 'armature.turn' || event.type === 'armature.lift' || event.type === 'armature.hold';
  const live = state.supply === 'on' && state.selector === 'low';
  return reaches && live && touching(state.leads, 'lamp', onPart).length > 0;
}

function stripOverLow({ power, stripOverCore }: After): boolean {
  return power === 'low' && stripOverCore;
}

function isStripAction(event: BenchEvent): boolean {
  return event.type === 'strip.away' || event.type === 'strip.hang';
}

function isLamp(action: Action & { readonly type: 'lead.touch' }): boolean {
  return leadSet(action.lead) === 'lamp';
}

/** Lamp leads at work on HIGH, ammeter leads at work on LOW, or a test with one lead of each set. */
function mixesLeads(state: BenchState, event: BenchEvent): boolean {
  const power = powerAfter(state, event);
  if (power === 'off' || (event.type !== 'lead.touch' && event.type !== 'selector.turn')) return false;
  const tips = tipsAfter(state.leads, event, state);
  const at = (set: 'lamp' | 'ammeter') =>
    LEAD_IDS.filter((lead) => leadSet(lead) === set && onPart(tips[lead].touches)).length;
  if (event.type === 'selector.turn') return at(power === 'low' ? 'ammeter' : 'lamp') > 0;
  if (!onPart(event.place)) return false;
  const wrongForPower = leadSet(event.lead) === (power === 'low' ? 'ammeter' : 'lamp');
  return wrongForPower || (at('lamp') === 1 && at('ammeter') === 1);
}
