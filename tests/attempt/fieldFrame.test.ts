import { describe, expect, it } from 'vitest';
import type { FieldFrameFault } from '../../src/engine/parts/fieldFrame.ts';
import { BenchDriver, type JobOptions } from '../support/benchDriver.ts';

/** Sound armature in the cradle, field frame in front, LOW, lamp proved. What a test then shows is common practice, no source. */
function atTheFrame(fieldFaults: readonly FieldFrameFault[] = [], more: JobOptions = {}): BenchDriver {
  const me = new BenchDriver({ parts: ['fieldFrame'], fieldFaults, ...more });
  me.placesArmature().takesUp('fieldFrame').partsBrushes().switches('low').provesLamp();
  expect(me.everythingBroken).toEqual([]);
  return me;
}

const continuity = (me: BenchDriver) =>
  (['field:brush1', 'field:brush2'] as const).map((brush) => me.lampBetween('field:terminal', brush));
const insulation = (me: BenchDriver) =>
  (['field:brush1', 'field:brush2'] as const).map((brush) => me.lampBetween('field:case', brush));

describe('a field frame under the lamp', () => {
  it('lights from the terminal to both brushes and stays dark to the case when sound, by the book', () => {
    const me = atTheFrame();
    expect(continuity(me)).toEqual([8, 8]);
    expect(insulation(me)).toEqual([0, 0]);
    me.liftsTip('lamp.1').liftsTip('lamp.2').provesLamp().hangsUpBoth('lamp');
    me.switches('off').putsBack('fieldFrame').liftsArmature().handsIn();
    expect(me.everythingBroken).toEqual([]);
    expect(me.session.log.every(({ outcome }) => outcome.kind === 'done')).toBe(true);
  });

  it('stays dark to the brush of an open branch, but only with the brushes kept apart', () => {
    const open: FieldFrameFault = { kind: 'openCoil', coil: 3 };
    expect(continuity(atTheFrame([open]))).toEqual([8, 0]);
    const touching = new BenchDriver({ parts: ['fieldFrame'], fieldFaults: [open] });
    touching.placesArmature().takesUp('fieldFrame').switches('low').provesLamp();
    expect(continuity(touching)).toEqual([8, 8]);
  });

  it('cannot tell a broken brush joint from an open coil', () => {
    expect(continuity(atTheFrame([{ kind: 'brushJoint', brush: 1, ohm: 'open' }]))).toEqual([0, 8]);
  });

  it('lights from case to both brushes when one coil has gone to ground', () => {
    const grounded: FieldFrameFault = { kind: 'groundedCoil', coil: 0, fraction: 0.5, ohm: 0.5 };
    expect(insulation(atTheFrame([grounded]))).toEqual([8, 8]);
  });

  it('shows nothing of weak insulation or of shorted turns', () => {
    const me = atTheFrame([
      { kind: 'weakInsulation', coil: 1, ohm: 200e3, breakdownV: null },
      { kind: 'shortedTurns', coil: 0, share: 0.4, ohm: 1e-4 },
    ]);
    expect(continuity(me)).toEqual([8, 8]);
    expect(insulation(me)).toEqual([0, 0]);
  });

  it('dims through some kilohms to the case', () => {
    const [glow] = insulation(atTheFrame([{ kind: 'weakInsulation', coil: 1, ohm: 3000, breakdownV: null }]));
    expect(glow).toBeGreaterThan(0);
    expect(glow).toBeLessThan(8);
  });

  it('is dark at both brushes of four coils in series when one is open', () => {
    const series = { frame: 'field-all-in-series' };
    expect(continuity(atTheFrame([{ kind: 'openCoil', coil: 1 }], series))).toEqual([0, 0]);
    expect(continuity(atTheFrame([], series))).toEqual([8, 8]);
  });

  it('does not conduct to the armature in the cradle', () => {
    const me = atTheFrame([], { parts: ['armature', 'fieldFrame'] });
    expect(me.lampBetween('field:case', 'core')).toBe(0);
  });
});

describe('hands and the field frame', () => {
  it('touch what lies forward and nothing that stands at the back', () => {
    const me = new BenchDriver({ parts: ['fieldFrame', 'brushPlate'] }).placesArmature().takes('lamp.1');
    expect(me.touches('lamp.1', 'field:case').refusal).toMatch(/Take the field frame up first/);
    expect(me.looksAt('field:case').refusal).toMatch(/Take the field frame up first/);
    me.takesUp('fieldFrame').touches('lamp.1', 'field:case');
    expect(me.refusal).toBeNull();
    expect(me.takesUp('brushPlate').refusal).toMatch(/room for one/);
    me.putsBack('fieldFrame');
    expect(me.sees.leads['lamp.1'].touches).toBeNull();
    expect(me.takesUp('brushPlate').sees.mat).toEqual({ fieldFrame: 'away', brushPlate: 'forward' });
  });

  it('find nothing of it where the job has none', () => {
    const me = new BenchDriver();
    expect(me.sees.mat).toEqual({ fieldFrame: 'absent', brushPlate: 'absent' });
    expect(me.takesUp('fieldFrame').refusal).toMatch(/nothing of that kind/);
    expect(me.looksAt('plate:metal').refusal).toMatch(/nothing of that kind/);
  });

  it.each([
    ['parting the brushes', (me: BenchDriver) => me.joinsBrushes()],
    ['putting it back', (me: BenchDriver) => me.putsBack('fieldFrame')],
    ['gauging a brush', (me: BenchDriver) => me.gauges('brushLength', 0)],
  ])('on it with a live probe on it is critical: %s', (_, act) => {
    const me = atTheFrame().touches('lamp.1', 'field:case').hangsUp('lamp.2');
    act(me);
    expect(me.broke).toContain('liveMetal');
    expect(me.sees.stopped).not.toBeNull();
  });

  it('on the armature are safe while the live probe is on the frame, which is not joined to it', () => {
    const me = atTheFrame().touches('lamp.1', 'field:case').hangsUp('lamp.2').layHandOnArmature();
    expect(me.broke).toEqual([]);
  });
});
