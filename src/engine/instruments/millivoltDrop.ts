import { joinedTo, potentials, type Resistor, resistanceBetween } from '../circuit/resistors.ts';
import type { ArmatureDesign } from '../parts/armature.ts';
import type { ArmatureFault } from '../parts/armatureFault.ts';
import { type ArmatureState, armatureResistors, COLD_AND_DEAD } from './armatureDc.ts';

/**
 * The millivolt-drop test: a steady current is fed into the winding through one pair of contacts and the drop is
 * read through another, so the resistance of the contacts does not enter. Growler off, armature out of the cradle.
 */

/** Steady current of the feed, A: low enough to warm nothing. Constant of the invented bench. */
export const FEED_A = 5;
/** Most the feed puts out, V: through more than this over `FEED_A` it drives less. Constant of the invented bench. */
export const FEED_MOST_V = 2;
/** Finest step of the millivoltmeter, mV. */
const STEP_MV = 0.01;
/** End of its scale, mV; beyond, it shows over range. */
export const DROP_END_MV = 200;

export interface Feed {
  readonly from: number;
  readonly to: number;
  readonly currentA: number;
}

/** The feed at work: its current, A, and the potentials under it, V by node; a node that floats has none. */
export interface Fed {
  readonly currentA: number;
  readonly at: ReadonlyMap<string, number>;
}

/** What the feed does between two nodes. Into a break it drives nothing, and all its voltage stands across the break. */
export function underFeed(resistors: readonly Resistor[], from: string, to: string): Fed {
  const full = potentials(resistors, from, to, FEED_A);
  if (full === null) {
    const side = (node: string, volt: number) =>
      [...joinedTo(resistors, node)].map((one) => [one, volt] as const);
    return { currentA: 0, at: new Map([...side(from, FEED_MOST_V), ...side(to, 0)]) };
  }
  const share = Math.min(1, FEED_MOST_V / Math.max(full.get(from)!, Number.MIN_VALUE));
  return {
    currentA: share * FEED_A,
    at: new Map([...full].map(([node, volt]) => [node, share * volt] as const)),
  };
}

/** The usual feed: two bars one pole pitch apart. */
export function poleFeed(a: ArmatureDesign, from: number, currentA = FEED_A): Feed {
  return { from, to: (from + Math.round(a.bars / a.poles)) % a.bars, currentA };
}

/**
 * Drop from each bar to the next, V, length bars, under a feed that stays where it is; null where a bar has no path to
 * the feed, and all null where the feed finds none.
 */
export function barDrops(
  a: ArmatureDesign,
  faults: readonly ArmatureFault[],
  feed: Feed,
  state: ArmatureState = COLD_AND_DEAD,
): readonly (number | null)[] {
  const at = potentials(armatureResistors(a, faults, state), `${feed.from}`, `${feed.to}`, feed.currentA);
  return Array.from({ length: a.bars }, (_, bar) => {
    const high = at?.get(`${bar}`);
    const low = at?.get(`${(bar + 1) % a.bars}`);
    return high === undefined || low === undefined ? null : high - low;
  });
}

/** Drop between each pair of neighbouring bars with the feed moved to that pair each time, V; null where it finds no path. */
export function neighbourDrops(
  a: ArmatureDesign,
  faults: readonly ArmatureFault[],
  currentA = FEED_A,
  state: ArmatureState = COLD_AND_DEAD,
): readonly (number | null)[] {
  const resistors = armatureResistors(a, faults, state);
  return Array.from({ length: a.bars }, (_, bar) => {
    const ohm = resistanceBetween(resistors, `${bar}`, `${(bar + 1) % a.bars}`);
    return ohm === null ? null : ohm * currentA;
  });
}

/** What the millivoltmeter shows: size of the drop in mV to 0.01, and whether it lies beyond the scale. */
export function seeMillivolts(volt: number | null): { readonly millivolts: number; readonly over: boolean } {
  const mv = Math.abs(volt ?? 0) * 1000;
  if (mv > DROP_END_MV) return { millivolts: DROP_END_MV, over: true };
  return { millivolts: Number((Math.round(mv / STEP_MV) * STEP_MV).toFixed(2)), over: false };
}
