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
export type FieldPlace = 'field:terminal' | 'field:brush1' | 'field:brush2' | 'field:case';
/** Brush plate: bare plate, insulated holders 1 and 2, earthed holders 1 and 2. */
export type PlatePlace =
  | 'plate:metal'
  | 'plate:insulated1'
  | 'plate:insulated2'
  | 'plate:earthed1'
  | 'plate:earthed2';

export type Place = BarPlace | RiserPlace | 'shaft' | 'core' | TipPlace | FieldPlace | PlatePlace;

export const LEAD_SETS = ['ammeter', 'lamp'] as const;
export type LeadSet = (typeof LEAD_SETS)[number];
export const LEAD_IDS = ['ammeter.1', 'ammeter.2', 'lamp.1', 'lamp.2'] as const;
export type LeadId = (typeof LEAD_IDS)[number];

export function leadSet(lead: LeadId): LeadSet {
  return lead.startsWith('ammeter') ? 'ammeter' : 'lamp';
}

/** The other lead of the same set. */
export function partner(lead: LeadId): LeadId {
  const [set, end] = lead.split('.') as [LeadSet, '1' | '2'];
  return `${set}.${end === '1' ? '2' : '1'}`;
}

export function barPlace(bar: number): BarPlace {
  return `bar:${bar}`;
}

/** Bar number of a bar or riser place, or null for any other place. */
export function barOf(place: Place): number | null {
  const match = /^(?:bar|riser):(\d+)$/.exec(place);
  return match ? Number(match[1]) : null;
}
