import { describe, expect, it } from 'vitest';
import { isAbout, toldByTests } from '../../src/assess/toldByTests.ts';
import { ATTEMPT_FORMAT, ATTEMPT_VERSION, type Attempt } from '../../src/attempt/entry.ts';
import type { SheetLine } from '../../src/bench/paper.ts';
import { BenchDriver, type JobOptions, job, PARTS } from '../support/benchDriver.ts';

/** An attempt in which nothing was done but the work named. */
function attemptAt(options: JobOptions, work: (me: BenchDriver) => void = () => {}): Attempt {
  const scenario = job(options);
  const me = new BenchDriver({ scenario });
  work(me);
  return {
    format: ATTEMPT_FORMAT,
    version: ATTEMPT_VERSION,
    id: 'told',
    mode: 'practice',
    learner: '',
    startedAt: '2026-03-02T08:40:00Z',
    scenario,
    entries: me.session.log,
    endMs: me.atMs,
  };
}

const MAT: JobOptions = {
  parts: ['fieldFrame', 'brushPlate'],
  tests: ['fieldContinuity', 'fieldInsulation', 'plateInsulation', 'plateEarthed', 'megohm', 'millivolt'],
};
const at = (told: ReturnType<typeof toldByTests>, test: string, place: string) =>
  told.find(({ about }) => about.test === test && about.at === place)!;

describe('what the tests tell of a part', () => {
  it('is the same as of a sound one where nothing is wrong', () => {
    const told = toldByTests(attemptAt(MAT), PARTS);
    expect(told.length).toBe(13);
    for (const { sound, cameIn, afterWork } of told) {
      expect(cameIn).toEqual(sound);
      expect(afterWork).toBeUndefined();
    }
    const lamps = told.flatMap(({ about, sound }) => (sound.lamp ? [`${about.test} ${sound.lamp}`] : []));
    expect([...new Set(lamps)]).toEqual([
      'fieldContinuity lit',
      'fieldInsulation dark',
      'plateInsulation dark',
      'plateEarthed lit',
    ]);
  });

  it('differs where a branch is open, a coil grounded, turns shorted', () => {
    const told = toldByTests(
      attemptAt({
        ...MAT,
        fieldFaults: [
          { kind: 'openCoil', coil: 0 },
          { kind: 'groundedCoil', coil: 3, fraction: 0.5, ohm: 0.2 },
        ],
      }),
      PARTS,
    );
    expect(at(told, 'fieldContinuity', 'field:brush1').cameIn.lamp).toBe('dark');
    expect(at(told, 'fieldContinuity', 'field:brush2').cameIn.lamp).toBe('lit');
    expect(at(told, 'fieldInsulation', 'field:brush2').cameIn.lamp).toBe('lit');
    expect(at(told, 'millivolt', 'field:brush1').cameIn.remark).toMatch(/beyond|no drop/);
    const short = { kind: 'shortedTurns', coil: 2, share: 0.5, ohm: 1e-5 } as const;
    const drops = toldByTests(attemptAt({ ...MAT, fieldFaults: [short] }), PARTS);
    const { sound, cameIn } = at(drops, 'millivolt', 'field:brush2');
    expect(cameIn.millivolts).toBeLessThan(0.9 * sound.millivolts!);
  });

  it('says what a loose rivet does when it is leaned on, and that tightening cured it', () => {
    const rivet = { kind: 'looseRivet', holder: 'plate:insulated2', makes: 'pressed', ohm: 0.3 } as const;
    const attempt = attemptAt({ ...MAT, plateFaults: [rivet] }, (me) => {
      me.takesUp('brushPlate').cures('tightenRivets');
      expect(me.refusal).toBeNull();
    });
    const { cameIn, afterWork } = at(toldByTests(attempt, PARTS), 'plateInsulation', 'plate:insulated2');
    expect(cameIn).toEqual({ lamp: 'dark', remark: 'lit when leaned on' });
    expect(afterWork).toEqual({ lamp: 'dark' });
  });

  it('is told on a bench in good order, whatever the learner’s own had', () => {
    const told = toldByTests(attemptAt({ ...MAT, benchFaults: [{ kind: 'blownLamp' }] }), PARTS);
    expect(at(told, 'fieldContinuity', 'field:brush1').cameIn.lamp).toBe('lit');
  });

  it('measures the parts before and after work', () => {
    const worn = {
      parts: ['armature', 'brushPlate'],
      tests: ['gauges', 'megohm'],
      wear: { undercutMm: 0.1 },
    };
    const attempt = attemptAt(worn as JobOptions, (me) => void me.cures('undercut'));
    const depth = toldByTests(attempt, PARTS).find(({ about }) => about.gauge === 'undercut')!;
    expect(depth.cameIn.millimetres).toBeCloseTo(0.1, 6);
    expect(depth.afterWork?.millimetres).toBeGreaterThan(0.5);
  });
});

it('finds the lines a learner wrote about the same thing', () => {
  const about: SheetLine = { test: 'megohm', part: 'brushPlate', count: null, at: 'plate:insulated1' };
  expect(isAbout({ ...about, megohms: 3, testVolt: 250 }, about)).toBe(true);
  expect(isAbout({ ...about, at: 'plate:insulated2', megohms: 3 }, about)).toBe(false);
  expect(isAbout({ test: 'megohm', count: null, megohms: 3 }, about)).toBe(false);
  const lamp: SheetLine = { test: 'plateEarthed', count: null, at: 'plate:earthed1', lamp: 'lit' };
  expect(isAbout(lamp, { test: 'plateEarthed', part: 'brushPlate', count: null, at: 'plate:earthed1' })).toBe(
    true,
  );
});
