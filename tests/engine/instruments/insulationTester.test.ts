import { describe, expect, it } from 'vitest';
import {
  correctedTo40,
  DEFAULT_TEST_VOLT,
  displayedOhm,
  LEAST_OHM,
  leftVolt,
  type Specimen,
  seeMegohms,
  shortCurrent,
  TEST_VOLTS,
  terminalVolt,
  testerAtRest,
  WINDING_CAPACITANCE,
} from '../../../src/engine/instruments/insulationTester.ts';

const part = (ohm: number | null): Specimen => ({ ohm, farad: WINDING_CAPACITANCE });

describe('the source', () => {
  it.each(TEST_VOLTS)('keeps to the limits of such testers, %i V (IEC 61557-2, from memory)', (volt) => {
    // 1 mA at the marked voltage and 1000 ohm per volt; not above 15 mA into a short.
    expect(terminalVolt(volt, 1000 * volt)).toBeCloseTo(volt, 9);
    expect(volt / (1000 * volt)).toBeCloseTo(1e-3, 12);
    expect(shortCurrent(volt)).toBeLessThanOrEqual(15e-3);
    expect(terminalVolt(volt, null)).toBeLessThanOrEqual(1.25 * volt);
  });

  it('starts at 250 V and wants 1 Mohm (A07: TM 9-4940-549-14&P p. 7-10, field coil to housing)', () => {
    expect(DEFAULT_TEST_VOLT).toBe(250);
    expect(LEAST_OHM).toBe(1e6);
  });
});

describe('the reading', () => {
  it('climbs from nothing, never back, and settles at the leakage', () => {
    for (const ohm of [20e3, 1e6, 5e6, 200e6]) {
      let last = -1;
      for (let ms = 0; ms <= 8000; ms += 20) {
        const now = displayedOhm(part(ohm), 250, ms);
        expect(now).toBeGreaterThanOrEqual(last);
        last = now;
      }
      expect(displayedOhm(part(ohm), 250, 0)).toBeCloseTo(0, 6);
      expect(last / ohm).toBeCloseTo(1, 3);
    }
  });

  it('goes over range on a part that leaks nothing', () => {
    expect(seeMegohms(displayedOhm(part(null), 500, 10_000))).toEqual({ megohms: 999, over: true });
    expect(testerAtRest(part(null), 500, 10_000)).toBe(true);
  });

  it('takes longer on a part of much capacitance', () => {
    const big: Specimen = { ohm: 50e6, farad: 20e-6 };
    expect(displayedOhm(big, 250, 500)).toBeLessThan(0.8 * displayedOhm(part(50e6), 250, 500));
  });

  it('is read in three figures', () => {
    expect(seeMegohms(98_400)).toEqual({ megohms: 0.1, over: false });
    expect(seeMegohms(1_234_000)).toEqual({ megohms: 1.23, over: false });
    expect(seeMegohms(45_670_000)).toEqual({ megohms: 45.7, over: false });
    expect(seeMegohms(234_500_000)).toEqual({ megohms: 235, over: false });
  });

  it('rests when the figures stand', () => {
    expect(testerAtRest(part(5e6), 250, 200)).toBe(false);
    expect(testerAtRest(part(5e6), 250, 6000)).toBe(true);
  });
});

describe('temperature and charge', () => {
  it('carries 200 Mohm at 20 C to 50 Mohm at 40 C (A18, A19: article on IEEE 43-2013)', () => {
    expect(correctedTo40(200e6, 20)).toBeCloseTo(50e6, 3);
    expect(correctedTo40(7e6, 40)).toBe(7e6);
  });

  it('leaves the part charged: it empties through its own leakage (RC) or not at all', () => {
    expect(leftVolt(part(200e6), 275, 1000)).toBeCloseTo(275 * Math.exp(-1), 6);
    expect(leftVolt(part(null), 275, 60_000)).toBe(275);
  });
});
