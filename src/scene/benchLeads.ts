import { PANEL_LEADS } from '../bench/places.ts';

/** A lead that stands in a holster of the bench's own panel. */
export type BenchLead = (typeof PANEL_LEADS)[number];
export type BenchSet = 'ammeter' | 'lamp';

export const BENCH_LEADS: readonly BenchLead[] = PANEL_LEADS;

export function setOf(lead: BenchLead): BenchSet {
  return lead.startsWith('ammeter') ? 'ammeter' : 'lamp';
}

export function otherOf(lead: BenchLead): BenchLead {
  return `${setOf(lead)}.${lead.endsWith('1') ? '2' : '1'}`;
}
