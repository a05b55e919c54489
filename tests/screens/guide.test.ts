import { describe, expect, it } from 'vitest';
import type { TestKind } from '../../src/bench/paper.ts';
import { Beginner } from '../support/beginner.ts';
import { type JobOptions, job } from '../support/benchDriver.ts';

function beginnerAt(options: JobOptions): Beginner {
  return new Beginner(job({ ...options, mode: 'guided' }));
}

describe('the guide, followed to the letter by a beginner', () => {
  it.each<[string, JobOptions]>([
    ['a sound wave armature', { part: 'wave-23' }],
    ['a sound four-pole lap armature', { part: 'lap-28' }],
    ['a sound two-pole armature at 120 V', { part: 'lap-24', mains: '120V60Hz', startRotationDeg: 40 }],
    ['a riser joint gone', { faults: [{ kind: 'riserJoint', bar: 5, form: 'bar', ohm: 'open' }] }],
    ['a grounded bar', { faults: [{ kind: 'groundedBar', bar: 9, ohm: 0.5 }] }],
    ['bridged bars', { faults: [{ kind: 'bridgedBars', bar: 5, ohm: 2e-4, by: 'copper' }] }],
  ])('gets through %s without a refusal and with every mark for procedure', (_what, options) => {
    const beginner = beginnerAt(options).follow();
    const marks = beginner.procedure();
    expect(marks.length).toBeGreaterThan(15);
    const lost = marks.filter(({ earned, of }) => earned < of);
    expect(
      lost.map(({ title, earned, of, sentence }) => `${title}: ${earned} of ${of}. ${sentence}`),
    ).toEqual([]);
  });
});

describe('the guide, followed from the first look to the job handed in', () => {
  const FRAME: JobOptions = {
    parts: ['fieldFrame'],
    tests: ['look', 'fieldContinuity', 'fieldInsulation', 'megohm', 'millivolt', 'gauges'],
  };
  const PLATE: JobOptions = {
    parts: ['brushPlate'],
    tests: ['look', 'plateInsulation', 'plateEarthed', 'megohm', 'gauges'],
  };
  const handedIn = ({ me }: Beginner) => {
    expect(me.refusal).toBeNull();
    expect(me.everythingBroken).toEqual([]);
    expect(me.session.stateAt(me.atMs).stage).toBe('handedIn');
  };
  const lampAt = ({ lines }: Beginner, at: string) => lines.filter((line) => line.at === at && line.lamp);

  it('takes a sound field frame to its verdict through every test of its card', () => {
    const beginner = beginnerAt(FRAME).follow();
    handedIn(beginner);
    const written = new Set(beginner.lines.map(({ test }) => test));
    expect([...written].sort()).toEqual([...FRAME.tests!].sort());
    expect(beginner.lines.every(({ part }) => part === 'fieldFrame')).toBe(true);
    expect(beginner.verdicts.map(({ part }) => part)).toEqual(['fieldFrame']);
  });

  it('takes a field frame with an open coil to its verdict without a remedy', () => {
    const beginner = beginnerAt({ ...FRAME, fieldFaults: [{ kind: 'openCoil', coil: 3 }] }).follow();
    handedIn(beginner);
    expect(beginner.remedies).toEqual([]);
    expect(beginner.lines.some(({ test, lamp }) => test === 'fieldContinuity' && lamp === 'dark')).toBe(true);
  });

  it('takes a brush plate with a loose rivet through remedy and retest to its verdict', () => {
    const rivet = { kind: 'looseRivet', holder: 'plate:insulated1', makes: 'pressed', ohm: 0.2 } as const;
    const beginner = beginnerAt({ ...PLATE, plateFaults: [rivet] }).follow();
    handedIn(beginner);
    expect(beginner.remedies.map(({ remedy }) => remedy)).toContain('tightenRivets');
    const lamp = lampAt(beginner, 'plate:insulated1').map((line) => line.lamp);
    expect([lamp[0], lamp.at(-1)]).toEqual(['lit', 'dark']);
  });

  it('takes all three parts of one job to three verdicts', () => {
    const parts = ['armature', 'fieldFrame', 'brushPlate'] as const;
    const tests = [
      'look',
      'neighbour',
      'ground',
      'strip',
      ...FRAME.tests!.slice(1, 3),
      ...PLATE.tests!.slice(1, 3),
    ];
    const beginner = beginnerAt({ parts, tests: tests as TestKind[] }).follow();
    handedIn(beginner);
    expect(beginner.verdicts.map(({ part }) => part)).toEqual([...parts]);
  });

  it('resolders the riser that has dropped out and reads every pair again', () => {
    const riser = { kind: 'riserJoint', bar: 5, form: 'bar', ohm: 'open' } as const;
    const beginner = beginnerAt({ tests: ['neighbour', 'strip'], faults: [riser] }).follow();
    handedIn(beginner);
    expect(beginner.remedies).toMatchObject([{ remedy: 'resolderRiser', bar: 5 }]);
    const readings = beginner.lines.filter(({ test }) => test === 'neighbour');
    expect(readings.length).toBe(46);
    const least = (from: number) =>
      Math.min(...readings.slice(from, from + 23).map(({ readingA }) => readingA!));
    expect(least(23)).toBeGreaterThan(3 * least(0));
  });

  it.each<[string, JobOptions['benchFaults']]>([
    ['a cracked handle', [{ kind: 'crackedHandle', lead: 'lamp.1' }]],
    ['a blown lamp', [{ kind: 'blownLamp' }]],
  ])('puts %s right before the ground test of an armature', (_what, benchFaults = []) => {
    const beginner = beginnerAt({ tests: ['ground'], benchFaults }).follow();
    handedIn(beginner);
    const acts = beginner.me.session.log.map(({ action }) => action.type);
    expect(acts).toContain('bench.setRight');
    expect(beginner.lines.map(({ test }) => test)).toEqual(['ground']);
  });

  it.each<[string, JobOptions['benchFaults'], TestKind[], string]>([
    ['a needle off zero', [{ kind: 'ammeterZero', offset: 0.05 }], ['neighbour'], 'ammeterZero'],
    ['a needle off zero', [{ kind: 'ammeterZero', offset: 0.02 }], ['spaced'], 'ammeterZero'],
    ['a broken ammeter lead', [{ kind: 'brokenLead', lead: 'ammeter.1' }], ['neighbour'], 'ammeterLeads'],
    ['a broken ammeter lead', [{ kind: 'brokenLead', lead: 'ammeter.2' }], ['spaced'], 'ammeterLeads'],
  ])('sees %s and puts it right before a line is written: %o', (_what, benchFaults = [], tests, care) => {
    const beginner = beginnerAt({ tests, benchFaults }).follow();
    handedIn(beginner);
    const acts = beginner.me.session.log.map(({ action }) => action);
    const cared = acts.flatMap((action) => (action.type === 'bench.setRight' ? [action.what] : []));
    expect(cared).toEqual([care]);
    const at = (type: string) => acts.findIndex((action) => action.type === type);
    expect(at('bench.setRight')).toBeLessThan(at('sheet.write'));
    const lost = beginner.procedure().filter(({ earned, of }) => earned < of);
    expect(lost.map(({ title, sentence }) => `${title}: ${sentence}`)).toEqual([]);
    expect(beginner.procedure().map(({ id }) => id)).toContain('benchSetRight');
  });

  it('takes an ammeter off zero for none of its business where nothing is read on it', () => {
    const beginner = beginnerAt({ tests: ['strip'], benchFaults: [{ kind: 'ammeterZero', offset: 0.05 }] });
    handedIn(beginner.follow());
    expect(beginner.me.session.log.map(({ action }) => action.type)).not.toContain('bench.setRight');
  });

  it('gets carbon out from between the bars before anyone calls the armature shorted', () => {
    const carbon = { kind: 'bridgedBars', bar: 5, ohm: 2e-3, by: 'carbon' } as const;
    const beginner = beginnerAt({ tests: ['neighbour', 'strip'], faults: [carbon] }).follow();
    handedIn(beginner);
    expect(beginner.remedies.map(({ remedy }) => remedy)).toEqual(['brushBetweenBars']);
    expect(beginner.lines.filter(({ test }) => test === 'strip').at(-1)?.strip).toBe('still');
  });
});
