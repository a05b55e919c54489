import { describe, expect, it } from 'vitest';
import type { TestKind } from '../../src/bench/paper.ts';
import type { FieldFrameFault } from '../../src/engine/parts/fieldFrame.ts';
import type { JobOptions } from '../support/benchDriver.ts';
import { branch, finding, holder, PartsWorker } from './partsWork.ts';

/** Insulation tester, millivolt drop and gauges where the card allows them. Common practice, no source. */
const TESTS: readonly TestKind[] = [
  'look',
  'fieldContinuity',
  'fieldInsulation',
  'megohm',
  'millivolt',
  'gauges',
];
const frame = (more: JobOptions = {}): JobOptions => ({ parts: ['fieldFrame'], tests: TESTS, ...more });

/** Everything the card allows, in an order that has its reasons. */
function worked(options: JobOptions): PartsWorker {
  const me = new PartsWorker(options).looksOver().worksFrame();
  me.measuresInsulation('fieldFrame').measuresDrops().measuresBrushes('fieldFrame');
  expect(me.refused).toEqual([]);
  return me;
}

const weak: FieldFrameFault = { kind: 'weakInsulation', coil: 1, ohm: 300e3, breakdownV: null };
const shorted: FieldFrameFault = { kind: 'shortedTurns', coil: 3, share: 0.4, ohm: 1e-5 };

/** The first of some seeds with which the lens does, or does not, show a clue. */
function seedWith(options: JobOptions, clue: 'charredFieldCoil', wanted: boolean): number {
  return Array.from({ length: 60 }, (_, seed) => seed).find((seed) => {
    const me = new PartsWorker({ ...options, seed }).takesUp('fieldFrame').looksAt('field:case');
    return me.sees.look!.sees.includes(clue) === wanted;
  })!;
}

describe('a field frame with every tool on the card', () => {
  it('wins every mark when sound', () => {
    const { marks } = worked(frame())
      .decides('fieldFrame', [finding('sound')], 'service')
      .marks();
    expect(marks.filter(({ earned, of }) => earned < of)).toEqual([]);
    expect(marks.map(({ id }) => id)).toEqual(
      expect.arrayContaining(['megohmPass', 'testerSafe', 'millivoltPass', 'dropSafe', 'gaugesRead']),
    );
  });

  it('wins every mark for weak insulation that only the tester finds', () => {
    const me = worked(frame({ fieldFaults: [weak] }));
    expect(me.decides('fieldFrame', [finding('poorInsulation')], 'winder').lost()).toEqual([]);
  });

  it('15: loses for a frame passed because the lamp stayed dark when the tester was there to use', () => {
    const me = new PartsWorker(frame({ fieldFaults: [weak] })).looksOver().worksFrame();
    me.measuresDrops().measuresBrushes('fieldFrame');
    expect(me.decides('fieldFrame', [finding('sound')], 'service').lost()).toEqual([
      'fieldFrame.condition',
      'fieldFrame.disposition',
      'fieldFrame.place',
      'fieldFrame.supported',
      'megohmPass',
      'recordedFirst',
      'testerSafe',
    ]);
  });

  it('cannot ask for weak insulation where the card has no tester', () => {
    const me = new PartsWorker({ parts: ['fieldFrame'], fieldFaults: [weak] }).looksOver().worksFrame();
    expect(me.decides('fieldFrame', [finding('sound')], 'service').lost()).toEqual([]);
  });

  it('goes by the card’s own limit', () => {
    const fair: FieldFrameFault = { ...weak, ohm: 5e6 };
    const at = (insulationMohm: number) =>
      worked(frame({ fieldFaults: [fair], limits: { insulationMohm } }))
        .decides('fieldFrame', [finding('sound')], 'service')
        .lost();
    expect(at(1)).toEqual([]);
    expect(at(10)).toContain('fieldFrame.condition');
  });

  it('wins every mark for shorted turns by the drop of its branch', () => {
    const options = frame({ fieldFaults: [shorted] });
    const seed = seedWith(options, 'charredFieldCoil', true);
    const me = worked({ ...options, seed });
    expect(me.decides('fieldFrame', [finding('shortedCoil', branch(2))], 'winder').lost()).toEqual([]);
    const wrong = worked({ ...options, seed });
    expect(wrong.decides('fieldFrame', [finding('shortedCoil', branch(1))], 'winder').lost()).toEqual([
      'fieldFrame.place',
    ]);
  });

  it('takes the other branch’s joint for it where the lens shows nothing: two drops only differ', () => {
    const options = frame({ fieldFaults: [shorted] });
    const seed = seedWith(options, 'charredFieldCoil', false);
    const me = worked({ ...options, seed });
    expect(me.decides('fieldFrame', [finding('brokenJoint', branch(1))], 'resolder').lost()).toEqual([]);
  });

  it('takes short brushes as worn, beside nothing else', () => {
    const short = frame({ wear: { brushLengthsMm: [7, 14, 14, 14] } });
    expect(
      worked(short)
        .decides('fieldFrame', [finding('worn')], 'replace')
        .lost(),
    ).toEqual([]);
    expect(
      worked(short)
        .decides('fieldFrame', [finding('sound')], 'service')
        .lost(),
    ).toEqual(['fieldFrame.condition', 'fieldFrame.disposition', 'fieldFrame.place']);
    const elsewhere = frame({ wear: { brushLengthsMm: [14, 14, 7, 14] } });
    expect(
      worked(elsewhere)
        .decides('fieldFrame', [finding('sound')], 'service')
        .lost(),
    ).toEqual([]);
  });
});

describe('the tools used badly', () => {
  const sound = (me: PartsWorker) => me.decides('fieldFrame', [finding('sound')], 'service');

  it('the tester before the lamp costs its precautions and nothing else', () => {
    const me = new PartsWorker(frame()).looksOver().measuresInsulation('fieldFrame').worksFrame();
    me.measuresDrops().measuresBrushes('fieldFrame');
    expect(sound(me).lost()).toEqual(['testerSafe']);
  });

  it('the part left charged costs them too', () => {
    const me = new PartsWorker(frame()).looksOver().worksFrame();
    me.measuresDrops().measuresBrushes('fieldFrame');
    me.clipsOn('tester', 'field:case', 'field:brush1').testsInsulation();
    me.hangsUpBoth('tester').writes({ test: 'megohm', part: 'fieldFrame', megohms: 50, testVolt: 250 });
    expect(sound(me).lost()).toEqual(['testerSafe']);
  });

  it('the button let go before the display stood still is no reading', () => {
    const me = new PartsWorker(frame())
      .looksOver()
      .worksFrame()
      .measuresDrops()
      .measuresBrushes('fieldFrame');
    me.clipsOn('tester', 'field:case', 'field:brush1').presses(true).waits(500).presses(false).discharges();
    me.hangsUpBoth('tester').writes({ test: 'megohm', part: 'fieldFrame', megohms: 20, testVolt: 250 });
    expect(sound(me).lost()).toEqual(['fieldFrame.supported', 'megohmPass']);
  });

  it('the growler left on costs the tester’s and the feed’s precautions', () => {
    const me = new PartsWorker(frame()).looksOver().worksFrame().measuresBrushes('fieldFrame');
    me.switches('high').measuresInsulation('fieldFrame').measuresDrops().switches('off');
    expect(sound(me).lost()).toEqual(['dropSafe', 'testerSafe']);
  });

  it('a gauge put on with the bench on costs the bench left on', () => {
    const me = new PartsWorker(frame())
      .looksOver()
      .worksFrame()
      .measuresInsulation('fieldFrame')
      .measuresDrops();
    me.switches('high').measuresBrushes('fieldFrame').switches('off');
    expect(sound(me).lost()).toEqual(['notLeftOn']);
  });

  it('one branch alone gives the drop nothing to be compared with', () => {
    const me = new PartsWorker(frame()).looksOver().worksFrame().measuresInsulation('fieldFrame');
    me.measuresBrushes('fieldFrame');
    me.feeds('field:terminal', 'field:brush1').holdsOn('drop', 'field:terminal', 'field:brush1').waits(500);
    me.writes({ test: 'millivolt', at: 'field:brush1', millivolts: 13.5 }).hangsUpBoth('drop').unfeeds();
    expect(sound(me).lost()).toEqual(['fieldFrame.supported', 'millivoltPass']);
  });
});

describe('a brush plate with the tester on the card', () => {
  const options = (ohm: number): JobOptions => ({
    parts: ['brushPlate'],
    tests: ['look', 'plateInsulation', 'plateEarthed', 'megohm'],
    plateFaults: [{ kind: 'dirt', holder: 'plate:insulated2', ohm }],
  });

  it('wins every mark for dirt too thin for the lamp', () => {
    const me = new PartsWorker(options(300e3)).looksOver().worksPlate().measuresInsulation('brushPlate');
    const found = finding('poorInsulation', holder('plate:insulated2'));
    expect(me.decides('brushPlate', [found], 'cleanAndRetest').lost()).toEqual([]);
  });

  it('loses half the measuring with one holder left out', () => {
    const me = new PartsWorker(options(900e6)).looksOver().worksPlate();
    me.clipsOn('tester', 'plate:metal', 'plate:insulated1').testsInsulation();
    me.discharges().hangsUpBoth('tester').writes({ test: 'megohm', part: 'brushPlate', megohms: 400 });
    const { marks } = me.decides('brushPlate', [finding('sound')], 'service').marks();
    expect(marks.filter(({ earned, of }) => earned < of).map(({ id, earned }) => [id, earned])).toEqual([
      ['megohmPass', 4],
      ['brushPlate.supported', expect.any(Number)],
      // The holder left out may leak where the lamp stays dark.
      ['brushPlate.proven', expect.any(Number)],
    ]);
  });
});
