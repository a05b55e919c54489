import { describe, expect, it } from 'vitest';
import type { ArmatureFault } from '../../src/engine/parts/armatureFault.ts';
import type { JobOptions } from '../support/benchDriver.ts';
import { finding, PartsWorker } from './partsWork.ts';

/** An armature with the rail's tools on the card, and no ammeter. Common practice, no source. */
const armature = (faults: readonly ArmatureFault[] = [], more: JobOptions = {}): JobOptions => ({
  part: 'lap-24',
  tests: ['look', 'ground', 'megohm', 'millivolt', 'gauges'],
  faults,
  ...more,
});

function worked(options: JobOptions): PartsWorker {
  const me = new PartsWorker(options).looksAtArmature().chalks(0).testsGround();
  me.measuresArmatureInsulation().measuresBarDrops().measuresCommutator();
  expect(me.refused).toEqual([]);
  return me;
}

const weak: ArmatureFault = { kind: 'weakInsulation', ohm: 300e3, breakdownV: null };
const soft: ArmatureFault = { kind: 'bridgedBars', bar: 5, ohm: 5e-3, by: 'carbon' };

describe('an armature tested with the tools of the rail', () => {
  it('wins every mark when sound', () => {
    const { marks } = worked(armature())
      .decides('armature', [finding('sound')], 'service')
      .marks();
    expect(marks.filter(({ earned, of }) => earned < of)).toEqual([]);
    expect(marks.map(({ id }) => id)).toEqual(expect.arrayContaining(['megohmPass', 'millivoltPass']));
    expect(marks.map(({ id }) => id)).not.toContain('needleSpared');
  });

  it('wins every mark for insulation that only the tester finds poor', () => {
    const me = worked(armature([weak]));
    expect(me.decides('armature', [finding('poorInsulation')], 'winder').lost()).toEqual([]);
  });

  it('15: passed because the lamp stayed dark, with the tester there to use', () => {
    const me = new PartsWorker(armature([weak])).looksAtArmature().chalks(0).testsGround();
    me.measuresBarDrops()
      .measuresCommutator()
      .decides('armature', [finding('sound')], 'service');
    expect(me.lost()).toEqual([
      'condition',
      'disposition',
      'megohmPass',
      'place',
      'proven',
      'recordedFirst',
      'supported',
      'testerSafe',
    ]);
  });

  it('wins every mark for a soft bridge by its drop, and by its place among the bars', () => {
    const at = (count: number) => finding('bridgedBars', { kind: 'pair', count });
    // One figure alone may be a slip: whoever wants to be sure reads it again.
    const once = worked(armature([soft]));
    expect(once.decides('armature', [at(5)], 'cleanAndRetest').lost()).toEqual(['proven']);
    const twice = worked(armature([soft])).measuresBarDrop(5);
    expect(twice.decides('armature', [at(5)], 'cleanAndRetest').lost()).toEqual([]);
    expect(
      worked(armature([soft]))
        .decides('armature', [at(9)], 'cleanAndRetest')
        .lost(),
    ).toEqual(['place', 'proven']);
  });

  it('wins every mark for a worn commutator', () => {
    const me = worked(armature([], { wear: { undercutMm: 0.1 } }));
    expect(me.decides('armature', [finding('worn')], 'cleanAndRetest').lost()).toEqual([]);
  });

  it('a feed that stays a pole pitch apart says nothing of joints between bar and winding', () => {
    const me = new PartsWorker(armature()).looksAtArmature().chalks(0).testsGround();
    me.measuresArmatureInsulation().measuresBarDrops(6).measuresCommutator();
    expect(me.decides('armature', [finding('sound')], 'service').lost()).toEqual(['proven']);
    const mark = me.marks().marks.find(({ id }) => id === 'proven')!;
    expect(mark.sentence).toMatch(/^Right, but not yet proven/);
  });

  it('half the pairs read is half the drop', () => {
    const me = new PartsWorker(armature()).looksAtArmature().chalks(0).testsGround();
    me.measuresArmatureInsulation().measuresCommutator().feeds('bar:0', 'bar:6');
    for (let bar = 0; bar < 12; bar += 1)
      me.holdsOn('drop', `bar:${bar}`, `bar:${bar + 1}`).writes({ test: 'millivolt', count: bar });
    me.hangsUpBoth('drop')
      .unfeeds()
      .decides('armature', [finding('sound')], 'service');
    const mark = me.marks().marks.find(({ id }) => id === 'millivoltPass')!;
    expect(mark.earned / mark.of).toBeCloseTo(0.5, 5);
  });
});
