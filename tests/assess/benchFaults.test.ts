import { describe, expect, it } from 'vitest';
import { assess } from '../../src/assess/assess.ts';
import { PREPARATIONS } from '../../src/bench/action.ts';
import { scaleCurrent, scaleFraction } from '../../src/engine/instruments/ammeter.ts';
import type { FieldFrameFault } from '../../src/engine/parts/fieldFrame.ts';
import type { BenchFault } from '../../src/scenario/hidden/benchFault.ts';
import type { JobOptions } from '../support/benchDriver.ts';
import { expertAttempt, library, scenarioWith } from './attempts.ts';
import { finding, PartsWorker } from './partsWork.ts';
import { perform, type Step, step, stepsOf } from './script.ts';

/** A bench that is itself at fault: what proves it, and what it costs not to notice. Common practice, no source. */
const frame = (benchFaults: readonly BenchFault[], ...fieldFaults: FieldFrameFault[]): JobOptions => ({
  parts: ['fieldFrame'],
  benchFaults,
  fieldFaults,
});
const sound = (me: PartsWorker) => me.decides('fieldFrame', [finding('sound')], 'service');

describe('a lamp that cannot light', () => {
  /** Tips together, dark; off, put right, and then the work. */
  const noticed = (fault: BenchFault, care: 'lamp' | 'lampLeads') => {
    const me = new PartsWorker(frame([fault])).looksOver().getsLampReady('fieldFrame');
    me.hangsUpBoth('lamp').switches('off').setsRight(care);
    return me.switches('low').provesLamp().testsContinuity().testsFieldInsulation().putsLampAway();
  };

  it.each<[BenchFault, 'lamp' | 'lampLeads']>([
    [{ kind: 'blownLamp' }, 'lamp'],
    [{ kind: 'brokenLead', lead: 'lamp.2' }, 'lampLeads'],
  ])('%o put right at the first dark proof costs nothing', (fault, care) => {
    const me = noticed(fault, care);
    const { marks } = sound(me).marks();
    expect(me.refused).toEqual([]);
    expect(marks.filter(({ earned, of }) => earned < of)).toEqual([]);
    expect(marks.map(({ id }) => id)).toContain('benchSetRight');
  });

  it('gives no dark results: a frame condemned by it loses nearly everything', () => {
    const me = new PartsWorker(frame([{ kind: 'blownLamp' }])).looksOver().worksFrame();
    me.decides('fieldFrame', [finding('openCoil', { kind: 'branch', brush: 1 })], 'winder');
    expect(me.lost()).toEqual([
      'benchSetRight',
      'fieldContinuityPass',
      'fieldFrame.condition',
      'fieldFrame.disposition',
      'fieldFrame.place',
      'fieldFrame.supported',
      'fieldInsulationPass',
      'lampProved',
    ]);
  });

  it('passes a grounded frame as dark, and that is no support either', () => {
    const grounded: FieldFrameFault = { kind: 'groundedCoil', coil: 0, fraction: 0.5, ohm: 0.5 };
    const me = new PartsWorker(frame([{ kind: 'brokenLead', lead: 'lamp.1' }], grounded)).looksOver();
    me.worksFrame();
    expect(sound(me).lost()).toEqual(
      expect.arrayContaining(['benchSetRight', 'fieldFrame.condition', 'fieldFrame.supported']),
    );
  });

  it('put right only after tests had been made with it is half right', () => {
    const me = new PartsWorker(frame([{ kind: 'blownLamp' }])).looksOver().worksFrame();
    me.setsRight('lamp').worksFrame();
    const { marks } = sound(me).marks();
    const mark = marks.find(({ id }) => id === 'benchSetRight')!;
    expect(mark.earned / mark.of).toBe(0.5);
  });
});

describe('a cracked handle', () => {
  const cracked: BenchFault = { kind: 'crackedHandle', lead: 'lamp.2' };

  it('found and put right before power costs nothing', () => {
    const me = new PartsWorker(frame([cracked])).looksOver().looksAt('handle:lamp.2').setsRight('lampLeads');
    expect(sound(me.worksFrame()).lost()).toEqual([]);
  });

  it('held live costs the mark', () => {
    const me = new PartsWorker(frame([cracked])).looksOver().worksFrame();
    expect(me.everythingBroken).toContain('crackedHandle');
    expect(sound(me).lost()).toEqual(['benchSetRight']);
  });
});

describe('a fault of the bench that the tests of the job never meet', () => {
  it('is not marked', () => {
    const me = new PartsWorker(frame([{ kind: 'ammeterZero', offset: 0.05 }])).looksOver().worksFrame();
    const { marks } = sound(me).marks();
    expect(marks.map(({ id }) => id)).not.toContain('benchSetRight');
    expect(marks.filter(({ earned, of }) => earned < of)).toEqual([]);
  });
});

describe('an ammeter off zero', () => {
  const OFFSET = 0.05;
  const scenario = scenarioWith([], {}, { bench: { faults: [{ kind: 'ammeterZero', offset: OFFSET }] } });
  // The script of a sound bench, without whatever its expert did about the bench.
  const steps = stepsOf(expertAttempt(scenarioWith([])).attempt);
  const markOf = (script: readonly Step[]) => {
    const { marks } = assess(perform(scenario, script), library);
    const mark = marks.find(({ id }) => id === 'benchSetRight')!;
    return mark.earned / mark.of;
  };
  /** The script's currents are true ones: here as they are, or as printed where a needle off zero stands. */
  const written = (offset: number) =>
    steps.map((one): Step => {
      const { action } = one;
      if (action.type !== 'sheet.write' || action.line.readingA === undefined) return one;
      const { readingA, rangeA } = action.line;
      const shown = scaleCurrent(scaleFraction(readingA, rangeA!) + offset, rangeA!);
      return { ...one, action: { ...action, line: { ...action.line, readingA: shown } } };
    });

  it('set before anything is read earns all of it', () => {
    const zero = step({ type: 'bench.setRight', what: 'ammeterZero' });
    expect(markOf([zero, ...steps])).toBe(1);
  });
  it('read as it stands earns nothing', () => {
    expect(markOf(written(OFFSET))).toBe(0);
  });
  it('read with the offset taken off earns all of it too', () => {
    expect(markOf(written(0))).toBe(1);
  });
});

describe('preparation', () => {
  const job: JobOptions = { parts: ['fieldFrame'] };
  const checks = (me: PartsWorker, items: readonly (typeof PREPARATIONS)[number][]) => {
    for (const item of items) me.does({ type: 'prepare.check', item });
    return me;
  };
  const mark = (me: PartsWorker) =>
    sound(me)
      .marks()
      .marks.find(({ id }) => id === 'prepared')!;
  const share = ({ earned, of }: { readonly earned: number; readonly of: number }) => earned / of;

  it('seen to before power earns its mark, eye protection asked for only where there is hot work', () => {
    const without = PREPARATIONS.filter((item) => item !== 'eyeProtection');
    for (const items of [PREPARATIONS, without])
      expect(share(mark(checks(new PartsWorker(job), items).looksOver(false).worksFrame()))).toBe(1);
    const hot = checks(new PartsWorker({ parts: ['armature', 'fieldFrame'] }), without).looksOver(false);
    // Seven of eight, in three whole points.
    expect(share(mark(hot.cures('skimAndPolish').worksFrame()))).toBe(2 / 3);
  });

  it('begun and not finished earns its share', () => {
    const some = checks(new PartsWorker(job), ['ringsOff', 'dryFloor']).looksOver(false).worksFrame();
    expect(share(mark(some))).toBeCloseTo(2 / 7, 1);
  });

  it('left out, or seen to after power, costs that mark and no other', () => {
    expect(sound(new PartsWorker(job).looksOver(false).worksFrame()).lost()).toEqual(['prepared']);
    const late = checks(new PartsWorker(job).looksOver(false).worksFrame(), PREPARATIONS);
    expect(sound(late).lost()).toEqual(['prepared']);
  });
});
