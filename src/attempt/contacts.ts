import {
  ALL_LEADS,
  barOf,
  type FieldPlace,
  type LeadId,
  leadSet,
  PANEL_LEADS,
  type PanelLead,
  type Place,
  type PlatePlace,
  partner,
} from '../bench/places.ts';
import type { BenchState } from '../bench/state.ts';
import type { Tips } from '../bench/tips.ts';
import type { MeterTap } from '../engine/drive.ts';
import { contactOhm, loopOhm } from '../engine/instruments/ammeter.ts';
import { seeded } from '../engine/math/random.ts';

/** Contacts made so far and what each tip has now, ohm. */
export interface Contacts {
  readonly made: number;
  readonly ohm: Readonly<Record<PanelLead, number>>;
}

export const NO_CONTACTS: Contacts = {
  made: 0,
  ohm: { 'ammeter.1': 0, 'ammeter.2': 0, 'lamp.1': 0, 'lamp.2': 0 },
};

/**
 * Contacts after an act: a tip that has come on to other metal has made a new contact, drawn from the scenario's seed
 * and the contact's number in the attempt. A tip put down afresh counts even where the metal is the same, since it
 * had to be lifted first.
 */
export function contactsAfter(
  contacts: Contacts,
  before: Tips,
  after: Tips,
  scatter: { readonly seed: number; readonly dirty: boolean },
): Contacts {
  let { made } = contacts;
  const ohm = { ...contacts.ohm };
  for (const lead of PANEL_LEADS) {
    const { touches } = after[lead];
    if (touches === null || touches === before[lead].touches) continue;
    made += 1;
    ohm[lead] = contactOhm(seeded(`contact ${scatter.seed} ${made}`), scatter.dirty);
  }
  return made === contacts.made ? contacts : { made, ohm };
}

/**
 * A piece of metal as the circuits know it: a bar, core with shaft, a place of field frame or brush plate, or the
 * ammeter's own leads hanging free.
 */
export type Metal = number | 'core' | FieldPlace | PlatePlace | 'ammeter';

/**
 * The metal a tip is joined to: through another lead's tip to what that lead touches.
 * @param meterWhole neither ammeter lead is broken inside
 */
export function metalUnder(leads: Tips, lead: LeadId, meterWhole = true): Metal | null {
  return metalOf(leads, leads[lead].touches, lead, meterWhole);
}

function metalOf(leads: Tips, place: Place | null, asking: LeadId, meterWhole: boolean): Metal | null {
  if (place === null) return null;
  const metal = ofPart(place);
  if (metal !== null) return metal;
  const other = ALL_LEADS.find((id) => place === `tip:${id}`);
  if (other === undefined) return null;
  const beyond = leads[other].touches;
  const reached = beyond === `tip:${asking}` ? null : metalOf(leads, beyond, other, meterWhole);
  if (reached !== null || leadSet(other) !== 'ammeter') return reached;
  return meterWhole ? throughAmmeter(leads, other) : 'ammeter';
}

function ofPart(place: Place): Exclude<Metal, 'ammeter'> | null {
  const bar = barOf(place);
  if (bar !== null) return bar;
  if (place === 'core' || place === 'shaft') return 'core';
  return isMatPlace(place) ? place : null;
}

function isMatPlace(place: Place): place is FieldPlace | PlatePlace {
  return place.startsWith('field:') || place.startsWith('plate:');
}

/** From a free ammeter tip through the shunt to what the other ammeter tip is on. */
function throughAmmeter(leads: Tips, lead: LeadId): Metal {
  const far = leads[partner(lead)].touches;
  return (far === null ? null : ofPart(far)) ?? 'ammeter';
}

/** The lamp's two tips lie against one another. */
export function lampTipsTogether(leads: Tips): boolean {
  return leads['lamp.1'].touches === 'tip:lamp.2' || leads['lamp.2'].touches === 'tip:lamp.1';
}

/**
 * The ammeter across two pieces of the armature, or null. Core and shaft are the node after the last bar, as in the
 * engine's topology, so a grounded winding drives current through an ammeter from bar to shaft too.
 */
export function meterTap({ leads }: BenchState, { ohm }: Contacts, bars: number): MeterTap | null {
  const node = (lead: LeadId) => {
    const metal = metalUnder(leads, lead);
    return metal === 'core' ? bars : metal;
  };
  const barA = node('ammeter.1');
  const barB = node('ammeter.2');
  if (typeof barA !== 'number' || typeof barB !== 'number' || barA === barB) return null;
  return { barA, barB, loopOhm: loopOhm(ohm['ammeter.1'], ohm['ammeter.2']) };
}
