import { describe, expect, it } from 'vitest';
import { marksOf } from '../../src/assess/assess.ts';
import { PROVEN_ID } from '../../src/assess/diagnosis/proven.ts';
import { filmOf } from '../../src/assess/film.ts';
import type { Disposition, Finding } from '../../src/bench/paper.ts';
import type { FieldFrameFault } from '../../src/engine/parts/fieldFrame.ts';
import { BUILT_IN_RUBRIC, type Rubric, weightOf } from '../../src/scenario/public/rubric.ts';
import type { JobOptions } from '../support/benchDriver.ts';
import { attemptOf, library } from './attempts.ts';
import { branch, finding, PartsWorker, somewhere } from './partsWork.ts';

/** A field frame worked by the book; what its marks then are. Expected answers: common practice, no source. */
const FRAME: JobOptions = { parts: ['fieldFrame'] };
const frame = (...fieldFaults: FieldFrameFault[]): JobOptions => ({ ...FRAME, fieldFaults });

function worked(options: JobOptions): PartsWorker {
  const me = new PartsWorker(options).looksOver().worksFrame();
  expect(me.refused).toEqual([]);
  return me;
}

/** What is not earned in full with this verdict under work by the book. */
function lostWith(options: JobOptions, findings: readonly Finding[], disposition: Disposition): string[] {
  return worked(options).decides('fieldFrame', findings, disposition).lost();
}

const open: FieldFrameFault = { kind: 'openCoil', coil: 3 };
const grounded: FieldFrameFault = { kind: 'groundedCoil', coil: 0, fraction: 0.5, ohm: 0.5 };

describe('a field frame worked by the book', () => {
  it('wins every mark when sound and called sound', () => {
    const me = worked(FRAME).decides('fieldFrame', [finding('sound')], 'service');
    const { marks, earned, of } = me.marks();
    expect(marks.filter((mark) => mark.earned < mark.of)).toEqual([]);
    expect(earned).toBe(of);
    expect(marks.map(({ id }) => id)).toEqual([
      'lookedFirst',
      'placedOff',
      'cradleFilled',
      'lampProved',
      'fieldContinuityPass',
      'fieldInsulationPass',
      'leadsRight',
      'prepared',
      'safeHands',
      'keptCool',
      'notLeftOn',
      'recordedFirst',
      'fieldFrame.condition',
      'fieldFrame.place',
      'fieldFrame.disposition',
      'fieldFrame.supported',
      'fieldFrame.proven',
    ]);
    for (const mark of marks) {
      expect(mark.sentence).toMatch(/^[A-Z“].*\.$/);
      expect(mark.entries.length).toBeGreaterThan(0);
    }
    expect(marks.find(({ id }) => id === 'fieldFrame.condition')?.title).toBe('Field frame: condition named');
  });

  it('wins every mark for an open coil in its branch, sent to the winder', () => {
    expect(lostWith(frame(open), [finding('openCoil', branch(2))], 'winder')).toEqual([]);
  });

  it('may call it a broken joint where the card allows no looking: the lamp is dark for both', () => {
    const blind: JobOptions = { ...frame(open), tests: ['fieldContinuity', 'fieldInsulation'] };
    const me = new PartsWorker(blind).prepares().worksFrame();
    expect(me.decides('fieldFrame', [finding('brokenJoint', branch(2))], 'resolder').lost()).toEqual([]);
  });

  it('loses the place where the wrong branch or none is named', () => {
    expect(lostWith(frame(open), [finding('openCoil', branch(1))], 'winder')).toEqual(['fieldFrame.place']);
    expect(lostWith(frame(open), [finding('openCoil')], 'winder')).toEqual(['fieldFrame.place']);
  });

  it('loses condition, place and disposition where an open branch is called sound', () => {
    expect(lostWith(frame(open), [finding('sound')], 'service')).toEqual([
      'fieldFrame.condition',
      'fieldFrame.disposition',
      'fieldFrame.place',
    ]);
  });

  it('takes a ground as having no place the lamp could tell', () => {
    expect(lostWith(frame(grounded), [finding('grounded')], 'winder')).toEqual([]);
    expect(lostWith(frame(grounded), [finding('grounded')], 'replace')).toEqual([]);
    expect(lostWith(frame(grounded), [finding('grounded', branch(1))], 'winder')).toEqual([
      'fieldFrame.place',
    ]);
  });

  it('takes two grounds as one, and a ground beside an open branch as two findings', () => {
    const two = frame(grounded, { ...grounded, coil: 2 });
    expect(lostWith(two, [finding('grounded')], 'winder')).toEqual([]);
    expect(lostWith(frame(grounded, open), [finding('grounded')], 'winder')).toEqual([
      'fieldFrame.condition',
      'fieldFrame.place',
    ]);
  });
});

describe('a broken joint at a field brush', () => {
  const joint: FieldFrameFault = { kind: 'brushJoint', brush: 1, ohm: 'open' };
  const told = (clue: 'brokenPigtail' | null) =>
    // The seeds were looked for so that the lens shows the sign, or does not.
    Array.from({ length: 60 }, (_, seed) => seed).find((seed) => {
      const me = new PartsWorker({ ...frame(joint), seed }).takesUp('fieldFrame').looksAt('field:brush1');
      const sees = me.sees.look!.sees;
      return clue === null ? sees.length === 0 : sees.includes(clue);
    })!;

  it('may be called an open coil where the lens shows nothing, since the lamp is dark for both', () => {
    const options = { ...frame(joint), seed: told(null) };
    expect(lostWith(options, [finding('brokenJoint', branch(1))], 'resolder')).toEqual([]);
    expect(lostWith(options, [finding('openCoil', branch(1))], 'winder')).toEqual([]);
  });

  it('is half right as an open coil where the lens shows the torn pigtail', () => {
    const options = { ...frame(joint), seed: told('brokenPigtail') };
    expect(lostWith(options, [finding('brokenJoint', branch(1))], 'resolder')).toEqual([]);
    const { marks } = worked(options)
      .decides('fieldFrame', [finding('openCoil', branch(1))], 'winder')
      .marks();
    const earned = Object.fromEntries(marks.map(({ id, earned: points, of }) => [id, points / of]));
    expect(earned).toMatchObject({
      // Half of fifteen points, in whole ones.
      'fieldFrame.condition': 8 / 15,
      'fieldFrame.disposition': expect.closeTo(0.5, 1),
    });
  });

  it('is told from an open coil by the frame itself where all coils lie in series', () => {
    const series = { ...frame(joint), frame: 'field-all-in-series', seed: told(null) };
    expect(lostWith(series, [finding('brokenJoint', branch(1))], 'resolder')).toEqual([]);
    expect(lostWith(series, [finding('openCoil', branch(1))], 'winder')).toEqual([
      'fieldFrame.condition',
      'fieldFrame.disposition',
    ]);
    const coil = { ...frame({ kind: 'openCoil', coil: 1 }), frame: 'field-all-in-series' };
    expect(lostWith(coil, [finding('openCoil', somewhere)], 'winder')).toEqual([]);
  });
});

describe('field work done badly', () => {
  const verdict = (me: PartsWorker) => me.decides('fieldFrame', [finding('sound')], 'service');

  it('with the brushes touching shows no continuity', () => {
    const me = new PartsWorker(FRAME).looksOver();
    me.placesArmature().takesUp('fieldFrame').switches('low').provesLamp();
    me.testsContinuity().testsFieldInsulation().putsLampAway();
    expect(verdict(me).lost()).toEqual(['fieldContinuityPass', 'fieldFrame.supported']);
  });

  it('hides an open branch behind the good one', () => {
    const me = new PartsWorker(frame(open)).looksOver();
    me.placesArmature().takesUp('fieldFrame').switches('low').provesLamp();
    me.testsContinuity();
    expect(me.sees.lamp.glow).toBe(8);
  });

  it('at one brush only is half the work', () => {
    const me = new PartsWorker(FRAME).looksOver().getsLampReady('fieldFrame').testsContinuity();
    me.lampBetween('field:case', 'field:brush1');
    me.writes({ test: 'fieldInsulation', at: 'field:brush1', lamp: 'dark' }).putsLampAway();
    expect(verdict(me).lost()).toEqual(['fieldFrame.supported', 'fieldInsulationPass']);
  });

  it('11: on an empty cradle costs the cradle and nothing else', () => {
    const me = new PartsWorker(FRAME).looksOver().takesUp('fieldFrame').partsBrushes();
    me.switches('low').provesLamp().testsContinuity().testsFieldInsulation().putsLampAway();
    me.waits(1000).placesArmature();
    expect(me.everythingBroken).toEqual(['emptyCradle']);
    expect(verdict(me).lost()).toEqual(['cradleFilled']);
  });

  it('11: on an empty cradle until it trips stops the attempt', () => {
    const me = new PartsWorker(FRAME).looksOver().takesUp('fieldFrame').partsBrushes();
    me.switches('low').provesLamp().testsContinuity().waits(400_000);
    const { stoppedBy, marks } = me.marks();
    expect(stoppedBy?.breach.interlock).toBe('emptyCradleTrip');
    expect(marks.find(({ id }) => id === 'cradleFilled')?.earned).toBe(0);
  });

  it('1: with the lamp never proved costs the proof and nothing else', () => {
    const me = new PartsWorker(FRAME).looksOver().placesArmature().takesUp('fieldFrame').partsBrushes();
    me.switches('low').testsContinuity().testsFieldInsulation();
    me.hangsUpBoth('lamp').switches('off');
    expect(verdict(me).lost()).toEqual(['lampProved']);
  });

  it('8: with a hand on the case under a live probe stops the attempt', () => {
    const me = new PartsWorker(FRAME).looksOver().getsLampReady('fieldFrame');
    me.touches('lamp.1', 'field:case').hangsUp('lamp.2').joinsBrushes();
    const { stoppedBy, marks } = me.marks();
    expect(stoppedBy?.breach.interlock).toBe('liveMetal');
    expect(marks.find(({ id }) => id === 'safeHands')?.earned).toBe(0);
  });

  it('with the verdict before the sheet costs the record', () => {
    const me = new PartsWorker(FRAME).looksOver().getsLampReady('fieldFrame').testsContinuity();
    me.lampBetween('field:case', 'field:brush1');
    me.lampBetween('field:case', 'field:brush2');
    me.putsLampAway();
    expect(verdict(me).writes({ test: 'fieldInsulation', lamp: 'dark' }).lost()).toEqual(['recordedFirst']);
  });
});

describe('a threshold of a school’s own', () => {
  it('earns nothing for a test half done', () => {
    const criteria = BUILT_IN_RUBRIC.criteria.map((row) =>
      row.criterion === 'fieldInsulationPass' ? { ...row, threshold: 60 } : row,
    );
    const me = new PartsWorker(FRAME).looksOver().getsLampReady('fieldFrame').testsContinuity();
    me.lampBetween('field:case', 'field:brush1');
    me.putsLampAway().decides('fieldFrame', [finding('sound')], 'service');
    const film = filmOf(attemptOf(me.session, me.scenario, me.atMs), library);
    const earned = (rubric: Rubric) =>
      marksOf(film, rubric).marks.find(({ id }) => id === 'fieldInsulationPass')?.earned;
    expect([earned(BUILT_IN_RUBRIC), earned({ ...BUILT_IN_RUBRIC, criteria })]).toEqual([5, 0]);
  });
});

describe('a job on more than one part', () => {
  it('shares the weight of diagnosis among them', () => {
    const me = new PartsWorker({ parts: ['fieldFrame', 'brushPlate'] }).looksOver().worksFrame();
    me.putsBack('fieldFrame').worksPlate();
    me.decides('fieldFrame', [finding('sound')], 'service').decides(
      'brushPlate',
      [finding('sound')],
      'service',
    );
    const { marks } = me.marks();
    expect(me.refused).toEqual([]);
    expect(marks.filter(({ earned, of }) => earned < of)).toEqual([]);
    const diagnosis = marks.filter(({ group }) => group === 'diagnosis');
    // Half of what the rubric gives each, since there are two parts; of an odd point the first part has the larger half.
    const half = (part: string, whole: (points: number) => number) =>
      (['condition', 'place', 'disposition', 'supported'] as const).map((id) => [
        `${part}.${id}`,
        whole(weightOf(BUILT_IN_RUBRIC, id)! / 2),
      ]);
    const proven = weightOf(BUILT_IN_RUBRIC, PROVEN_ID)! / 2;
    expect(diagnosis.map(({ id, of }) => [id, of])).toEqual([
      ...half('fieldFrame', Math.ceil),
      ...half('brushPlate', Math.floor),
      ['fieldFrame.proven', Math.ceil(proven)],
      ['brushPlate.proven', Math.floor(proven)],
    ]);
  });

  it('with one verdict missing loses that part’s marks and its record', () => {
    const me = new PartsWorker({ parts: ['fieldFrame', 'brushPlate'] }).looksOver().worksFrame();
    me.putsBack('fieldFrame')
      .worksPlate()
      .decides('fieldFrame', [finding('sound')], 'service');
    expect(me.lost()).toEqual([
      'brushPlate.condition',
      'brushPlate.disposition',
      'brushPlate.place',
      'brushPlate.supported',
      'recordedFirst',
    ]);
  });
});
