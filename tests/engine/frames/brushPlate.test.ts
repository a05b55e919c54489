import { describe, expect, it } from 'vitest';
import { benchLamp, glow, steadyFilament } from '../../../src/engine/instruments/lamp.ts';
import {
  type BrushPlateFault,
  brushPlateResistance,
  FOUR_HOLDERS,
  PLATE_HOLDERS,
  type PlateHolder,
} from '../../../src/engine/parts/brushPlate.ts';

/** Lamp from plate to each holder in order: insulated 1 and 2, earthed 1 and 2. */
function lamps(faults: readonly BrushPlateFault[], pressed: PlateHolder | null = null): boolean[] {
  return PLATE_HOLDERS.map((holder) => {
    const ohm = brushPlateResistance(FOUR_HOLDERS, faults, 'plate:metal', holder, { pressed, peakV: 325 });
    const path = ohm === null ? null : { re: ohm, im: 0 };
    return glow(steadyFilament(benchLamp(230), { volt: 230, path })) > 0;
  });
}
const SOUND = [false, false, true, true];

describe('a brush plate', () => {
  it('is sound when dark to the insulated and lit to the earthed holders (references G09: TM 5-4220-209-12P)', () => {
    expect(lamps([])).toEqual(SOUND);
  });

  it('with packed dirt of some kilohms lights to that holder; damp dirt of 200 kohm does not', () => {
    expect(lamps([{ kind: 'dirt', holder: 'plate:insulated2', ohm: 3e3 }])).toEqual([
      false,
      true,
      true,
      true,
    ]);
    expect(lamps([{ kind: 'dirt', holder: 'plate:insulated2', ohm: 200e3 }])).toEqual(SOUND);
  });

  it('with a loose rivet makes while pressed: nobody finds it who does not press', () => {
    const loose: BrushPlateFault = {
      kind: 'looseRivet',
      holder: 'plate:insulated1',
      makes: 'pressed',
      ohm: 0.2,
    };
    expect(lamps([loose])).toEqual(SOUND);
    expect(lamps([loose], 'plate:insulated1')).toEqual([true, false, true, true]);
    expect(lamps([loose], 'plate:insulated2')).toEqual(SOUND);
  });

  it('with a loose rivet at an earthed holder breaks when pressed, or when let go', () => {
    const loose = (makes: 'pressed' | 'released'): BrushPlateFault => ({
      kind: 'looseRivet',
      holder: 'plate:earthed1',
      makes,
      ohm: 0.2,
    });
    expect(lamps([loose('released')])).toEqual(SOUND);
    expect(lamps([loose('released')], 'plate:earthed1')).toEqual([false, false, false, true]);
    expect(lamps([loose('pressed')])).toEqual([false, false, false, true]);
    expect(lamps([loose('pressed')], 'plate:earthed1')).toEqual(SOUND);
  });

  it('with an insulator down lights; one that still holds below a voltage lights only above it', () => {
    const down = (breakdownV: number | null): BrushPlateFault => ({
      kind: 'insulatorDown',
      holder: 'plate:insulated1',
      ohm: 1,
      breakdownV,
    });
    expect(lamps([down(null)])[0]).toBe(true);
    expect(lamps([down(200)])[0]).toBe(true);
    expect(lamps([down(400)])).toEqual(SOUND);
  });

  it('with a broken pigtail is dark to that brush, and an insulated one hides even a ground behind it', () => {
    expect(lamps([{ kind: 'brokenPigtail', holder: 'plate:earthed2' }])).toEqual([false, false, true, false]);
    const both: BrushPlateFault[] = [
      { kind: 'brokenPigtail', holder: 'plate:insulated1' },
      { kind: 'insulatorDown', holder: 'plate:insulated1', ohm: 1, breakdownV: null },
    ];
    expect(lamps(both)).toEqual(SOUND);
  });
});
