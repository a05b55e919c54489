import { describe, expect, it } from 'vitest';
import { benchLamp } from '../../../src/engine/instruments/lamp.ts';
import { bodyEffect, bodyOhm, touchCurrent } from '../../../src/engine/instruments/touch.ts';

describe('the body', () => {
  it('has the total impedance of IEC 479-1:1994 table 1 (S05, S06, through a stored note)', () => {
    expect([5, 50, 95].map((p) => bodyOhm(220, p as 5))).toEqual([1000, 1350, 2125]);
    expect([5, 50, 95].map((p) => bodyOhm(125, p as 5))).toEqual([1125, 1625, 2875]);
    expect([5, 50, 95].map((p) => bodyOhm(50, p as 5))).toEqual([1450, 2625, 4375]);
    expect([5, 50, 95].map((p) => bodyOhm(25, p as 5))).toEqual([1750, 3250, 6100]);
  });

  it('passes 220 / 163 / 104 mA straight at 220 V (S09)', () => {
    const milliamps = [5, 50, 95].map((p) => (220 / bodyOhm(220, p as 5)) * 1000);
    expect(milliamps.map(Math.round)).toEqual([220, 163, 104]);
  });

  it('is close to the later edition at 225 V (S07, IEC TS 60479-1:2005 from memory), within 30 %', () => {
    for (const [percentile, later] of [
      [5, 775],
      [50, 1225],
      [95, 1900],
    ] as const) {
      expect(Math.abs(bodyOhm(225, percentile) / later - 1)).toBeLessThan(0.3);
    }
  });
});

describe('a touch on live lamp metal', () => {
  const touch = (mains: 230 | 120, reference: 'floating' | 'earthed', way: 'toEarth' | 'acrossProbes') =>
    touchCurrent({ lamp: benchLamp(mains), volt: mains, hz: mains === 230 ? 50 : 60, reference, way });

  it('passes no more than the lamp draws at rated voltage (S24: 65 mA at 230 V, 125 mA at 120 V), yet far above let-go', () => {
    for (const mains of [230, 120] as const) {
      const { currentA } = touch(mains, 'earthed', 'toEarth');
      expect(currentA).toBeLessThan(mains === 230 ? 0.0653 : 0.1251);
      expect(currentA).toBeGreaterThan(0.03);
    }
  });

  it('is in balance: body and filament share the source', () => {
    const { currentA, touchVolt, bodyOhm: body } = touch(230, 'earthed', 'toEarth');
    expect(touchVolt).toBeCloseTo(currentA * body, 6);
    expect(body).toBeCloseTo(bodyOhm(touchVolt), 3);
  });

  it('is hardly felt while the winding floats, and as bad as ever from probe to probe', () => {
    expect(touch(230, 'floating', 'toEarth').effect).toBe('notFelt');
    expect(touch(230, 'floating', 'acrossProbes').effect).toBe('mayKill');
    expect(touch(230, 'floating', 'acrossProbes').currentA).toBeCloseTo(
      touch(230, 'earthed', 'toEarth').currentA,
      6,
    );
  });

  it('is named by the limits of S01 (0.5 mA, IEC 60479-1), S02 and S03 (10 and 40 mA, from memory)', () => {
    expect([0.4e-3, 0.6e-3, 9e-3, 11e-3, 39e-3, 41e-3].map(bodyEffect)).toEqual([
      'notFelt',
      'felt',
      'felt',
      'cannotLetGo',
      'cannotLetGo',
      'mayKill',
    ]);
  });
});
