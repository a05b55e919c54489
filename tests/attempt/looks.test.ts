import { describe, expect, it } from 'vitest';
import type { Clue } from '../../src/bench/observation.ts';
import type { Place } from '../../src/bench/places.ts';
import { BenchDriver, type JobOptions } from '../support/benchDriver.ts';

const SEEDS = Array.from({ length: 400 }, (_, seed) => seed);

/** Share of many parts with these faults that show the clue at the place. */
function share(job: JobOptions, place: Place, clue: Clue): number {
  const seen = SEEDS.filter((seed) => {
    const me = new BenchDriver({ parts: ['fieldFrame', 'brushPlate'], ...job, seed });
    me.takesUp(place.startsWith('field') ? 'fieldFrame' : 'brushPlate').looksAt(place);
    return me.sees.look?.sees.includes(clue);
  });
  return seen.length / SEEDS.length;
}

describe('the lens over field frame and brush plate', () => {
  it('sees a scorched wrapping often, not always, and now and then on a sound frame', () => {
    const shorted: JobOptions = { fieldFaults: [{ kind: 'shortedTurns', coil: 2, share: 0.3, ohm: 0.001 }] };
    expect(share(shorted, 'field:case', 'charredFieldCoil')).toBeGreaterThan(0.4);
    expect(share(shorted, 'field:case', 'charredFieldCoil')).toBeLessThan(0.75);
    expect(share({}, 'field:case', 'charredFieldCoil')).toBeGreaterThan(0);
    expect(share({}, 'field:case', 'charredFieldCoil')).toBeLessThan(0.15);
  });

  it('points to the holder of a loose rivet mostly, and to dirt on many a sound plate', () => {
    const loose: JobOptions = {
      plateFaults: [{ kind: 'looseRivet', holder: 'plate:earthed1', makes: 'released', ohm: 0.1 }],
    };
    expect(share(loose, 'plate:earthed1', 'looseRivet')).toBeGreaterThan(0.45);
    expect(share(loose, 'plate:earthed2', 'looseRivet')).toBeLessThan(0.15);
    expect(share({}, 'plate:metal', 'dirt')).toBeGreaterThan(0.1);
  });
});

describe('the lens after a remedy', () => {
  it('sees what was cleaned clean, and everything else as it was', () => {
    const job: JobOptions = {
      parts: ['brushPlate'],
      plateFaults: [
        { kind: 'dirt', holder: 'plate:insulated1', ohm: 100 },
        { kind: 'insulatorDown', holder: 'plate:insulated1', ohm: 100, breakdownV: null },
      ],
    };
    for (const seed of SEEDS.slice(0, 40)) {
      const me = new BenchDriver({ ...job, seed }).takesUp('brushPlate').looksAt('plate:insulated1');
      const before = me.sees.look!.sees;
      const after = me.cures('cleanPlateInsulation').looksAt('plate:insulated1').sees.look!.sees;
      expect(after).toEqual(before.filter((clue) => clue !== 'dirt'));
    }
  });

  it('sees no carbon between brushed bars, not even an everyday smear', () => {
    for (const seed of SEEDS.slice(0, 10)) {
      const me = new BenchDriver({ seed }).cures('brushBetweenBars');
      for (let bar = 0; bar < 23; bar += 1) {
        expect(me.looksAt(`bar:${bar}`).sees.look!.sees).not.toContain('carbonAcrossMica');
      }
    }
  });
});

describe('a bench nobody has touched', () => {
  it('shows the same whatever is hidden', () => {
    const shown: JobOptions = {
      parts: ['armature', 'fieldFrame', 'brushPlate'],
      tests: ['megohm', 'millivolt'],
    };
    const sound = new BenchDriver(shown).sees;
    const faulty = new BenchDriver({
      ...shown,
      faults: [{ kind: 'groundedBar', bar: 2, ohm: 0.5 }],
      fieldFaults: [{ kind: 'openCoil', coil: 0 }],
      plateFaults: [{ kind: 'brokenPigtail', holder: 'plate:earthed1' }],
      benchFaults: [{ kind: 'blownLamp' }, { kind: 'crackedHandle', lead: 'lamp.1' }],
      wear: { commutatorDiameterMm: 30, runOutMm: 0.3 },
      supplyReference: 'earthed',
      seed: 99,
    });
    expect(faulty.sees).toEqual(sound);
  });
});
