import { type BenchCare, PREPARATIONS } from '../../bench/action.ts';
import type { Clue } from '../../bench/observation.ts';
import { PANEL_LEADS, type PanelLead } from '../../bench/places.ts';
import type { Hands } from './hands.ts';

/** What is seen to before power, and the bench itself put right: bulb, leads, the zero of the ammeter. */

const SET_OF = (lead: PanelLead): BenchCare => (lead.startsWith('lamp') ? 'lampLeads' : 'ammeterLeads');

/**
 * Looks the bench over and sees to what is seen to before power. A cracked handle is not touched: its set is changed
 * first. A needle that hangs off its zero is set before anything is read on it.
 */
export function makeReady(hands: Hands): void {
  for (const lead of PANEL_LEADS) {
    if (sees(hands, `handle:${lead}`).includes('crackedHandle')) setRight(hands, SET_OF(lead));
  }
  if (sees(hands, 'lampBulb').includes('brokenFilament')) setRight(hands, 'lamp');
  if (hands.restNeedle().needle.deflection > 0) {
    setRight(hands, 'ammeterZero');
    hands.restNeedle();
  }
  for (const item of PREPARATIONS) hands.do({ type: 'prepare.check', item });
}

function sees(hands: Hands, place: `handle:${PanelLead}` | 'lampBulb'): readonly Clue[] {
  return hands.do({ type: 'lens.look', place }).look?.sees ?? [];
}

/** The bench off and the leads hung up; nothing is put right twice over when two leads of a set are bad. */
export function setRight(hands: Hands, what: BenchCare): void {
  hands.do({ type: 'bench.setRight', what });
}
