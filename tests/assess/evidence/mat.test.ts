import { describe, expect, it } from 'vitest';
import { canBeProven, matRestedOf } from '../../../src/assess/evidence/mat/ofAttempt.ts';
import { filmOf } from '../../../src/assess/film.ts';
import type { MatPart } from '../../../src/bench/action.ts';
import type { Finding } from '../../../src/bench/paper.ts';
import type { BrushPlateFault } from '../../../src/engine/parts/brushPlate.ts';
import type { FieldFrameFault } from '../../../src/engine/parts/fieldFrame.ts';
import type { JobOptions } from '../../support/benchDriver.ts';
import { attemptOf, library } from '../attempts.ts';
import { branch, finding, holder, PartsWorker } from '../partsWork.ts';

/** What own readings prove of field frame and brush plate. Right answers: common practice, no source. */

const frame = (...fieldFaults: FieldFrameFault[]): JobOptions => ({
  parts: ['fieldFrame'],
  tests: ['fieldContinuity', 'fieldInsulation'],
  fieldFaults,
});
const plate = (...plateFaults: BrushPlateFault[]): JobOptions => ({
  parts: ['brushPlate'],
  tests: ['plateInsulation', 'plateEarthed'],
  plateFaults,
});
const START = (options: JobOptions) => new PartsWorker(options).prepares();

function judged(me: PartsWorker, part: MatPart, ...findings: readonly Finding[]) {
  me.decides(part, findings, 'service');
  const film = filmOf(attemptOf(me.session, me.scenario, me.atMs + 500), library);
  expect(canBeProven(film.scenario.public, part)).toBe(true);
  return matRestedOf(film, part)!.judged;
}
const chance = (me: PartsWorker, part: MatPart, one: Finding) => judged(me, part, one).findings[0]!.place;

const open: FieldFrameFault = { kind: 'openCoil', coil: 3 };
const OPEN = finding('openCoil', branch(2));
const SOUND = finding('sound');

describe('a field frame', () => {
  it('is proven sound by all lamp tests, and not by half of them', () => {
    expect(judged(START(frame()).worksFrame(), 'fieldFrame', SOUND).judgement).toBe('proven');
    const half = START(frame()).getsLampReady('fieldFrame').testsContinuity().putsLampAway();
    expect(judged(half, 'fieldFrame', SOUND).judgement).toBe('rightNotProven');
  });

  it('grows more likely sound with each test that shows nothing', () => {
    const none = chance(START(frame()), 'fieldFrame', SOUND);
    const one = START(frame()).getsLampReady('fieldFrame').testsContinuity().putsLampAway();
    const all = START(frame()).worksFrame();
    const chances = [none, chance(one, 'fieldFrame', SOUND), chance(all, 'fieldFrame', SOUND)];
    expect(chances).toEqual([...chances].sort((a, b) => a - b));
    expect(chances[0]).toBeLessThan(0.55);
    expect(chances[1]).toBeGreaterThan(chances[0]! + 0.05);
    expect(chances[2]).toBeGreaterThan(0.95);
  });

  it('with an open branch is proven at that branch, and contradicted at the other or as sound', () => {
    const work = () => START(frame(open)).worksFrame();
    expect(judged(work(), 'fieldFrame', OPEN).judgement).toBe('proven');
    expect(judged(work(), 'fieldFrame', finding('openCoil', branch(1))).judgement).toBe('contradicted');
    expect(judged(work(), 'fieldFrame', SOUND).judgement).toBe('contradicted');
  });

  it('is never proven by a guess without readings', () => {
    for (const [faults, said] of [
      [[open], OPEN],
      [[], SOUND],
      [[{ kind: 'groundedCoil', coil: 0, fraction: 0.5, ohm: 1 }], finding('grounded')],
    ] as const) {
      const { judgement, findings } = judged(START(frame(...faults)), 'fieldFrame', said);
      expect(judgement).toBe('rightNotProven');
      expect(findings[0]!.place).toBeLessThan(0.55);
    }
  });

  it('hides its open branch behind brushes that touch: neither the branch nor soundness is proven', () => {
    const touching = () => {
      const me = START(frame(open)).placesArmature().takesUp('fieldFrame').switches('low').provesLamp();
      return me.testsContinuity().testsFieldInsulation().putsLampAway();
    };
    expect(judged(touching(), 'fieldFrame', OPEN).judgement).toBe('rightNotProven');
    const { judgement, findings } = judged(touching(), 'fieldFrame', SOUND);
    expect(judgement).toBe('wrong');
    expect(findings[0]!.place).toBeLessThan(0.95);
  });

  it('takes no dark lamp for a reading that no proof came after', () => {
    const unproved = START(frame(open)).getsLampReady('fieldFrame').testsContinuity();
    unproved.hangsUpBoth('lamp').switches('off');
    expect(judged(unproved, 'fieldFrame', OPEN).judgement).toBe('rightNotProven');
  });

  it('is no better known for the same reading taken three times', () => {
    const often = (times: number) => {
      const me = START(frame(open)).getsLampReady('fieldFrame');
      for (let nth = 0; nth < times; nth += 1) me.testsContinuity();
      return chance(me.putsLampAway(), 'fieldFrame', OPEN);
    };
    expect(often(3)).toBeCloseTo(often(1), 12);
  });

  it('with shorted turns is proven by the drops and by nothing less', () => {
    const short: JobOptions = {
      ...frame({ kind: 'shortedTurns', coil: 3, share: 0.4, ohm: 2e-5 }),
      tests: ['fieldContinuity', 'fieldInsulation', 'millivolt'],
    };
    const SHORT = finding('shortedCoil', branch(2));
    const lamp = START(short).worksFrame();
    expect(judged(lamp, 'fieldFrame', SHORT).judgement).toBe('rightNotProven');
    const both = START(short).worksFrame().liftsArmature().measuresDrops();
    expect(judged(both, 'fieldFrame', SHORT).judgement).toBe('proven');
  });

  it('with weak insulation is proven by the tester where the lamp stays dark', () => {
    const weak: JobOptions = {
      ...frame({ kind: 'weakInsulation', coil: 1, ohm: 2.4e5, breakdownV: null }),
      tests: ['fieldContinuity', 'fieldInsulation', 'megohm'],
    };
    const lamp = START(weak).worksFrame();
    expect(judged(lamp, 'fieldFrame', finding('poorInsulation')).judgement).toBe('rightNotProven');
    const both = START(weak).worksFrame().liftsArmature().measuresInsulation('fieldFrame');
    expect(judged(both, 'fieldFrame', finding('poorInsulation')).judgement).toBe('proven');
  });
});

describe('in assessed work', () => {
  it('what was written counts, and not what was shown', () => {
    const assessed: JobOptions = { ...frame(open), mode: 'assessed' };
    expect(judged(START(assessed).worksFrame(), 'fieldFrame', OPEN).judgement).toBe('proven');
    const silent = START(assessed).getsLampReady('fieldFrame');
    for (const at of ['field:brush1', 'field:brush2'] as const) silent.lampBetween('field:terminal', at);
    expect(judged(silent.putsLampAway(), 'fieldFrame', OPEN).judgement).toBe('rightNotProven');
    const unread = START(assessed).writes({ test: 'fieldContinuity', at: 'field:brush2', lamp: 'dark' });
    expect(judged(unread, 'fieldFrame', OPEN).judgement).toBe('rightNotProven');
  });
});

describe('a brush plate', () => {
  const rivet: BrushPlateFault = {
    kind: 'looseRivet',
    holder: 'plate:insulated1',
    makes: 'pressed',
    ohm: 0.3,
  };
  const RIVET = finding('looseRivet', holder('plate:insulated1'));

  it('is proven sound when every holder was leaned on too', () => {
    expect(judged(START(plate()).worksPlate(), 'brushPlate', SOUND).judgement).toBe('proven');
    const light = START(plate()).getsLampReady('brushPlate');
    light.testsInsulatedHolders(false).testsEarthedBrushes(false).putsLampAway();
    expect(judged(light, 'brushPlate', SOUND).judgement).toBe('rightNotProven');
  });

  it('shows a loose rivet at its holder and not at another', () => {
    const work = () => START(plate(rivet)).worksPlate();
    expect(judged(work(), 'brushPlate', RIVET).judgement).toBe('proven');
    const other = finding('looseRivet', holder('plate:insulated2'));
    expect(judged(work(), 'brushPlate', other).judgement).toBe('contradicted');
  });

  it('takes dirt and a broken-down insulator for one until it is cleaned, and no verdict that leaves a fault out', () => {
    const dirt: BrushPlateFault = { kind: 'dirt', holder: 'plate:insulated2', ohm: 200 };
    const DIRT = finding('bridgedBars', holder('plate:insulated2'));
    expect(judged(START(plate(dirt)).worksPlate(), 'brushPlate', DIRT).judgement).toBe('proven');
    const { judgement, missed } = judged(START(plate(dirt, rivet)).worksPlate(), 'brushPlate', DIRT);
    expect(judgement).toBe('rightNotProven');
    expect(missed.map(({ fault }) => fault)).toEqual([rivet]);
  });

  it('that was cleaned is judged as it came and as it lies: the better counts', () => {
    const dirt: BrushPlateFault = { kind: 'dirt', holder: 'plate:insulated2', ohm: 200 };
    const cleaned = () => {
      const me = START(plate(dirt)).worksPlate().liftsArmature();
      return me.does({ type: 'remedy.do', remedy: 'cleanPlateInsulation' });
    };
    const DIRT = finding('bridgedBars', holder('plate:insulated2'));
    expect(judged(cleaned(), 'brushPlate', DIRT).judgement).toBe('proven');
    expect(judged(cleaned(), 'brushPlate', SOUND).judgement).toBe('rightNotProven');
    const again = cleaned().worksPlate();
    expect(again.refused).toEqual([]);
    expect(judged(again, 'brushPlate', SOUND).judgement).toBe('proven');
  });
});
