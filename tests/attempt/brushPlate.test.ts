import { describe, expect, it } from 'vitest';
import type { BrushPlateFault } from '../../src/engine/parts/brushPlate.ts';
import { BenchDriver } from '../support/benchDriver.ts';

/** Sound armature in the cradle, brush plate in front, LOW, lamp proved. Common practice, no source. */
function atThePlate(plateFaults: readonly BrushPlateFault[] = []): BenchDriver {
  const me = new BenchDriver({ parts: ['brushPlate'], plateFaults });
  me.placesArmature().takesUp('brushPlate').switches('low').provesLamp();
  expect(me.everythingBroken).toEqual([]);
  return me;
}

const insulated = (me: BenchDriver) =>
  (['plate:insulated1', 'plate:insulated2'] as const).map((holder) => me.lampBetween('plate:metal', holder));
const earthed = (me: BenchDriver) =>
  (['plate:earthed1', 'plate:earthed2'] as const).map((holder) => me.lampBetween('plate:metal', holder));

describe('a brush plate under the lamp', () => {
  it('is dark at its insulated holders and lights at its earthed ones when sound, by the book', () => {
    const me = atThePlate();
    expect(insulated(me)).toEqual([0, 0]);
    expect(earthed(me)).toEqual([8, 8]);
    me.liftsTip('lamp.1').liftsTip('lamp.2').provesLamp().hangsUpBoth('lamp');
    me.switches('off').putsBack('brushPlate').liftsArmature().handsIn();
    expect(me.everythingBroken).toEqual([]);
  });

  it('lights at a holder whose insulator has broken down', () => {
    const down: BrushPlateFault = {
      kind: 'insulatorDown',
      holder: 'plate:insulated2',
      ohm: 5,
      breakdownV: null,
    };
    expect(insulated(atThePlate([down]))).toEqual([0, 8]);
  });

  it('lights through packed dirt of little resistance, dimly through more, not at all through much', () => {
    const glow = (ohm: number) =>
      insulated(atThePlate([{ kind: 'dirt', holder: 'plate:insulated1', ohm }]))[0]!;
    expect(glow(50)).toBe(8);
    expect(glow(3000)).toBeGreaterThan(0);
    expect(glow(3000)).toBeLessThan(8);
    expect(glow(300e3)).toBe(0);
  });

  it('is dark at a brush whose pigtail is broken', () => {
    expect(earthed(atThePlate([{ kind: 'brokenPigtail', holder: 'plate:earthed1' }]))).toEqual([0, 8]);
  });

  it('makes and breaks at a loose rivet as one leans on the holder', () => {
    const makes: BrushPlateFault = {
      kind: 'looseRivet',
      holder: 'plate:insulated1',
      makes: 'pressed',
      ohm: 0.5,
    };
    const me = atThePlate([makes]);
    expect(me.lampBetween('plate:metal', 'plate:insulated1')).toBe(0);
    expect(me.leansOn('lamp.2').watchesLamp()).toBe(8);
    expect(me.sees.leads['lamp.2'].leaning).toBe(true);
    expect(me.easesOff('lamp.2').waits(3000).watchesLamp()).toBe(0);
    const breaks: BrushPlateFault = { ...makes, holder: 'plate:earthed2', makes: 'released' };
    const you = atThePlate([breaks]);
    expect(you.lampBetween('plate:metal', 'plate:earthed2')).toBe(8);
    expect(you.leansOn('lamp.2').waits(3000).watchesLamp()).toBe(0);
  });

  it('is leaned on only where a held tip touches, and no longer when that tip moves', () => {
    const me = atThePlate();
    expect(me.leansOn('lamp.1').refusal).toMatch(/not on anything/);
    me.touches('lamp.1', 'plate:insulated1').leansOn('lamp.1').touches('lamp.1', 'plate:insulated2');
    expect(me.sees.leads['lamp.1'].leaning).toBe(false);
    expect(me.easesOff('lamp.1').refusal).toMatch(/Nobody leans/);
  });

  it('must not be put back by hand with a live probe on it', () => {
    const me = atThePlate().touches('lamp.1', 'plate:metal').hangsUp('lamp.2').putsBack('brushPlate');
    expect(me.broke).toContain('liveMetal');
    expect(me.sees.stopped).not.toBeNull();
  });
});
