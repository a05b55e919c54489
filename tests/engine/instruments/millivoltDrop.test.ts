import { describe, expect, it } from 'vitest';
import lap24 from '../../../scenarios/parts/lap-24.json' with { type: 'json' };
import wave23 from '../../../scenarios/parts/wave-23.json' with { type: 'json' };
import { armatureResistance, SOUND_INSULATION_OHM } from '../../../src/engine/instruments/armatureDc.ts';
import {
  barDrops,
  neighbourDrops,
  poleFeed,
  seeMillivolts,
} from '../../../src/engine/instruments/millivoltDrop.ts';
import type { ArmatureDesign } from '../../../src/engine/parts/armature.ts';
import type { ArmatureFault } from '../../../src/engine/parts/armatureFault.ts';
import { coilOhm, JOINT_OHM } from '../../../src/engine/parts/winding.ts';

const lap = lap24 as ArmatureDesign;
const wave = wave23 as ArmatureDesign;
/** The wave winding of the references' B rows: 25 coils, 4 poles, pitch 13. */
const wave25: ArmatureDesign = { ...wave, bars: 25, slots: 25, commutatorPitch: 13 };

/** Neighbour drops in units of one coil's drop. */
function inCoils(a: ArmatureDesign, faults: readonly ArmatureFault[]): number[] {
  const coil = coilOhm(a) + 2 * JOINT_OHM;
  return neighbourDrops(a, faults, 1).map((volt) => volt! / coil);
}

describe('drop from bar to bar with the feed moved along (exact rows B01-B09 of the references)', () => {
  it('B01, B02: lap of 24, sound 0.958333; open coil 23 at its pair, 1 elsewhere', () => {
    for (const r of inCoils(lap, [])) expect(r).toBeCloseTo(0.958333, 5);
    const open = inCoils(lap, [{ kind: 'openCoil', coil: 5 }]);
    open.forEach((r, bar) => {
      expect(r).toBeCloseTo(bar === 5 ? 23 : 1, 5);
    });
  });

  it('B06, B07: wave of 25, sound 1.84; open coil 23 at two pairs, 2 elsewhere', () => {
    for (const r of inCoils(wave25, [])) expect(r).toBeCloseTo(1.84, 5);
    const open = inCoils(wave25, [{ kind: 'openCoil', coil: 0 }]);
    expect(open.flatMap((r, bar) => (r > 10 ? [bar] : []))).toEqual([0, 12]);
    expect(open[0]).toBeCloseTo(23, 5);
    expect(open[5]).toBeCloseTo(2, 5);
  });

  it('B09: wave with bars 0-1 bridged, 1.456522 twice and 1.826087 elsewhere', () => {
    const r = inCoils(wave25, [{ kind: 'bridgedBars', bar: 0, ohm: 1e-12, by: 'copper' }]);
    expect(r[12]).toBeCloseTo(1.456522, 5);
    expect(r[13]).toBeCloseTo(1.456522, 5);
    expect(r[4]).toBeCloseTo(1.826087, 5);
    expect(r[0]).toBeCloseTo(0, 4);
  });

  it('finds a few turns shorted in one coil, where the growler hardly does', () => {
    const fault: ArmatureFault = { kind: 'turnShort', coil: 7, turns: 1, ohm: 1e-6 };
    const r = inCoils(lap, [fault]);
    expect(Math.min(...r)).toBe(r[7]);
    expect(r[7]! / r[3]!).toBeLessThan(0.9);
  });

  it('shows a bad riser joint at the two pairs that share the bar', () => {
    const r = inCoils(lap, [{ kind: 'riserJoint', bar: 9, form: 'bar', ohm: 20e-3 }]);
    const high = r.flatMap((x, bar) => (x > 1.2 ? [bar] : []));
    expect(high).toEqual([8, 9]);
  });

  it('copper warms: the drop at 75 C is 1.21615 times that at 20 C (M07), joints included', () => {
    const cold = neighbourDrops(lap, [], 5)[0]!;
    const warm = neighbourDrops(lap, [], 5, { peakV: 0, tempC: 75 })[0]!;
    expect(warm / cold).toBeCloseTo(1.21615, 5);
  });
});

describe('drop under a feed that stays', () => {
  it('B12: the whole feed stands across an open coil and its half shows nothing else', () => {
    const drops = barDrops(lap, [{ kind: 'openCoil', coil: 3 }], { from: 0, to: 12, currentA: 5 });
    const other = Math.abs(drops[15]!);
    expect(Math.abs(drops[3]!) / other).toBeCloseTo(12, 4);
    expect(Math.abs(drops[1]!)).toBeLessThan(1e-4 * other);
  });

  it('is even over each path of a sound two-pole lap winding', () => {
    const drops = barDrops(lap, [], poleFeed(lap, 0)).map((v) => Math.abs(v!));
    for (const v of drops) expect(v / drops[0]!).toBeCloseTo(1, 6);
  });

  it('leaves out a bar cut off from the winding only as far as its insulation', () => {
    const drops = barDrops(lap, [{ kind: 'riserJoint', bar: 4, form: 'bar', ohm: 'open' }], poleFeed(lap, 0));
    for (const v of drops) expect(v === null || Number.isFinite(v)).toBe(true);
  });
});

describe('insulation of an armature', () => {
  it('is that of a sound winding, or of its weak spot; breaks down above its voltage', () => {
    const weak: ArmatureFault = { kind: 'weakInsulation', ohm: 300e3, breakdownV: 400 };
    const at = (faults: readonly ArmatureFault[], peakV: number) =>
      armatureResistance(wave, faults, 4, 'core', { peakV, tempC: 20 })!;
    expect(at([], 275) / SOUND_INSULATION_OHM).toBeCloseTo(1, 6);
    expect(at([weak], 275) / 300e3).toBeCloseTo(1, 2);
    expect(at([weak], 550)).toBeLessThan(300);
  });
});

describe('the millivoltmeter', () => {
  it('shows the size of the drop to a hundredth of a millivolt, and nothing where nothing is joined', () => {
    expect(seeMillivolts(-0.0018632)).toEqual({ millivolts: 1.86, over: false });
    expect(seeMillivolts(null)).toEqual({ millivolts: 0, over: false });
    expect(seeMillivolts(1.2)).toEqual({ millivolts: 200, over: true });
  });
});
