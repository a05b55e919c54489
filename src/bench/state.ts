import type { TestVolt } from '../engine/instruments/insulationTester.ts';
import {
  type Action,
  type BrushIndex,
  type GaugeKind,
  MAT_PARTS,
  type MatPart,
  type PartKind,
  type Preparation,
  type RangeA,
  type Selector,
} from './action.ts';
import type { CommutatorGeometry } from './geometry.ts';
import type { HandView, Observation } from './observation.ts';
import {
  ALL_LEADS,
  type LeadId,
  type LeadSet,
  leadSet,
  type PanelLead,
  type Place,
  partOf,
} from './places.ts';
import type { Tips } from './tips.ts';

export type Holds = HandView['holds'];
export type HandIndex = 0 | 1;
/** Where the strip is; angle and height only while it is held over the core. */
export interface StripPlace {
  readonly at: 'rail' | 'hand' | 'core';
  readonly angleDeg: number | null;
  readonly heightMm: number | null;
}
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
  readonly leads: Tips;
  readonly strip: StripPlace;
  readonly lamp: LampStage;
  readonly rotationDeg: number;
  readonly rangeA: RangeA;
  readonly chalkedBar: number | null;
  readonly looksAt: Place | null;
  readonly mat: Observation['mat'];
  readonly brushesApart: boolean;
  readonly gauge: GaugeKept | null;
  readonly tester: TesterState;
  readonly drop: DropState;
  readonly prepared: Memory['prepared'];
  readonly memory: Memory;
  /** Parts whose card asks for a ground test with the lamp. */
  readonly lampFirst: readonly PartKind[];
  readonly geometry: CommutatorGeometry;
}

/** What someone who has watched the bench knows of it beside what it shows. */
export interface Memory {
  /** Part the insulation tester has charged and nobody has discharged since. */
  readonly charged: PartKind | null;
  /** Parts tested for ground with the lamp. */
  readonly lampTested: readonly PartKind[];
  /** Handles still cracked. */
  readonly cracked: readonly PanelLead[];
  /** Minutes by the workshop's book for remedies and repairs. */
  readonly minutesSpent: number;
  readonly prepared: readonly Preparation[];
}

/** What the gauge was put to. */
export interface GaugeKept {
  readonly gauge: GaugeKind;
  readonly brush: BrushIndex | null;
}

/** The insulation tester: its switch and its button. */
export interface TesterState {
  readonly at: 'absent' | 'rail';
  readonly volt: TestVolt;
  readonly pressed: boolean;
}

/** The millivolt-drop set: where its feed is clamped. */
export interface DropState {
  readonly at: 'absent' | 'rail';
  readonly feed: readonly [Place, Place] | null;
}

/** What anyone standing at the bench can see of it: enough to know what hands could do next. */
export type VisibleState = Pick<
  BenchState,
  | 'stage'
  | 'selector'
  | 'supply'
  | 'cradle'
  | 'hands'
  | 'leads'
  | 'strip'
  | 'rotationDeg'
  | 'rangeA'
  | 'mat'
  | 'brushesApart'
  | 'tester'
  | 'drop'
  | 'prepared'
  | 'geometry'
>;

/** The visible state as an observation shows it. That a job was handed in is not seen at the bench. */
export function visibleState(geometry: CommutatorGeometry, seen: Observation): VisibleState {
  const { selector, supply, cradle, leads, rotationDeg, rangeA } = seen;
  const { mat, brushesApart, tester, drop, prepared } = seen;
  return {
    ...{ supply, mat, brushesApart, tester, drop, prepared },
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
  if (alone !== null || leadSet(lead) !== 'ammeter') return alone;
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
  return place !== null && partOf(place) === 'armature';
}

/** Places of a part; a tip of another lead is not one. */
export function onPart(place: Place | null): boolean {
  return place !== null && partOf(place) !== null;
}

/** The part two leads of a set both lie on, or null. */
export function acrossPart(leads: Tips, set: LeadSet): PartKind | null {
  const [one, other] = [leads[`${set}.1`].touches, leads[`${set}.2`].touches];
  if (one === null || other === null) return null;
  const part = partOf(one);
  return part === partOf(other) ? part : null;
}

/** Leads and feed clamps fixed on a part: it cannot be moved before they are off. */
export function clippedTo(state: Pick<BenchState, 'leads' | 'drop'>, part: PartKind): boolean {
  const on = (place: Place | null) => place !== null && partOf(place) === part;
  const clipped = ALL_LEADS.some((lead) => state.leads[lead].at === 'clip' && on(state.leads[lead].touches));
  return clipped || (state.drop.feed?.some(on) ?? false);
}

export function isMatPart(part: PartKind): part is MatPart {
  return (MAT_PARTS as readonly PartKind[]).includes(part);
}

export function touching(leads: Tips, set: LeadSet, where: (place: Place | null) => boolean): LeadId[] {
  return ALL_LEADS.filter((lead) => leadSet(lead) === set && where(leads[lead].touches));
}

/** Nobody has a hand on anything and nothing lies on the part: what a bench left alone looks like. */
export function unattended(state: BenchState): boolean {
  return (
    state.hands.every((held) => held === 'nothing') &&
    ALL_LEADS.every((lead) => state.leads[lead].touches === null)
  );
}
