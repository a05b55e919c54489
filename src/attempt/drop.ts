import type { DropView } from '../bench/observation.ts';
import { partOf } from '../bench/places.ts';
import { acrossPart } from '../bench/state.ts';
import { potentials } from '../engine/circuit/resistors.ts';
import { FEED_A, seeMillivolts } from '../engine/instruments/millivoltDrop.ts';
import { type Lying, nodeOf, resistorsOf } from './paths.ts';

/** What the two meters of the millivolt-drop set show. */
export type DropShown = Pick<DropView, 'feedA' | 'millivolts' | 'over'>;
export const DROP_IDLE: DropShown = { feedA: 0, millivolts: null, over: false };

/** Most the feed puts out, V: through more than this over `FEED_A` it drives less. Constant of the invented bench. */
export const FEED_MOST_V = 2;

/** The steady feed at work: its current, A, and the potentials under it, V by node. */
interface Fed {
  readonly currentA: number;
  readonly at: ReadonlyMap<string, number>;
}

/** Feed and drop as bench and hands stand. Into a break the feed drives nothing, and all its voltage stands across it. */
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
  const full = potentials(resistorsOf(lying, part, 0), from, to, FEED_A);
  if (full === null) return null;
  const share = Math.min(1, FEED_MOST_V / Math.max(full.get(from)!, Number.MIN_VALUE));
  const at = new Map([...full].map(([node, volt]) => [node, share * volt] as const));
  return { currentA: share * FEED_A, at };
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
