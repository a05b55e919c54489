import { describe, expect, it } from 'vitest';
import { barZeroDeg, coilPlaces } from '../../src/engine/parts/winding.ts';
import { checkWinding } from '../../src/engine/parts/windingRules.ts';
import { ARMATURES, EQUALISED_LAP_28, FORCED_WAVE_35, LAP_24, LAP_28, WAVE_23 } from './support/parts.ts';

/** Wave armature with u coils in a slot; dimensions scaled so that only the winding can be at fault. */
function wave(bars: number, poles: number, pitch: number) {
  const slots = bars;
  const thin = { slotMouth: 0.0008, slotWidth: 0.0012, conductorArea: 2e-6 };
  return {
    ...WAVE_23,
    ...thin,
    bars,
    slots,
    poles,
    commutatorPitch: pitch,
    spanSlots: Math.round(slots / poles),
  };
}

describe('winding rules', () => {
  it('accepts the armatures of the bench, an equalised lap and a forced wave', () => {
    for (const a of [...ARMATURES, EQUALISED_LAP_28, FORCED_WAVE_35]) expect(checkWinding(a)).toEqual([]);
  });

  // Source: standard winding theory, W02 and W08 (36 slots, 6 poles, one dummy coil: 35 bars, pitch 12).
  it('knows the wave pitch (bars ± 1)/pole pairs', () => {
    expect(checkWinding(wave(23, 4, 11))).toEqual([]);
    expect(checkWinding(wave(23, 4, 12))).toEqual([]);
    expect(checkWinding(wave(35, 6, 12))).toEqual([]);
    expect(checkWinding(wave(37, 6, 12))).toEqual([]);
    expect(checkWinding(wave(33, 8, 8))).toEqual([]);
    expect(checkWinding(wave(23, 4, 10))[0]?.path).toBe('commutatorPitch');
  });

  // W10, W11, W12: no simplex wave on 4 poles with even bars, on 6 with a multiple of 3, on 8 with even bars.
  it.each([
    [24, 4],
    [28, 4],
    [36, 6],
    [45, 6],
    [34, 8],
  ])('refuses a simplex wave of %i bars on %i poles with the reason', (bars, poles) => {
    const [first] = checkWinding(wave(bars, poles, Math.round(bars / (poles / 2))));
    expect(first?.path).toBe('bars');
    expect(first?.sentence).toContain(`${bars} bars give`);
  });

  it('refuses a lap pitch other than ±1 (W01)', () => {
    expect(checkWinding({ ...LAP_24, commutatorPitch: -1 })).toEqual([]);
    expect(checkWinding({ ...LAP_24, commutatorPitch: 2 })[0]?.path).toBe('commutatorPitch');
  });

  it('refuses bars that do not go with the slots (W19: every place holds a side)', () => {
    const [first] = checkWinding({ ...LAP_24, bars: 23 });
    expect(first).toEqual({
      path: 'bars',
      sentence: 'Expected 24 bars (12 slots with 2 coil sides a layer), but 23 came.',
    });
    expect(checkWinding({ ...FORCED_WAVE_35, dummyPlace: 36 })[0]?.path).toBe('dummyPlace');
    expect(checkWinding({ ...LAP_28, dummyPlace: 3 }).map((o) => o.path)).toContain('dummyPlace');
  });

  // W17, W18 (Hawkins, vol. 2: equaliser rings).
  it('allows equalisers only on a lap winding with bars divisible by the pole pairs', () => {
    expect(checkWinding({ ...WAVE_23, equalised: true })[0]?.path).toBe('equalised');
    expect(checkWinding({ ...LAP_24, equalised: true })[0]?.path).toBe('equalised');
  });

  it('allows chorded spans about a pole pitch and no others (W15)', () => {
    expect(checkWinding({ ...WAVE_23, spanSlots: 5 })).toEqual([]);
    expect(checkWinding({ ...WAVE_23, spanSlots: 2 })[0]?.path).toBe('spanSlots');
    expect(checkWinding({ ...WAVE_23, spanSlots: 9 })[0]?.path).toBe('spanSlots');
  });

  it('refuses impossible iron: no tooth, no yoke, copper that does not fit, numbers that are none', () => {
    expect(checkWinding({ ...WAVE_23, slotWidth: 0.0062 }).map((o) => o.path)).toContain('slotWidth');
    expect(checkWinding({ ...WAVE_23, layerHeight: 0.014 }).map((o) => o.path)).toContain('layerHeight');
    expect(checkWinding({ ...LAP_24, turns: 20 }).map((o) => o.path)).toContain('conductorArea');
    expect(checkWinding({ ...LAP_24, outerRadius: Number.NaN })[0]?.path).toBe('outerRadius');
    expect(checkWinding({ ...LAP_24, slots: 12.5 })[0]?.path).toBe('slots');
  });
});

describe('coil places', () => {
  // W14: gcd(bars, pitch) closed circuits; one for every simplex winding.
  it('closes into one ring through every bar', () => {
    for (const a of [...ARMATURES, FORCED_WAVE_35]) {
      const places = coilPlaces(a);
      const seen = new Set<number>();
      for (let bar = 0; !seen.has(bar); bar = places[bar]!.endBar) seen.add(bar);
      expect(seen.size).toBe(a.bars);
    }
  });

  it('fills every place of both layers once, but for the dummy coil', () => {
    for (const a of [...ARMATURES, FORCED_WAVE_35]) {
      const top = new Map<number, number>();
      const bottom = new Map<number, number>();
      for (const p of coilPlaces(a)) {
        top.set(p.topSlot, (top.get(p.topSlot) ?? 0) + 1);
        bottom.set(p.bottomSlot, (bottom.get(p.bottomSlot) ?? 0) + 1);
      }
      const missing = a.slots * a.coilsPerSlot - a.bars;
      for (const layer of [top, bottom]) {
        const short = Array.from({ length: a.slots }, (_, s) => a.coilsPerSlot - (layer.get(s) ?? 0));
        expect(short.reduce((x, y) => x + y, 0)).toBe(missing);
        expect(Math.min(...short)).toBe(0);
      }
    }
  });

  it('stands the bars symmetrically about the coil axis', () => {
    const nearBottom = (a: typeof WAVE_23) => {
      const angles = Array.from({ length: a.bars }, (_, b) => barZeroDeg(a) + (360 * b) / a.bars);
      return angles.map((x) => x - 360 * Math.round(x / 360)).sort((x, y) => Math.abs(x) - Math.abs(y));
    };
    const [left, right] = nearBottom(WAVE_23);
    expect(Math.abs(left!)).toBeCloseTo(180 / 23, 9);
    expect(left! + right!).toBeCloseTo(0, 9);
    for (const angle of nearBottom(LAP_24)) expect(angle / 15).toBeCloseTo(Math.round(angle / 15), 9);
    expect(nearBottom(LAP_28)[0]).toBeCloseTo(0, 9);
  });
});
