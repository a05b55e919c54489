import type { DropView } from '../bench/observation.ts';
import { partOf } from '../bench/places.ts';
import { acrossPart } from '../bench/state.ts';
import { potentials } from '../engine/circuit/resistors.ts';
import { FEED_A, seeMillivolts } from '../engine/instruments/millivoltDrop.ts';
import { type Lying, nodeOf, resistorsOf } from './paths.ts';

/** What the two meters of the millivolt-drop set show. */
export type DropShown = Pick<DropView, 'feedA' | 'millivolts' | 'over'>;
export const DROP_IDLE: DropShown = { feedA: 0, millivolts: null, over: false };

/**
 * Feed and drop as bench and hands stand. A feed that finds no way carries nothing, and metal that it does not reach
 * has no drop.
 */
export function dropShown(lying: Lying): DropShown {
  const { drop } = lying.state;
  if (drop.at === 'absent') return DROP_IDLE;
  const at = fed(lying);
  return { feedA: at === null ? 0 : FEED_A, ...measured(lying, at) };
}

/** Potentials under the feed, V by node, or null where it is off or finds no way. */
function fed(lying: Lying): ReadonlyMap<string, number> | null {
  const { feed } = lying.state.drop;
  const part = feed === null ? null : partOf(feed[0]);
  if (feed === null || part === null) return null;
  return potentials(resistorsOf(lying, part, 0), nodeOf(feed[0]), nodeOf(feed[1]), FEED_A);
}

function measured(
  { state: { leads, drop } }: Lying,
  at: ReadonlyMap<string, number> | null,
): Pick<DropShown, 'millivolts' | 'over'> {
  const part = acrossPart(leads, 'drop');
  if (part === null) return { millivolts: null, over: false };
  const underFeed = drop.feed !== null && partOf(drop.feed[0]) === part;
  const high = underFeed ? at?.get(nodeOf(leads['drop.1'].touches!)) : undefined;
  const low = underFeed ? at?.get(nodeOf(leads['drop.2'].touches!)) : undefined;
  const { millivolts, over } = seeMillivolts(high === undefined || low === undefined ? null : high - low);
  return { millivolts, over };
}
