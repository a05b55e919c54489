import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Entry } from '../../src/attempt/entry.ts';
import type { Action } from '../../src/bench/action.ts';
import { chalkAt } from '../../src/screens/apprentice/debrief/chalk.ts';
import { niceAxis, ticks } from '../../src/screens/apprentice/debrief/chartScale.ts';
import { faultWords } from '../../src/screens/apprentice/debrief/faultWords.ts';
import { ohmWords } from '../../src/screens/apprentice/debrief/ohmWords.ts';
import { actionWords } from '../../src/screens/shared/actionWords.ts';
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
