import type { PanelLead } from '../../bench/places.ts';

/** What can be wrong with the bench itself. */
export type BenchFault =
  | { readonly kind: 'blownLamp' }
  /** The cable is broken inside: nothing comes through this lead. */
  | { readonly kind: 'brokenLead'; readonly lead: PanelLead }
  /** Fingers can reach the metal inside: a lens finds it. */
  | { readonly kind: 'crackedHandle'; readonly lead: PanelLead }
  /** Deflection of the ammeter with no current, fraction of full scale. */
  | { readonly kind: 'ammeterZero'; readonly offset: number };
