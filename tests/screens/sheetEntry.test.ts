import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { barAt } from '../../src/bench/geometry.ts';
import type { Observation } from '../../src/bench/observation.ts';
import { barPlace, type Place } from '../../src/bench/places.ts';
import { atHand } from '../../src/screens/apprentice/bench/atHand.ts';
import { doubt } from '../../src/screens/apprentice/bench/doubt.ts';
import {
  changed,
  EMPTY_DRAFT,
  prefill,
  standing,
  toLine,
} from '../../src/screens/apprentice/bench/sheetEntry.ts';
import { AT_REST, GEOMETRY, touching } from './observed.ts';

function withLeads(leads: Partial<Observation['leads']>, more: Partial<Observation> = {}): Observation {
  return { ...AT_REST, ...more, leads: { ...AT_REST.leads, ...leads } };
}

describe('the test at hand, as anyone standing there can tell it', () => {
  it('is nothing while nothing is tested', () => {
    expect(atHand(AT_REST, GEOMETRY)).toBeNull();
    expect(atHand(withLeads({ 'ammeter.1': touching('bar:3') }), GEOMETRY)).toBeNull();
  });

  it('has no count before a bar is chalked', () => {
    const seen = withLeads({ 'ammeter.1': touching('bar:3'), 'ammeter.2': touching('bar:4') });
    expect(atHand(seen, GEOMETRY)).toEqual({ test: 'neighbour', count: null });
  });

  it('names a neighbouring pair by its lower bar, whichever probe is on it and across bar 0', () => {
    fc.assert(
      fc.property(fc.nat(22), fc.nat(22), fc.boolean(), (lower, chalkedBar, swapped) => {
        const [one, other] = [barPlace(lower), barPlace((lower + 1) % 23)];
        const leads = {
          'ammeter.1': touching(swapped ? other : one, 'stand'),
          'ammeter.2': touching(swapped ? one : other, 'stand'),
        };
        const at = atHand(withLeads(leads, { chalkedBar }), GEOMETRY);
        expect(at).toEqual({ test: 'neighbour', count: (lower - chalkedBar + 23) % 23 });
      }),
    );
  });

  it('names a spaced pair by the bar under probe 1', () => {
    const seen = withLeads(
      { 'ammeter.1': touching('bar:21'), 'ammeter.2': touching('bar:4') },
      { chalkedBar: 20 },
    );
    expect(atHand(seen, GEOMETRY)).toEqual({ test: 'spaced', count: 1 });
  });

  it('is a ground test with one lamp tip on steel and the other on a bar, and not tip to tip', () => {
    const grounded = { 'lamp.1': touching('core'), 'lamp.2': touching('bar:7') };
    expect(atHand(withLeads(grounded, { chalkedBar: 5 }), GEOMETRY)).toEqual({ test: 'ground', count: 2 });
    const proving = { 'lamp.1': touching('tip:lamp.2'), 'lamp.2': touching('tip:lamp.1') };
    expect(atHand(withLeads(proving), GEOMETRY)).toBeNull();
  });

  it('counts the strip by the bar in line with it', () => {
    const strip = { at: 'core', angleDeg: 180, heightMm: 0.5, pull: 0, buzz: 0 } as const;
    const at = atHand({ ...AT_REST, strip, chalkedBar: 0 }, GEOMETRY);
    expect(at).toEqual({ test: 'strip', count: barAt(GEOMETRY, 180, 0) });
  });

  it('counts what the lens is on', () => {
    const look = { place: 'riser:6', sees: [] } as const;
    expect(atHand({ ...AT_REST, look, chalkedBar: 2 }, GEOMETRY)).toEqual({ test: 'look', count: 4 });
    const core = { place: 'core', sees: [] } as const;
    expect(atHand({ ...AT_REST, look: core, chalkedBar: 2 }, GEOMETRY)).toEqual({
      test: 'look',
      count: null,
    });
  });
});

describe('what is in hand on mat and rail', () => {
  const on = (set: 'lamp' | 'tester' | 'drop', one: Place, other: Place) =>
    withLeads({ [`${set}.1`]: touching(one), [`${set}.2`]: touching(other) }, { chalkedBar: 0 });
  const gauge = (kind: 'diameter' | 'brushLength', brush: 3 | null): Observation => ({
    ...AT_REST,
    gauge: { gauge: kind, brush, mm: 12.5 },
  });

  it.each<[string, Observation, object]>([
    [
      'the branch under the lamp',
      on('lamp', 'field:terminal', 'field:brush2'),
      { test: 'fieldContinuity', at: 'field:brush2', part: 'fieldFrame', lamp: 'dark' },
    ],
    [
      'the holder under the lamp',
      on('lamp', 'plate:earthed1', 'plate:metal'),
      { test: 'plateEarthed', at: 'plate:earthed1', part: 'brushPlate', lamp: 'dark' },
    ],
    [
      'the part under the tester',
      on('tester', 'shaft', 'bar:3'),
      { test: 'megohm', testVolt: 250, megohms: 7 },
    ],
    [
      'the holder under the tester',
      on('tester', 'plate:metal', 'plate:insulated2'),
      { test: 'megohm', part: 'brushPlate', at: 'plate:insulated2', testVolt: 250, megohms: 7 },
    ],
    [
      'the frame under the tester',
      on('tester', 'field:case', 'field:brush1'),
      { test: 'megohm', part: 'fieldFrame', testVolt: 250, megohms: 7 },
    ],
    [
      'bars under the millivoltmeter',
      on('drop', 'bar:5', 'bar:4'),
      { test: 'millivolt', count: 4, millivolts: 7 },
    ],
    [
      'a branch under the millivoltmeter',
      on('drop', 'field:terminal', 'field:brush1'),
      { test: 'millivolt', part: 'fieldFrame', at: 'field:brush1', millivolts: 7 },
    ],
    ['the gauge', gauge('diameter', null), { test: 'gauges', gauge: 'diameter', millimetres: 7 }],
    [
      'the brush under the gauge',
      gauge('brushLength', 3),
      { test: 'gauges', gauge: 'brushLength', brush: 3, part: 'brushPlate', millimetres: 7 },
    ],
  ])('%s is carried into the line; the reading is not', (_what, seen, line) => {
    const at = atHand(seen, GEOMETRY)!;
    const filled = prefill({ ...EMPTY_DRAFT, reading: '7', lamp: 'dark' }, at, seen);
    expect(toLine(filled)).toEqual({ ok: true, line: { count: null, ...line } });
    expect(prefill(EMPTY_DRAFT, at, seen)).toMatchObject({ reading: '', lamp: '' });
  });

  it('asks for brush, holder and gauge where a line needs one', () => {
    const written = (part: object) => toLine({ ...EMPTY_DRAFT, lamp: 'dark', reading: '7', ...part });
    expect(written({ test: 'fieldContinuity' })).toMatchObject({ ok: false });
    expect(written({ test: 'gauges' })).toMatchObject({ ok: false });
    expect(written({ test: 'gauges', gauge: 'brushLength' })).toMatchObject({ ok: false });
    expect(written({ test: 'megohm', part: 'fieldFrame' })).toMatchObject({ ok: true });
  });

  it('empties a place that another test does not have', () => {
    const draft = { ...EMPTY_DRAFT, test: 'fieldContinuity', at: 'field:brush1' } as const;
    expect(changed(draft, { test: 'fieldInsulation' }).at).toBe('field:brush1');
    expect(changed(draft, { test: 'plateInsulation' }).at).toBe('');
  });

  it('writes “over” for a tester beyond its scale and keeps what is no number as a remark', () => {
    const draft = { ...EMPTY_DRAFT, test: 'megohm' } as const;
    expect(toLine({ ...draft, reading: 'Over' })).toMatchObject({ line: { megohms: 'over' } });
    expect(toLine({ ...draft, reading: 'lots' })).toMatchObject({
      line: { remark: expect.stringContaining('lots') },
    });
  });
});

describe('writing a line', () => {
  it('carries test, bar and range over from the bench and keeps what was typed', () => {
    const draft = { ...EMPTY_DRAFT, reading: '10.5' };
    const filled = prefill(draft, { test: 'spaced', count: 4 }, { ...AT_REST, rangeA: 15 });
    expect(toLine(filled)).toEqual({
      ok: true,
      line: { test: 'spaced', count: 4, readingA: 10.5, rangeA: 15 },
    });
  });

  it('takes a comma for a point', () => {
    const written = toLine({ ...EMPTY_DRAFT, count: '0', reading: ' 10,5 ' });
    expect(written).toMatchObject({ ok: true, line: { readingA: 10.5 } });
  });

  it('keeps a reading that is no number as a remark', () => {
    const written = toLine({ ...EMPTY_DRAFT, count: '0', reading: 'about ten', remark: 'needle shook' });
    expect(written).toEqual({
      ok: true,
      line: { test: 'neighbour', count: 0, remark: 'reading written as “about ten”; needle shook' },
    });
  });

  it('refuses an empty line and a place that is no count, with a sentence', () => {
    expect(toLine({ ...EMPTY_DRAFT, count: '3' })).toMatchObject({ ok: false });
    const nowhere = toLine({ ...EMPTY_DRAFT, count: 'third', reading: '10' });
    expect(nowhere).toMatchObject({ ok: false, sentence: expect.stringContaining('“third”') });
  });

  it('writes any number at all without losing it', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), fc.nat(200), (reading, count) => {
        const written = toLine({ ...EMPTY_DRAFT, count: String(count), reading: String(reading) });
        expect(written).toMatchObject({ ok: true, line: { count, readingA: Number(String(reading)) } });
      }),
    );
  });

  it('writes only what the test asks for', () => {
    const draft = { ...EMPTY_DRAFT, count: '1', reading: '9', lamp: 'lit', strip: 'pulled' } as const;
    expect(toLine({ ...draft, test: 'ground' })).toEqual({
      ok: true,
      line: { test: 'ground', count: 1, lamp: 'lit' },
    });
    expect(toLine({ ...draft, test: 'strip' })).toEqual({
      ok: true,
      line: { test: 'strip', count: 1, strip: 'pulled' },
    });
  });
});

const ARMATURE = { bars: 23, commutatorRadius: 0.0165 };

describe('a line that looks odd is marked, never dropped', () => {
  it.each([
    [{ test: 'neighbour', count: 0, readingA: 130, rangeA: 100 }, /100 A scale/],
    [{ test: 'neighbour', count: 0, readingA: -2, rangeA: 30 }, /no sign/],
    [{ test: 'neighbour', count: 23, readingA: 2, rangeA: 30 }, /0 to 22/],
    [{ test: 'megohm', count: null, megohms: -1, testVolt: 250 }, /less than nothing/],
    [{ test: 'megohm', count: null, megohms: 5000, testVolt: 250 }, /999 MΩ/],
    [{ test: 'millivolt', count: 3, millivolts: 900 }, /200 mV/],
    [{ test: 'gauges', count: null, gauge: 'diameter', millimetres: 3.3 }, /far from any commutator/],
    [{ test: 'gauges', count: null, gauge: 'undercut', millimetres: 65 }, /far more/],
    [{ test: 'gauges', count: null, gauge: 'brushLength', brush: 1, millimetres: -2 }, /less than nothing/],
  ] as const)('%j', (line, why) => expect(doubt(line, ARMATURE)).toMatch(why));

  it('finds nothing odd in a full-scale reading', () => {
    expect(doubt({ test: 'neighbour', count: 22, readingA: 30, rangeA: 30 }, ARMATURE)).toBeNull();
  });
});

it('lets the last line written for a bar stand', () => {
  const latest = standing(
    [
      { test: 'neighbour', count: 1, readingA: 10 },
      { test: 'spaced', count: 1, readingA: 38 },
      { test: 'neighbour', count: 1, readingA: 11 },
    ],
    'neighbour',
  );
  expect([...latest]).toEqual([[1, { test: 'neighbour', count: 1, readingA: 11 }]]);
});
