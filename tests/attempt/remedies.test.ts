import { describe, expect, it } from 'vitest';
import { printedA } from '../../src/bench/scale.ts';
import type { ArmatureFault } from '../../src/engine/parts/armatureFault.ts';
import { BenchDriver, type JobOptions } from '../support/benchDriver.ts';

/** Largest pull of the strip at the top over one whole turn. */
function pullOverATurn(me: BenchDriver): number {
  me.placesArmature().switches('high').takesStrip();
  const pulls = Array.from({ length: me.geometry.bars }, () => {
    const { pull } = me.holdsStrip(180).sees.strip;
    me.turnsOneBar();
    return pull;
  });
  me.hangsStrip().switches('off').liftsArmature();
  return Math.max(...pulls);
}

const bridge: ArmatureFault = { kind: 'bridgedBars', bar: 5, ohm: 2e-4, by: 'carbon' };

describe('a remedy', () => {
  it('cures what it can, and the retest shows it, by the book', () => {
    const me = new BenchDriver({ faults: [bridge] });
    expect(pullOverATurn(me)).toBeGreaterThan(1);
    me.cures('brushBetweenBars');
    expect(me.sees.minutesSpent).toBe(6);
    expect(pullOverATurn(me)).toBe(0);
    expect(me.everythingBroken).toEqual([]);
  });

  it('leaves what it cannot cure, however often it is tried', () => {
    const me = new BenchDriver({ faults: [{ ...bridge, by: 'copper' }] });
    me.cures('brushBetweenBars').cures('brushBetweenBars');
    expect(pullOverATurn(me)).toBeGreaterThan(1);
    me.cures('undercut');
    expect(pullOverATurn(me)).toBe(0);
    expect(me.sees.minutesSpent).toBe(32);
  });

  it('makes one riser good and no other', () => {
    const faults: ArmatureFault[] = [5, 9].map((bar) => ({
      kind: 'riserJoint',
      bar,
      form: 'bar',
      ohm: 'open',
    }));
    const me = new BenchDriver({ faults }).cures('resolderRiser', 5).placesArmature().switches('high');
    me.setsRange(15).setsProbesAt(-45, -45 + 360 / 23);
    const fallen: number[] = [];
    for (let turn = 0; turn < 23; turn += 1) {
      me.waits(4000);
      const under = Number(me.sees.leads['ammeter.1'].touches!.slice('bar:'.length));
      if (printedA(me.sees.needle, 15) < 1) fallen.push(under);
      me.turnsOneBar();
    }
    expect(fallen.sort((a, b) => a - b)).toEqual([8, 9]);
    me.hangsUpBoth('ammeter').switches('off').liftsArmature();
    expect(me.looksAt('riser:5').sees.look?.sees).toContain('brightSolder');
    expect(me.sees.look?.sees).not.toContain('solderThrown');
  });

  it('on the brush plate cleans or tightens, and the lamp goes dark', () => {
    const job: JobOptions = {
      parts: ['brushPlate'],
      plateFaults: [
        { kind: 'dirt', holder: 'plate:insulated1', ohm: 40 },
        { kind: 'looseRivet', holder: 'plate:insulated2', makes: 'released', ohm: 0.2 },
      ],
    };
    const me = new BenchDriver(job).placesArmature().takesUp('brushPlate');
    const lamp = () => {
      me.switches('low').provesLamp();
      const glows = (['plate:insulated1', 'plate:insulated2'] as const).map((holder) =>
        me.lampBetween('plate:metal', holder),
      );
      me.liftsTip('lamp.1').liftsTip('lamp.2').provesLamp().hangsUpBoth('lamp').switches('off');
      return glows;
    };
    expect(lamp()).toEqual([8, 8]);
    me.cures('cleanPlateInsulation');
    expect(lamp()).toEqual([0, 8]);
    me.cures('tightenRivets');
    expect(lamp()).toEqual([0, 0]);
    expect(me.everythingBroken).toEqual([]);
  });

  it('takes both hands and a part with no lead on it', () => {
    const me = new BenchDriver().takesStrip();
    expect(me.cures('undercut').refusal).toMatch(/both hands/);
    me.hangsStrip().placesArmature().setsProbesAt(-90, -60);
    expect(me.cures('undercut').refusal).toMatch(/every lead off/);
    expect(me.cures('tightenRivets').refusal).toMatch(/nothing of that kind/);
    expect(me.cures('resolderRiser').refusal).toMatch(/which riser/);
    expect(me.cures('resolderRiser', 23).refusal).toMatch(/no such bar/);
    expect(me.cures('undercut', 3).refusal).toMatch(/resoldered only/);
  });

  it('lets what was warm cool for as long as it takes', () => {
    const me = new BenchDriver()
      .placesArmature()
      .switches('high')
      .takesStrip()
      .waits(20 * 60_000);
    expect(me.sees.growlerHeat).not.toBe('cool');
    me.hangsStrip().switches('off').liftsArmature().cures('skimAndPolish');
    expect(me.sees.growlerHeat).toBe('cool');
  });

  it('below the card’s limit makes scrap of the part', () => {
    const near = { wear: { commutatorDiameterMm: 36.3 }, limits: { commutatorDiameterMm: 36 } };
    const me = new BenchDriver(near).cures('skimAndPolish');
    expect(me.gauges('diameter')).toBe(36.1);
    expect(me.sees.scrapped).toEqual([]);
    me.cures('skimAndPolish');
    expect(me.sees.scrapped).toEqual(['armature']);
    expect(me.gauges('diameter')).toBeLessThan(36);
  });
});

describe('gauges', () => {
  it('read what decides a remedy, in the steps an eye tells apart', () => {
    const me = new BenchDriver({
      parts: ['armature', 'fieldFrame', 'brushPlate'],
      wear: { runOutMm: 0.083, undercutMm: 0.13, brushLengthsMm: [7.4, 13.9, 6.6, 12.1] },
    });
    expect(me.gauges('diameter')).toBe(38);
    expect(me.gauges('runOut')).toBe(0.08);
    expect(me.gauges('undercut')).toBe(0.15);
    me.takesUp('fieldFrame');
    expect([me.gauges('brushLength', 0), me.gauges('brushLength', 1)]).toEqual([7.5, 14]);
    expect(me.gauges('brushLength', 2)).toBeNull();
    expect(me.refusal).toMatch(/Take the brush plate up/);
    me.putsBack('fieldFrame').takesUp('brushPlate');
    expect([me.gauges('brushLength', 2), me.gauges('brushLength', 3)]).toEqual([6.5, 12]);
    expect(me.everythingBroken).toEqual([]);
  });

  it('lie down again with the next act, and want the armature out of the cradle', () => {
    const me = new BenchDriver();
    me.gauges('runOut');
    expect(me.sees.gauge).not.toBeNull();
    me.does({
      type: 'sheet.write',
      line: { test: 'gauges', count: null, millimetres: 0.02, gauge: 'runOut' },
    });
    expect(me.sees.gauge).not.toBeNull();
    me.placesArmature();
    expect(me.sees.gauge).toBeNull();
    me.gauges('diameter');
    expect(me.refusal).toMatch(/take it out first/);
  });

  it('show a worn surface true again after skimming, and the depth that went with it', () => {
    const me = new BenchDriver({ wear: { runOutMm: 0.1, undercutMm: 0.3 } }).cures('skimAndPolish');
    expect(me.gauges('runOut')).toBe(0.01);
    expect(me.gauges('undercut')).toBe(0.1);
    me.cures('undercut');
    expect(me.gauges('undercut')).toBe(0.65);
  });
});

describe('preparation', () => {
  it('is on the record in the order it was seen to, each once', () => {
    const me = new BenchDriver().does({ type: 'prepare.check', item: 'ringsOff' });
    me.does({ type: 'prepare.check', item: 'testLabel' }).does({ type: 'prepare.check', item: 'ringsOff' });
    expect(me.refusal).toMatch(/already/);
    expect(me.sees.prepared).toEqual(['ringsOff', 'testLabel']);
  });
});
