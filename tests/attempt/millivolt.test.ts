import { describe, expect, it } from 'vitest';
import type { BarPlace } from '../../src/bench/places.ts';
import type { ArmatureFault } from '../../src/engine/parts/armatureFault.ts';
import { BenchDriver, type JobOptions } from '../support/benchDriver.ts';

const CARD = { tests: ['look', 'millivolt'] } as const;

/** Drop across each pair of neighbouring bars with the feed over a quarter of the commutator, mV. */
function drops(faults: readonly ArmatureFault[], feedFrom = 0): number[] {
  const me = new BenchDriver({ ...CARD, part: 'lap-28', faults });
  const { bars } = me.geometry;
  const bar = (n: number): BarPlace => `bar:${n % bars}`;
  me.feeds(bar(feedFrom), bar(feedFrom + 7))
    .takes('drop.1')
    .takes('drop.2');
  const read = Array.from({ length: 7 }, (_, n) => {
    me.holdsOn('drop', bar(feedFrom + n), bar(feedFrom + n + 1));
    return me.sees.drop.millivolts!;
  });
  expect(me.everythingBroken).toEqual([]);
  return read;
}

describe('the millivolt-drop test of an armature', () => {
  it('finds the same drop all along a sound winding', () => {
    const read = drops([]);
    expect(Math.min(...read)).toBeGreaterThan(0.5);
    expect(Math.max(...read) - Math.min(...read)).toBeLessThanOrEqual(0.02 + 1e-9);
  });

  it('falls where bars are bridged, softer than strip or ammeter could feel, and nowhere else', () => {
    const read = drops([{ kind: 'bridgedBars', bar: 3, ohm: 5e-3, by: 'carbon' }]);
    const sound = drops([]);
    expect(read[3]! / sound[3]!).toBeLessThan(0.95);
    for (const n of [0, 1, 5, 6]) expect(read[n]! / sound[n]!).toBeGreaterThan(0.98);
  });

  it('rises over a bad joint of the coil end', () => {
    const read = drops([{ kind: 'riserJoint', bar: 2, form: 'oneEnd', ohm: 5e-3 }]);
    expect(read.indexOf(Math.max(...read))).toBe(2);
  });
});

describe('the millivolt-drop test of a winding that is open at two places', () => {
  it('finds all the voltage of the feed across a break, and nothing along a piece no current goes through', () => {
    const faults: ArmatureFault[] = [2, 16].map((coil) => ({ kind: 'openCoil', coil }));
    const me = new BenchDriver({ ...CARD, part: 'lap-28', faults });
    const at = (one: BarPlace, other: BarPlace) => me.holdsOn('drop', one, other).sees.drop;
    me.feeds('bar:2', 'bar:3').takes('drop.1').takes('drop.2');
    expect(at('bar:2', 'bar:3')).toMatchObject({ feedA: 0, millivolts: 200, over: true });
    expect(at('bar:16', 'bar:17')).toMatchObject({ millivolts: 200, over: true });
    expect(at('bar:8', 'bar:9')).toMatchObject({ millivolts: 0, over: false });
  });
});

describe('the millivolt-drop test of a field frame', () => {
  /** Drop from terminal to brush with the feed on the same branch, mV. */
  const branches = (job: JobOptions) => {
    const me = new BenchDriver({ parts: ['fieldFrame'], ...CARD, ...job })
      .takesUp('fieldFrame')
      .partsBrushes();
    return (['field:brush1', 'field:brush2'] as const).map((brush) => {
      me.feeds('field:terminal', brush).holdsOn('drop', 'field:terminal', brush);
      const shown = me.sees.drop;
      me.hangsUpBoth('drop').unfeeds();
      expect(me.refusal).toBeNull();
      return shown;
    });
  };

  it('finds the branch with shorted turns by comparing the two, which no lamp does', () => {
    const sound = branches({});
    expect(sound[0]!.feedA).toBe(5);
    expect(sound[0]!.millivolts).toBe(sound[1]!.millivolts);
    const [one, other] = branches({
      fieldFaults: [{ kind: 'shortedTurns', coil: 3, share: 0.4, ohm: 1e-5 }],
    });
    expect(one!.millivolts).toBe(sound[0]!.millivolts);
    expect(other!.millivolts! / sound[1]!.millivolts!).toBeLessThan(0.9);
  });

  it('drives no current into an open branch: its whole voltage stands across the break', () => {
    for (const coils of [[2], [3], [2, 3]]) {
      const [, open] = branches({ fieldFaults: coils.map((coil) => ({ kind: 'openCoil', coil })) });
      expect(open).toMatchObject({ feedA: 0, millivolts: 200, over: true });
    }
  });
});

describe('the feed', () => {
  it('is not on the rail where the card does not ask for it', () => {
    expect(new BenchDriver().feeds('bar:0', 'bar:6').refusal).toMatch(/does not ask for the millivolt-drop/);
  });

  it('goes on two places of one part that can be reached, and one at a time stays on', () => {
    const me = new BenchDriver({ parts: ['armature', 'fieldFrame'], ...CARD });
    expect(me.feeds('bar:0', 'field:terminal').refusal).toMatch(/same part/);
    expect(me.feeds('bar:0', 'bar:0').refusal).toMatch(/two different/);
    expect(me.feeds('bar:0', 'bar:99').refusal).toMatch(/no such bar/);
    expect(me.feeds('field:terminal', 'field:brush1').refusal).toMatch(/Take the field frame up/);
    expect(me.unfeeds().refusal).toMatch(/off already/);
    me.feeds('bar:0', 'bar:6');
    expect(me.sees.drop).toMatchObject({ feed: ['bar:0', 'bar:6'], feedA: 5, millivolts: null });
    expect(me.placesArmature().refusal).toMatch(/clip/);
  });
});
