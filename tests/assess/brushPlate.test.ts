import { describe, expect, it } from 'vitest';
import type { Disposition, Finding } from '../../src/bench/paper.ts';
import type { BrushPlateFault } from '../../src/engine/parts/brushPlate.ts';
import type { JobOptions } from '../support/benchDriver.ts';
import { finding, holder, PartsWorker } from './partsWork.ts';

/** A brush plate worked by the book; what its marks then are. Expected answers: common practice, no source. */
const plate = (...plateFaults: BrushPlateFault[]): JobOptions => ({ parts: ['brushPlate'], plateFaults });

function worked(options: JobOptions): PartsWorker {
  const me = new PartsWorker(options).looksOver().worksPlate();
  expect(me.refused).toEqual([]);
  return me;
}

function lostWith(options: JobOptions, findings: readonly Finding[], disposition: Disposition): string[] {
  return worked(options).decides('brushPlate', findings, disposition).lost();
}

const dirt: BrushPlateFault = { kind: 'dirt', holder: 'plate:insulated1', ohm: 40 };
const down: BrushPlateFault = {
  kind: 'insulatorDown',
  holder: 'plate:insulated2',
  ohm: 5,
  breakdownV: null,
};
const torn: BrushPlateFault = { kind: 'brokenPigtail', holder: 'plate:earthed1' };
const loose: BrushPlateFault = {
  kind: 'looseRivet',
  holder: 'plate:insulated2',
  makes: 'pressed',
  ohm: 0.5,
};
const looseEarthed: BrushPlateFault = { ...loose, holder: 'plate:earthed2', makes: 'released' };

describe('a brush plate worked by the book', () => {
  it('wins every mark when sound and called sound', () => {
    const { marks } = worked(plate())
      .decides('brushPlate', [finding('sound')], 'service')
      .marks();
    expect(marks.filter(({ earned, of }) => earned < of)).toEqual([]);
    expect(marks.map(({ id }) => id)).toEqual(
      expect.arrayContaining(['plateInsulationPass', 'plateEarthedPass', 'brushPlate.condition']),
    );
  });

  it.each<[string, BrushPlateFault, Finding, Disposition]>([
    ['dirt', dirt, finding('bridgedBars', holder('plate:insulated1')), 'cleanAndRetest'],
    ['an insulator down', down, finding('grounded', holder('plate:insulated2')), 'replace'],
    ['a torn pigtail', torn, finding('brokenJoint', holder('plate:earthed1')), 'resolder'],
    ['a loose rivet', loose, finding('looseRivet', holder('plate:insulated2')), 'cleanAndRetest'],
    [
      'a loose earthed rivet',
      looseEarthed,
      finding('looseRivet', holder('plate:earthed2')),
      'cleanAndRetest',
    ],
  ])('wins every mark for %s named', (_, fault, found, disposition) => {
    expect(lostWith(plate(fault), [found], disposition)).toEqual([]);
  });

  it('takes an insulator that is down for dirt until it has been cleaned, and cleaning as right', () => {
    const seed = Array.from({ length: 60 }, (_, one) => one).find((one) => {
      const me = new PartsWorker({ ...plate(down), seed: one }).takesUp('brushPlate');
      return !me.looksAt('plate:insulated2').sees.look!.sees.includes('darkenedInsulator');
    })!;
    const found = finding('bridgedBars', holder('plate:insulated2'));
    expect(lostWith({ ...plate(down), seed }, [found], 'cleanAndRetest')).toEqual([]);
  });

  it('loses everything about a plate called sound that is not, but for what it rests on', () => {
    for (const fault of [dirt, down, torn, loose, looseEarthed])
      expect(lostWith(plate(fault), [finding('sound')], 'service')).toEqual([
        'brushPlate.condition',
        'brushPlate.disposition',
        'brushPlate.place',
      ]);
  });

  it('loses the place for the wrong holder', () => {
    const found = finding('bridgedBars', holder('plate:insulated2'));
    expect(lostWith(plate(dirt), [found], 'cleanAndRetest')).toEqual(['brushPlate.place']);
  });

  it('loses the disposition for a plate thrown away for dirt', () => {
    const found = finding('bridgedBars', holder('plate:insulated1'));
    expect(lostWith(plate(dirt), [found], 'replace')).toEqual(['brushPlate.disposition']);
  });

  it('asks for both of two faults', () => {
    const both = [
      finding('bridgedBars', holder('plate:insulated1')),
      finding('brokenJoint', holder('plate:earthed1')),
    ];
    expect(lostWith(plate(dirt, torn), both, 'resolder')).toEqual([]);
    expect(lostWith(plate(dirt, torn), both.slice(0, 1), 'resolder')).toEqual([
      'brushPlate.condition',
      'brushPlate.place',
    ]);
  });

  it('cannot ask for a torn pigtail that no lamp shows, and takes it where the lens gave it away', () => {
    const hidden = plate({ kind: 'brokenPigtail', holder: 'plate:insulated1' });
    expect(lostWith(hidden, [finding('sound')], 'service')).toEqual([]);
    expect(lostWith(hidden, [finding('brokenJoint', holder('plate:insulated1'))], 'replace')).toEqual([]);
  });
});

describe('plate work done badly', () => {
  const sound = (me: PartsWorker) => me.decides('brushPlate', [finding('sound')], 'service');
  const begun = (options: JobOptions) => new PartsWorker(options).looksOver().getsLampReady('brushPlate');

  it('with nobody leaning on the holders is half a test', () => {
    const me = begun(plate()).testsInsulatedHolders(false).testsEarthedBrushes(false).putsLampAway();
    const { marks } = sound(me).marks();
    const half = marks.filter(({ earned, of }) => earned < of);
    expect(half.map(({ id, earned, of }) => [id, earned / of])).toEqual([
      ['plateInsulationPass', 0.5],
      ['plateEarthedPass', 0.5],
      ['brushPlate.supported', expect.closeTo(2 / 3, 1)],
      // A rivet that only moves when it is leaned on may still be loose.
      ['brushPlate.proven', expect.closeTo(0.3, 1)],
    ]);
    expect(half[0]!.sentence).toMatch(/loose rivet/);
  });

  it('passes a loose rivet that way, and loses for it', () => {
    const me = begun(plate(loose)).testsInsulatedHolders(false).testsEarthedBrushes().putsLampAway();
    expect(sound(me).lost()).toEqual([
      'brushPlate.condition',
      'brushPlate.disposition',
      'brushPlate.place',
      'brushPlate.supported',
      'plateInsulationPass',
    ]);
  });

  it('at the insulated holders only leaves the earthed ones undone', () => {
    const me = begun(plate()).testsInsulatedHolders().putsLampAway();
    expect(sound(me).lost()).toEqual(['brushPlate.supported', 'plateEarthedPass', 'recordedFirst']);
  });

  it('with the part not looked at before power costs the look', () => {
    const me = new PartsWorker(plate()).prepares().worksPlate().looksOver(false);
    expect(sound(me).lost()).toEqual(['lookedFirst']);
  });
});
