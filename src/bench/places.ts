import type { PartKind } from './action.ts';

/**
 * Every piece of metal or surface a probe, a hand, the lens or the chalk can be put on.
 * Canvas and plain-words twin are both generated from this list, so neither can do what the other cannot.
 *
 * Bars are numbered 0..bars-1 in the sense of increasing angle seen from the commutator end. The number is the
 * bench's own: a learner never sees it and counts from the bar they chalked.
 */
export type BarPlace = `bar:${number}`;
export type RiserPlace = `riser:${number}`;
export type TipPlace = `tip:${LeadId}`;

/** Field frame: motor terminal, the two field brushes, the case. */
export const FIELD_PLACES = ['field:terminal', 'field:brush1', 'field:brush2', 'field:case'] as const;
export type FieldPlace = (typeof FIELD_PLACES)[number];
/** Brush plate: bare plate, insulated holders 1 and 2, earthed holders 1 and 2. */
export const PLATE_PLACES = [
  'plate:metal',
  'plate:insulated1',
  'plate:insulated2',
  'plate:earthed1',
  'plate:earthed2',
] as const;
export type PlatePlace = (typeof PLATE_PLACES)[number];
/** Handle and cable of a lead of the bench's own panel: for the lens only. */
export type HandlePlace = `handle:${PanelLead}`;
/** What of the bench itself the lens can be put on. */
export type BenchPlace = HandlePlace | 'lampBulb';

export type Place =
  | BarPlace
  | RiserPlace
  | 'shaft'
  | 'core'
  | TipPlace
  | FieldPlace
  | PlatePlace
  | BenchPlace;

/** The two sets of the bench's own panel, then those of the tools a job card may allow. */
export const LEAD_SETS = ['ammeter', 'lamp', 'tester', 'drop'] as const;
export type LeadSet = (typeof LEAD_SETS)[number];
/** Leads of the bench's own panel, in the order of their holsters. */
export const PANEL_LEADS = ['ammeter.1', 'ammeter.2', 'lamp.1', 'lamp.2'] as const;
export type PanelLead = (typeof PANEL_LEADS)[number];
/** Leads of insulation tester and millivoltmeter: they end in clips and hang on the rail when the card allows them. */
export const RAIL_LEADS = ['tester.1', 'tester.2', 'drop.1', 'drop.2'] as const;
export type RailLead = (typeof RAIL_LEADS)[number];
export const ALL_LEADS = [...PANEL_LEADS, ...RAIL_LEADS] as const;
export type LeadId = PanelLead | RailLead;

export function leadSet(lead: LeadId): LeadSet {
  return lead.slice(0, lead.indexOf('.')) as LeadSet;
}

/** A lead whose end can be clipped on to metal and left there. */
export function isClip(lead: LeadId): lead is RailLead {
  return (RAIL_LEADS as readonly LeadId[]).includes(lead);
}

/** The other lead of the same set. */
export function partner(lead: LeadId): LeadId {
  const [set, end] = lead.split('.') as [LeadSet, '1' | '2'];
  return `${set}.${end === '1' ? '2' : '1'}`;
}

export function barPlace(bar: number): BarPlace {
  return `bar:${bar}`;
}

/** The part a place belongs to; null for a tip, a handle or the bulb. */
export function partOf(place: Place): PartKind | null {
  if (place.startsWith('field:')) return 'fieldFrame';
  if (place.startsWith('plate:')) return 'brushPlate';
  return barOf(place) !== null || place === 'shaft' || place === 'core' ? 'armature' : null;
}

export function isMatPlace(place: Place): place is FieldPlace | PlatePlace {
  return ([...FIELD_PLACES, ...PLATE_PLACES] as readonly Place[]).includes(place);
}

/** Bar number of a bar or riser place, or null for any other place. */
export function barOf(place: Place): number | null {
  const match = /^(?:bar|riser):(\d+)$/.exec(place);
  return match ? Number(match[1]) : null;
}
