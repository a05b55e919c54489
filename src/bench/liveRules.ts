import type { PartKind } from './action.ts';
import type { BenchEvent } from './happening.ts';
import { powerAfter } from './lampTests.ts';
import { ALL_LEADS, type LeadId, leadSet, PANEL_LEADS, partOf } from './places.ts';
import type { Standing } from './standing.ts';
import { type BenchState, onPart } from './state.ts';
import { type Tips, tipsAfter } from './tips.ts';
import { handledPart } from './touched.ts';

const LAMP_LEADS: readonly LeadId[] = ['lamp.1', 'lamp.2'];

export function heldByLiveTip({ power, tips }: Standing): boolean {
  return power === 'low' && LAMP_LEADS.some((lead) => tips[lead].grip === 'tip');
}

export function holdsCrackedHandle({ power, tips }: Standing, { memory }: BenchState): boolean {
  return (
    power === 'low' && memory.cracked.some((lead) => leadSet(lead) === 'lamp' && tips[lead].grip !== null)
  );
}

/**
 * Skin on metal joined to a live probe: a hand on the part, or fingers on the bare tip of another lead that touches
 * the same part or the probe itself.
 */
export function handOnLiveMetal({ power, tips, handOnArmature }: Standing): boolean {
  if (power !== 'low') return false;
  const live = livePartsOf(tips);
  if (live.has('armature') && handOnArmature) return true;
  return ALL_LEADS.some(
    (lead) => tips[lead].grip === 'tip' && (onOneOf(live, tips, lead) || onLampTip(tips, lead)),
  );
}

function livePartsOf(tips: Tips): ReadonlySet<PartKind> {
  return new Set(LAMP_LEADS.flatMap((lead) => partTouched(tips, lead)));
}

function partTouched(tips: Tips, lead: LeadId): PartKind[] {
  const { touches } = tips[lead];
  const part = touches === null ? null : partOf(touches);
  return part === null ? [] : [part];
}

function onOneOf(parts: ReadonlySet<PartKind>, tips: Tips, lead: LeadId): boolean {
  return partTouched(tips, lead).some((part) => parts.has(part));
}

function onLampTip(tips: Tips, lead: LeadId): boolean {
  if (leadSet(lead) === 'lamp') return false;
  return (
    tips[lead].touches?.startsWith('tip:lamp') === true ||
    LAMP_LEADS.some((lamp) => tips[lamp].touches === `tip:${lead}`)
  );
}

/** A bare hand laid on a part for a moment, to turn it, lift it or put it away, with a live probe on it. */
export function reachesForLiveMetal(state: BenchState, event: BenchEvent): boolean {
  const part = handledPart(event);
  const live = state.supply === 'on' && state.selector === 'low';
  return part !== null && live && livePartsOf(state.leads).has(part);
}

/** Lamp leads at work on HIGH, ammeter leads at work on LOW, or a test with one lead of each set. */
export function mixesLeads(state: BenchState, event: BenchEvent): boolean {
  const power = powerAfter(state, event);
  if (power === 'off' || (event.type !== 'lead.touch' && event.type !== 'selector.turn')) return false;
  const tips = tipsAfter(state.leads, event, state);
  const at = (set: 'lamp' | 'ammeter') =>
    PANEL_LEADS.filter((lead) => leadSet(lead) === set && onPart(tips[lead].touches)).length;
  if (event.type === 'selector.turn') return at(power === 'low' ? 'ammeter' : 'lamp') > 0;
  const set = leadSet(event.lead);
  if (!onPart(event.place) || (set !== 'lamp' && set !== 'ammeter')) return false;
  return set === (power === 'low' ? 'ammeter' : 'lamp') || (at('lamp') === 1 && at('ammeter') === 1);
}
