import type { Action, RangeA, Selector } from './action.ts';
import type { CommutatorGeometry } from './geometry.ts';
import type { HandView, LeadView, Observation } from './observation.ts';
import { barOf, LEAD_IDS, type LeadId, type LeadSet, leadSet, type Place } from './places.ts';

export type Holds = HandView['holds'];
export type HandIndex = 0 | 1;
/** Where the strip is; angle and height only while it is held over the core. */
export interface StripPlace {
  readonly at: 'rail' | 'hand' | 'core';
  readonly angleDeg: number | null;
  readonly heightMm: number | null;
}
export type Leads = Readonly<Record<LeadId, LeadView>>;
/** How far the lamp can be trusted: never proved on this LOW spell; proved; used on the part since it was last proved. */
export type LampStage = 'unproved' | 'proved' | 'used';

/** The whole bench as its panel and a pair of eyes have it: what refusals and interlocks may look at, and no more. */
export interface BenchState {
  readonly stage: 'working' | 'stopped' | 'handedIn';
  readonly selector: Selector;
  /** `cooled`: cold enough to arm again, which happens at OFF so that nothing starts by itself. */
  readonly cutOut: 'armed' | 'tripped' | 'cooled';
  readonly supply: Observation['supply'];
  readonly cradle: Observation['cradle'];
  readonly hands: readonly [Holds, Holds];
  readonly leads: Leads;
  readonly strip: StripPlace;
  readonly lamp: LampStage;
  readonly rotationDeg: number;
  readonly rangeA: RangeA;
  readonly chalkedBar: number | null;
  readonly looksAt: Place | null;
  readonly geometry: CommutatorGeometry;
}

/** What anyone standing at the bench can see of it: enough to know what hands could do next. */
export type VisibleState = Pick<
  BenchState,
  'stage' | 'selector' | 'cradle' | 'hands' | 'leads' | 'strip' | 'rotationDeg' | 'rangeA' | 'geometry'
>;

/** The visible state as an observation shows it. That a job was handed in is not seen at the bench. */
export function visibleState(geometry: CommutatorGeometry, seen: Observation): VisibleState {
  const { selector, cradle, leads, rotationDeg, rangeA } = seen;
  return {
    stage: seen.stopped === null ? 'working' : 'stopped',
    hands: [seen.hands[0].holds, seen.hands[1].holds],
    strip: seen.strip,
    selector,
    cradle,
    leads,
    rotationDeg,
    rangeA,
    geometry,
  };
}

/** Supply as the panel shows it, from the three things that decide it. */
export function supplyOf(
  stage: BenchState['stage'],
  cutOut: BenchState['cutOut'],
  selector: Selector,
): Observation['supply'] {
  if (stage === 'stopped') return 'isolated';
  if (cutOut !== 'armed') return 'cutOut';
  return selector === 'off' ? 'off' : 'on';
}

export function freeHand(state: Pick<BenchState, 'hands'>): HandIndex | null {
  if (state.hands[0] === 'nothing') return 0;
  return state.hands[1] === 'nothing' ? 1 : null;
}

export function handHolding(state: Pick<BenchState, 'hands'>, held: Holds): HandIndex | null {
  const at = state.hands.indexOf(held);
  return at < 0 ? null : (at as HandIndex);
}

/** The hand that has this lead, alone or with its partner. */
export function handWithLead(state: Pick<BenchState, 'hands'>, lead: LeadId): HandIndex | null {
  const alone = handHolding(state, lead);
  if (alone !== null || leadSet(lead) === 'lamp') return alone;
  return handHolding(state, 'bothAmmeterLeads');
}

/**
 * The hand a person uses for an action, or null when none will do. The second ammeter lead joins the first in one
 * hand, as both must be held when the other hand turns.
 */
export function handFor(state: Pick<BenchState, 'hands'>, action: Action): HandIndex | null {
  switch (action.type) {
    case 'lead.take': {
      const other = handHolding(state, action.lead === 'ammeter.1' ? 'ammeter.2' : 'ammeter.1');
      if (leadSet(action.lead) === 'ammeter' && other !== null) return other;
      return handWithLead(state, action.lead) ?? freeHand(state);
    }
    case 'armature.turn':
    case 'armature.lift':
    case 'armature.release':
      return handHolding(state, 'armature') ?? freeHand(state);
    default:
      return freeHand(state);
  }
}

export function onArmature(place: Place | null): boolean {
  return place !== null && (place === 'shaft' || place === 'core' || barOf(place) !== null);
}

/** Places of the part on the bench; a tip of another lead is not one. */
export function onPart(place: Place | null): boolean {
  return place !== null && !place.startsWith('tip:');
}

export function touching(leads: Leads, set: LeadSet, where: (place: Place | null) => boolean): LeadId[] {
  return LEAD_IDS.filter((lead) => leadSet(lead) === set && where(leads[lead].touches));
}

/** Nobody has a hand on anything and nothing lies on the part: what a bench left alone looks like. */
export function unattended(state: BenchState): boolean {
  return (
    state.hands.every((held) => held === 'nothing') &&
    LEAD_IDS.every((lead) => state.leads[lead].touches === null)
  );
}
