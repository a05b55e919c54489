import { describe, expect, it } from 'vitest';
import { printedA } from '../../src/bench/scale.ts';
import type { ArmatureFault } from '../../src/engine/parts/armatureFault.ts';
import { BenchDriver, type JobOptions } from '../support/benchDriver.ts';

/** Readings of neighbouring bars all the way round, by the bar under probe 1. */
function neighbourPass(options: JobOptions): Map<number, number> {
  const me = new BenchDriver(options).placesArmature().switches('high').setsRange(15);
  const pitch = 360 / me.geometry.bars;
  me.setsProbesAt(-45, -45 + pitch);
  const readings = new Map<number, number>();
  for (let turn = 0; turn < me.geometry.bars; turn += 1) {
    me.readsNeedle();
    const under = me.sees.leads['ammeter.1'].touches!;
    readings.set(Number(under.slice('bar:'.length)), printedA(me.sees.needle, 15));
    me.turnsOneBar();
  }
  expect(me.everythingBroken).toEqual([]);
  return readings;
}

describe('the ammeter at the bench', () => {
  // Physics figures of the invented bench; the engine's own tests hold them against outside witnesses.
  it('reads the same at every bar of a sound armature, within the contact scatter', () => {
    const readings = [...neighbourPass({}).values()];
    expect(readings.length).toBe(23);
    const middle = [...readings].sort((a, b) => a - b)[11]!;
    expect(middle).toBeGreaterThan(8);
    for (const reading of readings) expect(Math.abs(reading / middle - 1)).toBeLessThan(0.06);
    expect(new Set(readings).size).toBeGreaterThan(3);
  });

  it('drops out at both pairs of a bar whose riser is off, and nowhere else', () => {
    const readings = neighbourPass({ faults: [{ kind: 'riserJoint', bar: 5, form: 'bar', ohm: 'open' }] });
    const fallen = [...readings].filter(([, reading]) => reading < 1).map(([bar]) => bar);
    expect(fallen.sort((a, b) => a - b)).toEqual([4, 5]);
  });

  it('draws new contacts at every placement, the same ones for the same seed', () => {
    const reading = (seed: number) => [...neighbourPass({ seed }).values()];
    expect(reading(3)).toEqual(reading(3));
    expect(reading(3)).not.toEqual(reading(4));
  });

  it('scatters far more on a dirty commutator', () => {
    const spread = (faults: readonly ArmatureFault[]) => {
      const readings = [...neighbourPass({ faults }).values()];
      return (Math.max(...readings) - Math.min(...readings)) / Math.max(...readings);
    };
    expect(spread([{ kind: 'dirtyCommutator' }])).toBeGreaterThan(3 * spread([]));
  });

  it('takes time to come to rest and is pegged by too small a range', () => {
    const me = new BenchDriver().placesArmature().switches('high').setsProbesAt(-90, -15);
    expect(me.sees.needle.atRest).toBe(false);
    me.setsRange(3).waits(8000);
    expect(me.sees.needle).toEqual({ deflection: 1.03, pegged: true, atRest: true });
    me.setsRange(100).waits(8000);
    expect(me.sees.needle.pegged).toBe(false);
    expect(me.sees.needle.deflection).toBeGreaterThan(0.2);
    me.switches('off').waits(8000);
    expect(me.sees.needle.deflection).toBe(0);
  });

  it('reads less on LOW than on HIGH, both exciting the growler', () => {
    const read = (at: 'low' | 'high') => {
      const me = new BenchDriver().placesArmature().switches(at).setsProbesAt(-90, -15).waits(4000);
      return printedA(me.sees.needle, 100);
    };
    expect(read('low')).toBeGreaterThan(5);
    expect(read('low')).toBeLessThan(0.8 * read('high'));
  });

  it('shows nothing between two tips on one bar or on each other', () => {
    const me = new BenchDriver().placesArmature().switches('high').takes('ammeter.1').takes('ammeter.2');
    const bar = `bar:${me.barNear(-90)}` as const;
    me.touches('ammeter.1', bar).touches('ammeter.2', bar);
    expect(me.readsNeedle()).toBe(0);
    me.touches('ammeter.2', 'tip:ammeter.1');
    expect(me.readsNeedle()).toBe(0);
  });

  it('finds a grounded winding from bar to shaft as well, and no sound one', () => {
    const read = (faults: readonly ArmatureFault[]) => {
      const me = new BenchDriver({ faults }).placesArmature().switches('high').setsRange(3);
      me.takes('ammeter.1').takes('ammeter.2').touches('ammeter.1', 'shaft');
      me.touches('ammeter.2', `bar:${me.barNear(-90)}`);
      return me.readsNeedle();
    };
    expect(read([])).toBe(0);
    expect(read([{ kind: 'groundedBar', bar: 3, ohm: 0.02 }])).toBeGreaterThan(0.1);
  });
});

describe('the lamp at the bench', () => {
  const lampAt = (options: JobOptions, selector: 'low' | 'high' | 'off') => {
    const me = new BenchDriver(options).placesArmature();
    if (selector !== 'off') me.switches(selector);
    me.takes('lamp.1')
      .takes('lamp.2')
      .touches('lamp.1', 'shaft')
      .touches('lamp.2', `bar:${me.barNear(-90)}`);
    return me.watchesLamp();
  };
  const grounded: JobOptions = { faults: [{ kind: 'groundedBar', bar: 9, ohm: 0.5 }] };

  it('is live on LOW only', () => {
    expect(lampAt(grounded, 'low')).toBe(8);
    expect(lampAt(grounded, 'high')).toBe(0);
    expect(lampAt(grounded, 'off')).toBe(0);
  });

  it('stays dark on a sound armature and lights at every reachable bar of a grounded one', () => {
    expect(lampAt({}, 'low')).toBe(0);
    const me = new BenchDriver(grounded)
      .placesArmature()
      .switches('low')
      .provesLamp()
      .touches('lamp.1', 'core');
    for (const angle of [-160, -130, -90, -50, -10, 20]) {
      me.touches('lamp.2', `bar:${me.barNear(angle)}`);
      expect(me.watchesLamp()).toBe(8);
    }
    expect(me.everythingBroken).toEqual([]);
  });

  it('glows less through a leak of tens of kilohms and not at all through more', () => {
    const through = (ohm: number) => lampAt({ faults: [{ kind: 'groundedBar', bar: 9, ohm }] }, 'low');
    expect(through(3000)).toBeLessThan(8);
    expect(through(3000)).toBeGreaterThan(0);
    expect(through(200_000)).toBe(0);
  });

  it('lights tip to tip, and from shaft to core, which are one piece of metal', () => {
    const me = new BenchDriver().placesArmature().switches('low').takes('lamp.1').takes('lamp.2');
    me.touches('lamp.1', 'tip:lamp.2');
    expect(me.watchesLamp()).toBe(8);
    me.liftsTip('lamp.1').waits(3000);
    expect(me.sees.lamp.glow).toBe(0);
    me.touches('lamp.1', 'shaft').touches('lamp.2', 'core');
    expect(me.watchesLamp()).toBe(8);
  });

  it('goes through prove, test, prove again, and starts over with the next spell of LOW', () => {
    const me = new BenchDriver().placesArmature().switches('low');
    const stage = () => me.session.stateAt(me.atMs).lamp;
    expect(stage()).toBe('unproved');
    me.provesLamp();
    expect(stage()).toBe('proved');
    me.touches('lamp.1', 'shaft').touches('lamp.2', `bar:${me.barNear(-90)}`);
    expect(stage()).toBe('used');
    me.liftsTip('lamp.2').provesLamp();
    expect(stage()).toBe('proved');
    me.hangsUp('lamp.1').switches('off').switches('low');
    expect(stage()).toBe('unproved');
  });
});

describe('the strip at the bench', () => {
  const bridged: JobOptions = { faults: [{ kind: 'bridgedBars', bar: 5, ohm: 2e-4, by: 'copper' }] };
  const fullTurn = (options: JobOptions, selector: 'off' | 'high') => {
    const me = new BenchDriver(options).placesArmature().takesStrip();
    if (selector === 'high') me.switches(selector);
    return Array.from({ length: 23 }, () => {
      const { pull } = me.holdsStrip(180).sees.strip;
      me.turnsOneBar();
      return pull;
    });
  };

  it('lies still over a sound armature, and over a bridged one with the bench off', () => {
    expect(fullTurn({}, 'high').every((pull) => pull === 0)).toBe(true);
    expect(fullTurn(bridged, 'off').every((pull) => pull === 0)).toBe(true);
  });

  it('is pulled over some slots of a bridged armature and not over others', () => {
    const pulls = fullTurn(bridged, 'high');
    expect(pulls.filter((pull) => pull >= 2).length).toBeGreaterThan(2);
    expect(pulls.filter((pull) => pull === 0).length).toBeGreaterThan(2);
  });

  it('is pulled next to a jaw by any armature', () => {
    const me = new BenchDriver().placesArmature().switches('high').takesStrip();
    expect(me.holdsStrip(70).sees.strip.pull).toBeGreaterThan(0);
    expect(me.holdsStrip(180).sees.strip.pull).toBe(0);
  });
});

describe('heat', () => {
  it('trips an empty cradle within minutes on HIGH, later on LOW, louder than a loaded one', () => {
    const trip = (at: 'low' | 'high') => {
      const me = new BenchDriver().switches(at);
      const { hum } = me.sees;
      for (let minutes = 0; me.sees.supply === 'on' && minutes < 20; minutes += 0.1) me.waits(6000);
      return { atMin: me.atMs / 60_000, hum };
    };
    const [high, low] = [trip('high'), trip('low')];
    expect(high.atMin).toBeGreaterThan(1);
    expect(high.atMin).toBeLessThan(3);
    expect(low.atMin).toBeGreaterThan(4);
    expect(low.atMin).toBeLessThan(10);
    const loaded = new BenchDriver().placesArmature().switches('high').sees.hum;
    expect(high.hum.level).toBeGreaterThan(loaded.level);
    expect(high.hum.harshness).toBeGreaterThan(loaded.harshness);
    expect(loaded.pitchHz).toBe(100);
  });

  it('never trips a sound armature, however long', () => {
    const me = new BenchDriver()
      .placesArmature()
      .switches('high')
      .setsProbesAt(-90, -75)
      .waits(3 * 3_600_000);
    expect(me.sees.supply).toBe('on');
    expect(me.everythingBroken).toEqual([]);
  });

  it('is armed again only when cool and switched off', () => {
    const me = new BenchDriver({
      faults: [{ kind: 'coilShort', topCoil: 5, bottomCoil: 22, ohm: 1e-3 }],
      startRotationDeg: 60,
    });
    me.placesArmature().switches('high').takesStrip();
    for (let minute = 0; me.sees.supply === 'on' && minute < 40; minute += 1) me.waits(60_000);
    expect(me.sees.supply).toBe('cutOut');
    expect(me.sees.hum.level).toBe(0);
    expect(me.sees.stopped).toBeNull();
    me.switches('off').switches('high');
    expect(me.sees.supply).toBe('cutOut');
    me.waits(10 * 60_000);
    expect(me.sees.supply).toBe('cutOut');
    me.switches('off').switches('high');
    expect(me.sees.supply).toBe('on');
  });

  it('cooks a shorted coil until it smokes, and says so once', () => {
    const me = new BenchDriver({
      part: 'lap-24',
      faults: [{ kind: 'bridgedBars', bar: 0, ohm: 2e-4, by: 'copper' }],
    });
    me.placesArmature().switches('high').takesStrip();
    expect(me.sees.partHeat).toBe('cool');
    me.waits(30 * 60_000);
    expect(me.sees.partHeat).toBe('smoking');
    expect(me.everythingBroken.filter((code) => code === 'overheated').length).toBe(1);
    me.switches('off').waits(3_600_000);
    expect(me.sees.partHeat).toBe('cool');
  });
});

describe('a bench left alone', () => {
  it('is told of once for a minute on with nobody at it, and again after the next visit', () => {
    const me = new BenchDriver().placesArmature().switches('high').waits(59_000);
    expect(me.everythingBroken).toEqual([]);
    me.waits(5 * 60_000);
    expect(me.everythingBroken).toEqual(['leftOn']);
    me.turnsOneBar().waits(61_000);
    expect(me.everythingBroken).toEqual(['leftOn', 'leftOn']);
  });

  it('is just as alone while someone writes or looks', () => {
    const me = new BenchDriver().placesArmature().switches('high').waits(30_000).looksAt('core');
    me.does({ type: 'sheet.write', line: { test: 'look', count: null, remark: 'clean' } }).waits(30_000);
    expect(me.everythingBroken).toEqual(['leftOn']);
  });

  it('is not alone while a probe lies on the bars or a hand holds something', () => {
    const withProbes = new BenchDriver()
      .placesArmature()
      .switches('high')
      .setsProbesAt(-90, -75)
      .waits(600_000);
    expect(withProbes.everythingBroken).toEqual([]);
    const withStrip = new BenchDriver().placesArmature().switches('high').takesStrip().waits(600_000);
    expect(withStrip.everythingBroken).toEqual([]);
  });
});

describe('the log', () => {
  it('numbers every act from 0, refused ones included, with what was seen just before', () => {
    const me = new BenchDriver().placesArmature().placesArmature().switches('high').setsRange(30);
    const { log } = me.session;
    expect(log.map((entry) => entry.n)).toEqual([0, 1, 2, 3]);
    expect(log.map((entry) => entry.outcome.kind)).toEqual(['done', 'refused', 'done', 'done']);
    expect(log.map((entry) => entry.before.supply)).toEqual(['off', 'off', 'off', 'on']);
    expect(log[3]!.before.hum.level).toBeGreaterThan(0);
  });

  it('keeps what came about by itself with the next act, as checkpoints', () => {
    const me = new BenchDriver().placesArmature().switches('high').waits(90_000).switches('off');
    const [, , off] = me.session.log;
    expect(off!.since).toEqual([
      {
        atMs: 60_800,
        what: { type: 'bench.idle' },
        breaches: [expect.objectContaining({ interlock: 'leftOn' })],
      },
    ]);
    expect(me.session.log[1]).not.toHaveProperty('since');
  });

  it('only goes forward', () => {
    const me = new BenchDriver().placesArmature();
    expect(() => me.session.act({ type: 'armature.lift' }, me.atMs - 1)).toThrow(/goes forward/);
    expect(() => me.session.observe(Number.NaN)).toThrow(RangeError);
  });
});
