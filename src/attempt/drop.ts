import type { DropView } from '../bench/observation.ts';
import { partOf } from '../bench/places.ts';
import { acrossPart } from '../bench/state.ts';
import { type Fed, seeMillivolts, underFeed } from '../engine/instruments/millivoltDrop.ts';
import { type Lying, nodeOf, resistorsOf } from './paths.ts';

/** What the two meters of the millivolt-drop set show. */
export type DropShown = Pick<DropView, 'feedA' | 'millivolts' | 'over'>;
export const DROP_IDLE: DropShown = { feedA: 0, millivolts: null, over: false };

/** Feed and drop as bench and hands stand. */
export function dropShown(lying: Lying): DropShown {
  if (lying.state.drop.at === 'absent') return DROP_IDLE;
  const feed = fed(lying);
  return { feedA: Number((feed?.currentA ?? 0).toFixed(1)), ...measured(lying, feed) };
}

function fed(lying: Lying): Fed | null {
  const { feed } = lying.state.drop;
  const part = feed === null ? null : partOf(feed[0]);
  if (feed === null || part === null) return null;
  const [from, to] = feed.map(nodeOf) as [string, string];
  return underFeed(resistorsOf(lying, part, 0), from, to);
}

function measured(
  { state: { leads, drop } }: Lying,
  feed: Fed | null,
): Pick<DropShown, 'millivolts' | 'over'> {
  const part = acrossPart(leads, 'drop');
  if (part === null) return { millivolts: null, over: false };
  const underFeed = drop.feed !== null && partOf(drop.feed[0]) === part;
  const high = underFeed ? feed?.at.get(nodeOf(leads['drop.1'].touches!)) : undefined;
  const low = underFeed ? feed?.at.get(nodeOf(leads['drop.2'].touches!)) : undefined;
  const { millivolts, over } = seeMillivolts(high === undefined || low === undefined ? null : high - low);
  return { millivolts, over };
}
