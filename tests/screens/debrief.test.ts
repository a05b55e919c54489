import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Entry } from '../../src/attempt/entry.ts';
import type { Action } from '../../src/bench/action.ts';
import { operables, touchables } from '../../src/bench/touchables.ts';
import { milliampere } from '../../src/screens/apprentice/debrief/BodyCurrent.tsx';
import { chalkAt } from '../../src/screens/apprentice/debrief/chalk.ts';
import { niceAxis, ticks } from '../../src/screens/apprentice/debrief/chartScale.ts';
import { faultWords } from '../../src/screens/apprentice/debrief/faultWords.ts';
import { fieldFaultWords, plateFaultWords } from '../../src/screens/apprentice/debrief/matFaultWords.ts';
import { ohmWords } from '../../src/screens/apprentice/debrief/ohmWords.ts';
import { timeUsed, timeWords } from '../../src/screens/apprentice/debrief/timeUsed.ts';
import { actionWords } from '../../src/screens/shared/actionWords.ts';
import { BenchDriver } from '../support/benchDriver.ts';
import { GEOMETRY } from './observed.ts';

const TELLING = { chalkedBar: 20, bars: 23, vocabulary: 'american' } as const;

describe('the fault told afterwards', () => {
  it('is counted from the learner’s chalk', () => {
    const fault = { kind: 'riserJoint', bar: 4, form: 'bar', ohm: 0.02 } as const;
    expect(faultWords(fault, TELLING)).toBe('riser joint bad at bar 7 on from the chalk, 20 mΩ');
    expect(faultWords(fault, { ...TELLING, vocabulary: 'british' })).toContain('segment 7 on');
  });

  it('falls back on the bench’s own number', () => {
    const fault = { kind: 'groundedBar', bar: 4, ohm: 0.5 } as const;
    expect(faultWords(fault, { ...TELLING, chalkedBar: null })).toContain("bar 4 (the bench's own number)");
  });

  it.each([
    ['open', 'open'],
    [2e-4, '0.2 mΩ'],
    [0.0205, '20.5 mΩ'],
    [1, '1 Ω'],
    [30_000, '30 kΩ'],
    [2.5e6, '2.5 MΩ'],
  ] as const)('writes %s as %s', (ohm, words) => expect(ohmWords(ohm)).toBe(words));
});

describe('the log in words', () => {
  const speaking = { geometry: GEOMETRY, chalkedBar: 2, rotationDeg: 0, vocabulary: 'american' } as const;

  it.each([
    [{ type: 'selector.turn', to: 'high' }, 'Selector to HIGH'],
    [{ type: 'armature.turn', byDeg: -360 / 23 }, 'Turned the armature by 15.7°, top away'],
    [
      { type: 'lead.touch', lead: 'ammeter.2', place: 'bar:4' },
      'Put ammeter probe 2 on bar 2 on from the chalk',
    ],
    [{ type: 'lead.take', lead: 'lamp.1', grip: 'tip' }, 'Took lamp probe 1 by the bare tip'],
    [
      { type: 'sheet.write', line: { test: 'ground', count: 3, lamp: 'dark', remark: 'sure' } },
      'Wrote: Ground, chalk + 3: dark: sure',
    ],
    [{ type: 'job.handIn' }, 'Handed the job in'],
  ] as const)('%j', (action, words) => expect(actionWords(action as Action, speaking)).toBe(words));

  it('counts every entry from the chalk of its time, and those before any from the first', () => {
    const entries = [
      { type: 'lens.look', place: 'bar:1' },
      { type: 'chalk.mark', bar: 5 },
      { type: 'lens.look', place: 'bar:2' },
      { type: 'chalk.mark', bar: 9 },
      { type: 'job.handIn' },
    ].map((action, n) => ({ n, action, outcome: { kind: 'done', breaches: [] } }) as unknown as Entry);
    expect(chalkAt(entries)).toEqual([5, 5, 5, 5, 9]);
  });
});

describe('the axis of the chart', () => {
  it('holds the largest value in at most six even steps', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-3, max: 1e4, noNaN: true }), (largest) => {
        const axis = niceAxis(largest);
        const marks = ticks(axis);
        expect(axis.top).toBeGreaterThanOrEqual(largest * (1 - 1e-9));
        expect(axis.top - axis.step).toBeLessThan(largest);
        expect(marks.length).toBeLessThanOrEqual(7);
        expect(marks[0]).toBe(0);
        expect(marks.at(-1)).toBeCloseTo(axis.top, 6);
      }),
    );
  });

  it('stands up to a part that reads nothing', () => expect(niceAxis(0).top).toBeGreaterThan(0));
});

describe('time used', () => {
  const done = { kind: 'done', breaches: [] } as const;
  const refused = { kind: 'refused', sentence: 'No.', breaches: [] } as const;
  const entry = (action: Action, outcome: Entry['outcome']) => ({ action, outcome }) as Entry;

  it('is the time that ran and the minutes of the book, for work that went through', () => {
    const entries = [
      entry({ type: 'remedy.do', remedy: 'tightenRivets' }, done),
      entry({ type: 'remedy.do', remedy: 'undercut' }, refused),
      entry({ type: 'bench.setRight', what: 'lamp' }, done),
    ];
    const used = timeUsed({ entries, endMs: 300_000 });
    expect(used).toEqual({ benchMs: 300_000, bookMinutes: 10 });
    expect(timeWords(used, 20)).toBe(
      '15 minutes: 5 minutes at the bench and 10 of work by the book; 20 minutes were allowed',
    );
    expect(timeWords(used, 12)).toContain('so 3 minutes too long');
  });

  it('says so when there was no limit', () => {
    expect(timeWords({ benchMs: 60_000, bookMinutes: 0 }, null)).toBe(
      '1 minute at the bench; no limit was set',
    );
  });
});

describe('faults of field frame, brush plate and bench', () => {
  const frame = {
    typeId: 'two',
    name: 'two branches',
    coils: [
      { from: 'field:terminal', to: 'joint:1' },
      { from: 'joint:1', to: 'end:1' },
      { from: 'field:terminal', to: 'end:2' },
    ],
    links: [],
  };
  it('name the branch a coil belongs to, where there is one', () => {
    const words = (coil: number) => fieldFaultWords({ kind: 'openCoil', coil }, frame);
    expect(words(0)).toBe('coil 1 of the frame in the branch to field brush 1 is open');
    expect(words(2)).toBe('coil 3 of the frame in the branch to field brush 2 is open');
    const inSeries = { ...frame, links: [{ from: 'end:1', to: 'end:2' }] };
    expect(fieldFaultWords({ kind: 'openCoil', coil: 0 }, inSeries)).toBe('coil 1 of the frame is open');
  });

  it('speak the usage of the reader', () => {
    const fault = { kind: 'brokenPigtail', holder: 'plate:earthed2' } as const;
    expect(plateFaultWords(fault, 'american')).toContain('grounded holder 2');
    expect(plateFaultWords(fault, 'british')).toContain('earthed holder 2');
  });
});

it('tells a current through the body in two figures', () => {
  expect(milliampere(0.04812)).toBe('48 mA');
  expect(milliampere(0.0000712)).toBe('0.071 mA');
});

it('has words of its own for every act the bench offers on mat and rail', () => {
  const me = new BenchDriver({
    parts: ['armature', 'fieldFrame', 'brushPlate'],
    tests: ['megohm', 'millivolt', 'gauges'],
  });
  const speaking = {
    geometry: me.geometry,
    chalkedBar: null,
    rotationDeg: 0,
    vocabulary: 'american',
  } as const;
  const offered = [
    ...operables(me.geometry, me.sees).flatMap(({ actions }) => actions),
    ...touchables(me.geometry, me.sees).flatMap(({ actions }) => actions),
  ];
  expect(new Set(offered.map(({ type }) => type)).size).toBeGreaterThan(8);
  for (const action of offered) expect(actionWords(action, speaking)).not.toContain(action.type);
});
