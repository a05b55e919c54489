import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { barAt } from '../../src/bench/geometry.ts';
import type { Observation } from '../../src/bench/observation.ts';
import { barPlace } from '../../src/bench/places.ts';
import {
  atHand,
  doubt,
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

describe('a line that looks odd is marked, never dropped', () => {
  it.each([
    [{ test: 'neighbour', count: 0, readingA: 130, rangeA: 100 }, /100 A scale/],
    [{ test: 'neighbour', count: 0, readingA: -2, rangeA: 30 }, /no sign/],
    [{ test: 'neighbour', count: 23, readingA: 2, rangeA: 30 }, /0 to 22/],
  ] as const)('%j', (line, why) => expect(doubt(line, 23)).toMatch(why));

  it('finds nothing odd in a full-scale reading', () => {
    expect(doubt({ test: 'neighbour', count: 22, readingA: 30, rangeA: 30 }, 23)).toBeNull();
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
