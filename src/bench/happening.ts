import type { Action } from './action.ts';

/**
 * What comes about by itself while simulated time runs, as the panel, the nose or a pair of eyes would notice it.
 * Happenings follow from the actions and the physics; a log keeps them as checkpoints only.
 */
export type Happening =
  /** The two lamp tips were held together and the lamp was seen to light. */
  | { readonly type: 'lamp.proved' }
  /** The bench has stood on for a minute with nobody's hand on anything. */
  | { readonly type: 'bench.idle' }
  /** Growler or part has become too hot while the bench is on. */
  | { readonly type: 'bench.overheated'; readonly what: 'growler' | 'part' }
  /** The thermal cut-out has opened. */
  | { readonly type: 'bench.tripped' }
  /** The winding has cooled far enough for the cut-out to be armed again. */
  | { readonly type: 'bench.cooled' };

export type BenchEvent = Action | Happening;

const HAPPENINGS: Readonly<Record<Happening['type'], true>> = {
  'lamp.proved': true,
  'bench.idle': true,
  'bench.overheated': true,
  'bench.tripped': true,
  'bench.cooled': true,
};

export function isHappening(event: BenchEvent): event is Happening {
  return event.type in HAPPENINGS;
}

/** How long the bench may stand on with nobody's hand on it, ms. Common practice, no source; the minute is ours. */
export const IDLE_MS = 60_000;
