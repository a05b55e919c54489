import { describe, expect, it } from 'vitest';
import { contactsOf, gatherReadings, readingsFrom } from '../../../src/assess/evidence/index.ts';
import { filmOf } from '../../../src/assess/film.ts';
import type { Action } from '../../../src/bench/action.ts';
import type { SheetLine } from '../../../src/bench/paper.ts';
import type { ArmatureFault } from '../../../src/engine/parts/armatureFault.ts';
import { library, scenarioWith } from '../attempts.ts';
import { perform, refusals, type Step, step } from '../script.ts';

/** What becomes a reading on a real bench, and what does not. */
const take = (lead: 'ammeter.1' | 'ammeter.2' | 'lamp.1' | 'lamp.2') =>
  step({ type: 'lead.take', lead, grip: 'handle' });
const touch = (lead: 'ammeter.1' | 'ammeter.2' | 'lamp.1' | 'lamp.2', place: string, pauseMs = 400) =>
  step({ type: 'lead.touch', lead, place } as Action, pauseMs);
const lift = (lead: 'ammeter.1' | 'ammeter.2' | 'lamp.1' | 'lamp.2', pauseMs = 400) =>
  step({ type: 'lead.lift', lead }, pauseMs);
const write = (line: SheetLine, pauseMs = 400) => step({ type: 'sheet.write', line }, pauseMs);

const START = [step({ type: 'chalk.mark', bar: 0 }), step({ type: 'armature.place' })];
const METER = [
  ...START,
  step({ type: 'selector.turn', to: 'high' }),
  step({ type: 'range.turn', to: 15 }),
  take('ammeter.1'),
  take('ammeter.2'),
];
const LAMP = [...START, step({ type: 'selector.turn', to: 'low' }), take('lamp.1'), take('lamp.2')];
const PROVE = [
  touch('lamp.1', 'tip:lamp.2'),
  lift('lamp.1', 900),
  write({ test: 'look', count: null, remark: '.' }, 900),
];
const AWAY = [step({ type: 'lead.holster', lead: 'lamp.1' }), step({ type: 'lead.holster', lead: 'lamp.2' })];
const END = write({ test: 'look', count: null, remark: 'done' }, 900);

function gathered(steps: readonly Step[], faults: readonly ArmatureFault[] = []) {
  const attempt = perform(scenarioWith(faults), [...steps, END]);
  expect(refusals(attempt)).toEqual([]);
  return gatherReadings(filmOf(attempt, library));
}

/** Two bars within reach. */
const A = 'bar:14';
const B = 'bar:15';

describe('a contact of the ammeter', () => {
  it('is a reading once its needle is at rest, and only one however long it is held', () => {
    const settle = 4000;
    const hurried = [...METER, touch('ammeter.1', A), touch('ammeter.2', B), lift('ammeter.2', 300)];
    expect(gathered(hurried).contacts.meter).toEqual([]);
    const once = [...METER, touch('ammeter.1', A), touch('ammeter.2', B), lift('ammeter.2', settle)];
    const [reading, ...more] = gathered(once).contacts.meter;
    expect(reading).toMatchObject({ bars: [14, 15], excitation: 'high', rangeA: 15, pegged: false });
    expect(more).toEqual([]);
    const remark = write({ test: 'look', count: null, remark: 'still there' }, settle);
    const held = [
      ...METER,
      touch('ammeter.1', A),
      touch('ammeter.2', B),
      remark,
      remark,
      lift('ammeter.2', settle),
    ];
    expect(gathered(held).contacts.meter).toHaveLength(1);
  });

  it('made again is another reading', () => {
    const twice = [
      ...METER,
      touch('ammeter.1', A),
      touch('ammeter.2', B),
      lift('ammeter.2', 4000),
      touch('ammeter.2', B),
      lift('ammeter.2', 4000),
    ];
    expect(gathered(twice).contacts.meter).toHaveLength(2);
  });

  it('is taken on the range that shows it best', () => {
    const ranges = [
      ...METER,
      step({ type: 'range.turn', to: 100 }),
      touch('ammeter.1', A),
      touch('ammeter.2', B),
      write({ test: 'look', count: null, remark: 'on 100' }, 4000),
      lift('ammeter.2', 400),
    ];
    expect(gathered(ranges).contacts.meter.map(({ rangeA }) => rangeA)).toEqual([100]);
  });

  it('shows nothing with the bench off', () => {
    const off = [
      ...START,
      take('ammeter.1'),
      take('ammeter.2'),
      touch('ammeter.1', A),
      touch('ammeter.2', B),
      lift('ammeter.2', 4000),
    ];
    expect(gathered(off).contacts.meter).toEqual([]);
  });
});

describe('a lamp result', () => {
  const dark = [touch('lamp.1', 'shaft'), touch('lamp.2', A), lift('lamp.2', 900), lift('lamp.1')];

  it('that is dark counts between two proofs only', () => {
    const both = gathered([...LAMP, ...PROVE, ...dark, ...PROVE]);
    expect(both.contacts.lamp.map(({ shows }) => shows)).toEqual(['dark']);
    expect(both.contacts.unproved).toEqual([]);
    for (const steps of [
      [...LAMP, ...dark, ...PROVE],
      [...LAMP, ...PROVE, ...dark, ...AWAY, step({ type: 'selector.turn', to: 'off' })],
      [...LAMP, ...dark],
    ]) {
      const { lamp, unproved } = gathered(steps).contacts;
      expect(lamp).toEqual([]);
      expect(unproved).toHaveLength(1);
    }
  });

  it('that is lit proves itself', () => {
    const lit = gathered(
      [...LAMP, touch('lamp.1', 'shaft'), touch('lamp.2', A), lift('lamp.2', 1500)],
      [{ kind: 'groundedBar', bar: 3, ohm: 1 }],
    );
    expect(lit.contacts.lamp.map(({ shows, places }) => [shows, ...places])).toEqual([['lit', 'shaft', A]]);
  });
});

describe('the strip and the lens', () => {
  it('tell nothing new by being held or looked through again', () => {
    const strip = [
      ...START,
      step({ type: 'selector.turn', to: 'high' }),
      step({ type: 'strip.take' }),
      step({ type: 'strip.hold', angleDeg: 180, heightMm: 0.5 }),
      step({ type: 'strip.hold', angleDeg: 181, heightMm: 0.5 }, 500),
      step({ type: 'strip.away' }, 500),
      step({ type: 'strip.hold', angleDeg: 180, heightMm: 0.5 }),
      step({ type: 'strip.hold', angleDeg: 120, heightMm: 0.5 }, 500),
      step({ type: 'strip.hang' }, 500),
      step({ type: 'lens.look', place: 'riser:3' }),
      step({ type: 'lens.look', place: 'riser:3' }, 2000),
      step({ type: 'lens.look', place: 'bar:3' }, 2000),
    ];
    const { contacts } = gathered(strip);
    expect(contacts.strip.map(({ angleDeg }) => angleDeg)).toEqual([180, 120]);
    expect(contacts.looks.map(({ place }) => place)).toEqual(['riser:3', 'bar:3']);
  });
});

describe('what is written', () => {
  const read = [touch('ammeter.1', A), touch('ammeter.2', B)];

  it('is weighed instead of the needle in assessed work, and compared with it', () => {
    const line = { test: 'neighbour', count: 14, readingA: 9, rangeA: 15 } as const;
    const found = gathered([...METER, ...read, write(line, 4000), lift('ammeter.2')]);
    const [written] = found.written;
    const [shown] = readingsFrom(found, 'instrument');
    const [weighed] = readingsFrom(found, 'sheet');
    expect(weighed).toMatchObject({ kind: 'meter', bars: [14, 15], from: 'sheet' });
    expect(shown).toMatchObject({ kind: 'meter', bars: [14, 15], from: 'instrument' });
    expect(written!.off).toBeGreaterThan(0.05);
  });

  it('stands corrected by a later line about the same contact', () => {
    const line = { test: 'neighbour', count: 14, readingA: 9, rangeA: 15 } as const;
    const found = gathered([
      ...METER,
      ...read,
      write(line, 4000),
      write({ ...line, readingA: 5.2 }),
      lift('ammeter.2'),
    ]);
    const meter = readingsFrom(found, 'sheet').filter(({ kind }) => kind === 'meter');
    expect(meter).toHaveLength(1);
    expect(meter[0]!.entry).toBe(found.written[1]!.entry);
    expect(found.written.slice(0, 2).map(({ about }) => about)).toEqual([
      [found.contacts.meter[0]!.entry],
      [found.contacts.meter[0]!.entry],
    ]);
  });

  it('of a bar nobody measured weighs nothing', () => {
    const line = { test: 'neighbour', count: 2, readingA: 10.8, rangeA: 15 } as const;
    const found = gathered([...METER, ...read, write(line, 4000), lift('ammeter.2')]);
    expect(readingsFrom(found, 'sheet')).toEqual([]);
    expect(found.written[0]).toMatchObject({ weighed: [], about: [], off: null });
  });

  it('of a whole strip pass means felt somewhere, or nowhere', () => {
    const strip = [
      ...START,
      step({ type: 'selector.turn', to: 'high' }),
      step({ type: 'strip.take' }),
      step({ type: 'strip.hold', angleDeg: 180, heightMm: 0.5 }),
      step({ type: 'strip.hold', angleDeg: 120, heightMm: 0.5 }, 500),
      write({ test: 'strip', count: null, strip: 'still' }, 500),
    ];
    const [pass] = readingsFrom(gathered(strip), 'sheet');
    expect(pass).toMatchObject({ kind: 'stripPass', felt: false });
    expect(pass!.kind === 'stripPass' && pass!.places).toHaveLength(2);
  });
});

describe('a remedy', () => {
  it('ends the readings of the part as it came', () => {
    const later = [
      ...METER,
      touch('ammeter.1', A),
      touch('ammeter.2', B),
      lift('ammeter.2', 4000),
      step({ type: 'lead.holster', lead: 'ammeter.1' }),
      step({ type: 'lead.holster', lead: 'ammeter.2' }),
      step({ type: 'selector.turn', to: 'off' }),
      step({ type: 'armature.lift' }),
      step({ type: 'remedy.do', remedy: 'brushBetweenBars' }),
      step({ type: 'armature.place' }),
      step({ type: 'selector.turn', to: 'high' }),
      take('ammeter.1'),
      take('ammeter.2'),
      touch('ammeter.1', A),
      touch('ammeter.2', B),
      lift('ammeter.2', 4000),
    ];
    const attempt = perform(scenarioWith([]), [...later, END]);
    const film = filmOf(attempt, library);
    expect(contactsOf(film).meter).toHaveLength(2);
    expect(gatherReadings(film).contacts.meter).toHaveLength(1);
  });
});
