import { describe, expect, it } from 'vitest';
import { BenchDriver, type JobOptions } from '../support/benchDriver.ts';

const CARD = { tests: ['look', 'ground', 'megohm'] } as const;

/** Tester clipped from shaft to a bar of an armature on the mat, by someone who has used the lamp before. */
function clipped(job: JobOptions = {}): BenchDriver {
  const me = new BenchDriver({ ...CARD, ...job }).placesArmature().switches('low').provesLamp();
  me.lampBetween('shaft', `bar:${me.barNear(-90)}`);
  me.liftsTip('lamp.1').liftsTip('lamp.2').provesLamp().hangsUpBoth('lamp').switches('off').liftsArmature();
  return me.clipsOn('tester', 'shaft', 'bar:0');
}

describe('the insulation tester', () => {
  it('is not on the rail where the card does not ask for it', () => {
    const me = new BenchDriver();
    expect(me.sees.tester.at).toBe('absent');
    expect(me.sees.leads['tester.1'].at).toBe('absent');
    expect(me.takes('tester.1').refusal).toMatch(/does not ask for the insulation tester/);
    expect(me.presses(true).refusal).toMatch(/not on the rail/);
  });

  // 200 Mohm is the invented part's own figure (engine); 1 Mohm the least acceptable, references A07.
  it('reads a sound armature in hundreds of megohms, by the book', () => {
    const me = clipped();
    const shown = me.testsInsulation();
    expect(shown.megohms).toBeGreaterThan(100);
    expect(shown.megohms).toBeLessThan(300);
    expect(shown.charged).toBe(true);
    me.discharges().hangsUpBoth('tester').handsIn();
    expect(me.refusal).toBeNull();
    expect(me.everythingBroken).toEqual([]);
  });

  it('finds the leakage that leaves a lamp dark', () => {
    const leaky: JobOptions = { faults: [{ kind: 'weakInsulation', ohm: 300e3, breakdownV: null }] };
    const me = clipped(leaky);
    expect(me.sees.lamp.glow).toBe(0);
    expect(me.testsInsulation().megohms).toBeCloseTo(0.3, 1);
  });

  it('breaks weak insulation down at the higher voltage only', () => {
    const weak: JobOptions = { faults: [{ kind: 'weakInsulation', ohm: 20e6, breakdownV: 400 }] };
    const me = clipped(weak);
    expect(me.testsInsulation().megohms).toBeGreaterThan(10);
    me.discharges().does({ type: 'tester.volts', to: 500 });
    expect(me.testsInsulation().megohms).toBeLessThan(0.1);
  });

  it('climbs to its reading and goes blank when the button is let go', () => {
    const me = clipped().presses(true);
    const early = me.sees.tester.megohms!;
    const late = me.waits(6000).sees.tester.megohms!;
    expect(early).toBeLessThan(late / 2);
    expect(me.presses(false).sees.tester.megohms).toBeNull();
  });

  it('holds its reading while the sheet is written and the armature cools', () => {
    const me = new BenchDriver({ ...CARD, part: 'lap-24', tests: [...CARD.tests, 'neighbour'] });
    // Coils warm under the ammeter; their insulation falls with every kelvin.
    me.placesArmature().switches('high').setsRange(30).setsProbesAt(-90, -60).waits(60_000);
    me.hangsUpBoth('ammeter')
      .switches('off')
      .liftsArmature()
      .clipsOn('tester', 'shaft', 'bar:0')
      .presses(true);
    const before = me.waits(6000).sees.tester.megohms!;
    me.does({ type: 'sheet.write', line: { test: 'megohm', count: null, megohms: before, testVolt: 250 } });
    expect(me.sees.tester.megohms! / before).toBeGreaterThan(0.98);
    expect(me.sees.tester.megohms! / before).toBeLessThan(1.02);
  });

  it('shows over range with its clips in the air, and nothing between them put together', () => {
    const me = new BenchDriver(CARD);
    expect(me.testsInsulation()).toMatchObject({ over: true, megohms: 999 });
    me.takes('tester.1').takes('tester.2').touches('tester.1', 'tip:tester.2').hangsUp('tester.2');
    const you = new BenchDriver(CARD).takes('tester.1').takes('tester.2').touches('tester.1', 'tip:tester.2');
    expect(you.presses(true).refusal).toMatch(/hands are full/);
  });

  it('reads field frame and brush plate as well', () => {
    const me = new BenchDriver({
      parts: ['fieldFrame', 'brushPlate'],
      tests: ['megohm'],
      fieldFaults: [{ kind: 'weakInsulation', coil: 2, ohm: 2e6, breakdownV: null }],
      plateFaults: [{ kind: 'dirt', holder: 'plate:insulated1', ohm: 400e3 }],
    });
    me.takesUp('fieldFrame').clipsOn('tester', 'field:case', 'field:brush1');
    expect(me.testsInsulation().megohms).toBeCloseTo(2, 0);
    expect(me.putsBack('fieldFrame').refusal).toMatch(/clip/);
    me.discharges().hangsUpBoth('tester').putsBack('fieldFrame').takesUp('brushPlate');
    me.clipsOn('tester', 'plate:metal', 'plate:insulated1');
    expect(me.testsInsulation().megohms).toBeCloseTo(0.4, 1);
    expect(me.discharges().everythingBroken).toEqual([]);
  });

  it('warns by its light for as long as what it charged is left, which a leaky part empties by itself', () => {
    const light = (ohm: number, afterMs: number) => {
      const me = clipped({ faults: [{ kind: 'weakInsulation', ohm, breakdownV: null }] });
      me.testsInsulation();
      return me.waits(afterMs).sees.tester.charged;
    };
    expect(light(900e6, 100)).toBe(true);
    expect(light(900e6, 20_000)).toBe(false);
    expect(light(1e6, 100)).toBe(false);
  });
});

describe('a part the tester has charged', () => {
  it('must be discharged before a hand or another lead goes near it', () => {
    const touched = (act: (me: BenchDriver) => unknown) => {
      const me = clipped();
      me.testsInsulation();
      me.hangsUpBoth('tester');
      act(me);
      return me.broke;
    };
    expect(touched((me) => me.placesArmature())).toEqual(['notDischarged']);
    expect(touched((me) => me.gauges('diameter'))).toEqual(['notDischarged']);
    expect(touched((me) => me.handsIn())).toEqual(['notDischarged']);
    expect(touched((me) => me.placesArmature().liftsArmature())).toEqual([]);
  });

  it('is discharged through the tester’s own clips, with the button up', () => {
    const me = clipped();
    me.presses(true).discharges();
    expect(me.refusal).toMatch(/button/);
    me.presses(false).hangsUp('tester.1').discharges();
    expect(me.refusal).toMatch(/Both clips/);
    me.takes('tester.1').touches('tester.1', 'core').discharges();
    expect(me.refusal).toBeNull();
    me.hangsUpBoth('tester').placesArmature();
    expect(me.everythingBroken).toEqual([]);
  });
});
