import { describe, expect, it } from 'vitest';
import { assess } from '../../src/assess/assess.ts';
import { truthOfPart } from '../../src/assess/diagnosis/truth.ts';
import { conditionAfter, firstCondition } from '../../src/attempt/condition.ts';
import type { Disposition, Finding, FoundPlace } from '../../src/bench/paper.ts';
import type { ArmatureFault } from '../../src/engine/parts/armatureFault.ts';
import type { BrushPlateFault } from '../../src/engine/parts/brushPlate.ts';
import type { RemedyKind } from '../../src/engine/parts/remedies.ts';
import { limitsOf } from '../../src/scenario/public/limits.ts';
import { BUILT_IN_RUBRIC } from '../../src/scenario/public/rubric.ts';
import { type JobOptions, job, partType } from '../support/benchDriver.ts';
import { expertAttempt, library, scenarioWith } from './attempts.ts';
import { finding, holder, PartsWorker } from './partsWork.ts';
import { perform, refusals, type Step, step, stepsOf } from './script.ts';

/** Remedies and retests. What is right to say of a part that was cured: common practice, no source. */
const dirt: BrushPlateFault = { kind: 'dirt', holder: 'plate:insulated1', ohm: 40 };
const down: BrushPlateFault = { kind: 'insulatorDown', holder: 'plate:insulated1', ohm: 5, breakdownV: null };
const loose: BrushPlateFault = { kind: 'looseRivet', holder: 'plate:insulated2', makes: 'pressed', ohm: 0.5 };
const plate = (...plateFaults: BrushPlateFault[]): JobOptions => ({ parts: ['brushPlate'], plateFaults });

const found = (options: JobOptions) => new PartsWorker(options).looksOver().worksPlate();
const dirty = finding('bridgedBars', holder('plate:insulated1'));

describe('dirt on a brush plate, cleaned and tested again', () => {
  const cured = () => found(plate(dirt)).cures('cleanPlateInsulation').worksPlate();

  it.each<[string, readonly Finding[], Disposition]>([
    ['named for what it was', [dirty], 'service'],
    ['called sound, as it is now', [finding('sound')], 'service'],
  ])('wins every mark %s and put back into service', (_, findings, disposition) => {
    const me = cured().decides('brushPlate', findings, disposition);
    const { marks } = me.marks();
    expect(me.refused).toEqual([]);
    expect(marks.filter(({ earned, of }) => earned < of)).toEqual([]);
    expect(marks.map(({ id }) => id)).toEqual(
      expect.arrayContaining(['remedyAfterFinding', 'remedySafe', 'retested']),
    );
  });

  it('is half right to be cleaned and retested once more', () => {
    const { marks } = cured().decides('brushPlate', [dirty], 'cleanAndRetest').marks();
    const short = marks.filter(({ earned, of }) => earned < of);
    expect(short.map(({ id, earned, of }) => [id, earned / of])).toEqual([['brushPlate.disposition', 0.5]]);
  });

  it('loses the place where the wrong holder is named', () => {
    const wrong = finding('bridgedBars', holder('plate:insulated2'));
    expect(cured().decides('brushPlate', [wrong], 'service').lost()).toEqual(['brushPlate.place']);
  });

  it('loses for another fault than it had', () => {
    const wrong = finding('brokenJoint', holder('plate:earthed1'));
    expect(cured().decides('brushPlate', [wrong], 'service').lost()).toEqual([
      'brushPlate.condition',
      'brushPlate.place',
    ]);
  });

  it('without a retest is passed on a guess', () => {
    const me = found(plate(dirt)).cures('cleanPlateInsulation');
    expect(me.decides('brushPlate', [dirty], 'service').lost()).toEqual([
      'brushPlate.disposition',
      'brushPlate.supported',
      'retested',
    ]);
  });

  it('without a retest may honestly be left to one', () => {
    const me = found(plate(dirt)).cures('cleanPlateInsulation');
    expect(me.decides('brushPlate', [dirty], 'cleanAndRetest').lost()).toEqual([
      'brushPlate.supported',
      'retested',
    ]);
  });

  it('13: before any test hides the fault', () => {
    const me = new PartsWorker(plate(dirt)).looksOver().takesUp('brushPlate').cures('cleanPlateInsulation');
    me.worksPlate().decides('brushPlate', [finding('sound')], 'service');
    expect(me.lost()).toEqual(['remedyAfterFinding']);
  });

  it('13: on a sound plate was called for by nothing', () => {
    const me = found(plate()).cures('cleanPlateInsulation').worksPlate();
    const { marks } = me.decides('brushPlate', [finding('sound')], 'service').marks();
    const short = marks.filter(({ earned, of }) => earned < of);
    expect(short.map(({ id, earned, of }) => [id, earned / of])).toEqual([['remedyAfterFinding', 0.5]]);
  });

  it('not done at all costs nothing: the verdict asks for it', () => {
    expect(found(plate(dirt)).decides('brushPlate', [dirty], 'cleanAndRetest').lost()).toEqual([]);
  });

  it('with the bench on stops the attempt', () => {
    const me = found(plate(dirt)).switches('high').cures('cleanPlateInsulation');
    const { stoppedBy, marks } = me.marks();
    expect(stoppedBy?.breach.interlock).toBe('remedyLive');
    expect(marks.find(({ id }) => id === 'remedySafe')?.earned).toBe(0);
  });
});

describe('what cleaning leaves', () => {
  const cleaned = (...faults: BrushPlateFault[]) =>
    found(plate(...faults))
      .cures('cleanPlateInsulation')
      .worksPlate();

  it('on an insulator that is down is the insulator: no dirt any more, and nothing more to clean', () => {
    const right = finding('grounded', holder('plate:insulated1'));
    expect(cleaned(down).decides('brushPlate', [right], 'replace').lost()).toEqual([]);
    expect(cleaned(down).decides('brushPlate', [dirty], 'cleanAndRetest').lost()).toEqual([
      'brushPlate.condition',
      'brushPlate.disposition',
    ]);
  });

  it('of dirt over a failed insulator is the second of two findings, and the first need not be named', () => {
    const right = finding('grounded', holder('plate:insulated1'));
    expect(cleaned(dirt, down).decides('brushPlate', [right], 'replace').lost()).toEqual([]);
  });

  it('beside a loose rivet is the rivet, until it is tightened too', () => {
    const both = [dirty, finding('looseRivet', holder('plate:insulated2'))];
    expect(cleaned(dirt, loose).decides('brushPlate', both, 'cleanAndRetest').lost()).toEqual([]);
    const all = cleaned(dirt, loose).cures('tightenRivets').worksPlate();
    expect(all.decides('brushPlate', both, 'service').lost()).toEqual([]);
  });
});

/** What is right to say of an armature after some work, without working the bench for it. */
function after(options: JobOptions, ...work: readonly (readonly [RemedyKind, number?])[]) {
  const scenario = job({ tests: ['look', 'neighbour', 'strip', 'gauges'], ...options });
  const design = partType('lap-24');
  const limits = limitsOf(scenario.public, design);
  const condition = work.reduce(
    (now, [remedy, bar]) =>
      conditionAfter(now, { type: 'remedy.do', remedy, ...(bar === undefined ? {} : { bar }) }, limits),
    firstCondition(scenario.hidden, design.commutatorRadius),
  );
  return truthOfPart('armature', { scenario, design, condition });
}

describe('an armature after work', () => {
  const short: ArmatureFault = { kind: 'turnShort', coil: 4, turns: 1, ohm: 0.001 };
  const carbon: ArmatureFault = { kind: 'bridgedBars', bar: 4, ohm: 0.0005, by: 'carbon' };
  const only = (...args: Parameters<typeof after>) => {
    const [one, ...more] = after(...args);
    expect(more).toEqual([]);
    return one!;
  };

  it('whose short is left after saw or lathe has it in the winding', () => {
    const faults = { part: 'lap-24', faults: [short] } as const;
    expect(only(faults).expected.dispositions).toMatchObject({ cleanAndRetest: 1, winder: 1 });
    expect(only(faults, ['brushBetweenBars']).expected.dispositions.cleanAndRetest).toBe(1);
    const cut = only(faults, ['brushBetweenBars'], ['undercut']).expected;
    expect(cut.dispositions).toEqual({ winder: 1, replace: 0.5 });
    expect(cut.conditions.shortedCoil).toBe(1);
  });

  it('is cured of carbon by a brush, and of copper by a saw only', () => {
    expect(only({ part: 'lap-24', faults: [carbon] }, ['brushBetweenBars']).cured).toBe(true);
    const copper = { part: 'lap-24', faults: [{ ...carbon, by: 'copper' }] } as const;
    expect(only(copper, ['brushBetweenBars']).cured).toBe(false);
    expect(only(copper, ['undercut']).cured).toBe(true);
  });

  it('with both its risers made anew and a coil still open has an open coil', () => {
    const open: ArmatureFault = { kind: 'openCoil', coil: 4 };
    const end = (4 + partType('lap-24').commutatorPitch) % 24;
    const { conditions, dispositions } = only(
      { part: 'lap-24', faults: [open] },
      ['resolderRiser', 4],
      ['resolderRiser', end],
    ).expected;
    expect(conditions).toEqual({ openCoil: 1, badRiserJoint: 0.5 });
    expect(dispositions.resolder).toBeUndefined();
  });
});

describe('wear of an armature', () => {
  const fresh = 2000 * partType('lap-24').commutatorRadius;
  const limits = { commutatorDiameterMm: fresh - 1 };
  const worn = (wear: JobOptions['wear'], ...work: readonly (readonly [RemedyKind])[]) =>
    after({ part: 'lap-24', limits, ...(wear === undefined ? {} : { wear }) }, ...work);

  it('within the limits is nothing', () => {
    expect(worn({})).toEqual([]);
    expect(worn({ runOutMm: 0.054 })).toEqual([]);
  });

  it('below the diameter is scrap', () => {
    expect(worn({ commutatorDiameterMm: fresh - 1.2 })[0]!.expected.dispositions).toEqual({ replace: 1 });
  });

  it('that can be trued is trued, and cured by it', () => {
    expect(worn({ runOutMm: 0.1 })[0]).toMatchObject({
      expected: { conditions: { worn: 1 }, dispositions: { cleanAndRetest: 1 } },
      cured: false,
      toldBy: ['gauges'],
    });
    expect(worn({ runOutMm: 0.1 }, ['skimAndPolish'])[0]!.cured).toBe(true);
  });

  it('that has no metal left to be trued from is scrap', () => {
    const thin = { runOutMm: 0.1, commutatorDiameterMm: fresh - 0.9 };
    expect(worn(thin)[0]!.expected.dispositions).toEqual({ replace: 1, cleanAndRetest: 0.5 });
    expect(worn(thin, ['skimAndPolish'])[0]).toMatchObject({
      cured: false,
      expected: { dispositions: { replace: 1 } },
    });
  });

  it('of shallow mica is cut down', () => {
    expect(worn({ undercutMm: 0.1 }, ['undercut'])[0]!.cured).toBe(true);
  });
});

function still(one: Step): Step {
  const { action } = one;
  if (action.type !== 'sheet.write' || action.line.strip === undefined) return one;
  return { ...one, action: { ...action, line: { ...action.line, strip: 'still' } } };
}

describe('a bridge between bars, cured in a whole attempt', () => {
  const carbon: ArmatureFault = { kind: 'bridgedBars', bar: 7, ohm: 0.0005, by: 'carbon' };
  // A card without the gauges leaves the work to others: what is done here is written into the expert's script.
  // What the readings prove is weighed elsewhere, and takes its time.
  const criteria = BUILT_IN_RUBRIC.criteria.filter(({ criterion }) => criterion !== 'proven');
  const shown = { armature: 'lap-24', rubric: { ...BUILT_IN_RUBRIC, criteria } };
  const scenario = scenarioWith([carbon], shown);
  const steps = stepsOf(expertAttempt(scenario).attempt);
  const firstIs = (type: string) => steps.findIndex(({ action }) => action.type === type);
  const verdictAt = firstIs('verdict.write');
  const placedAt = firstIs('armature.place');
  const round = steps.slice(placedAt, verdictAt);
  const turned = round.reduce(
    (sum, { action }) => sum + (action.type === 'armature.turn' ? action.byDeg : 0),
    0,
  );
  /** The same tests once more, with the armature turned back to where they began, and a strip that lies still. */
  const again = [round[0]!, step({ type: 'armature.turn', byDeg: -turned }), ...round.slice(1).map(still)];
  const brush = step({ type: 'remedy.do', remedy: 'brushBetweenBars' });
  const pair: FoundPlace = { kind: 'pair', count: 4 };

  function decided(before: readonly Step[], findings: readonly Finding[], disposition: Disposition) {
    const verdict = steps[verdictAt]!.action;
    if (verdict.type !== 'verdict.write') throw new Error('the script has no verdict');
    const written = { ...verdict, verdict: { ...verdict.verdict, findings, disposition } };
    const attempt = perform(scenario, [...before, step(written), step({ type: 'job.handIn' })]);
    // The second round finds the range where the first has left it.
    expect(refusals(attempt).filter((one) => !one.startsWith('range.turn'))).toEqual([]);
    const { marks } = assess(attempt, library);
    return marks.filter(({ earned, of }) => earned < of).map(({ id }) => id);
  }

  it('wins every mark, named or called sound', () => {
    const whole = [...steps.slice(0, verdictAt), brush, ...again];
    expect(decided(whole, [finding('bridgedBars', pair)], 'service')).toEqual([]);
    expect(decided(whole, [finding('sound')], 'service')).toEqual([]);
  });

  it('14: condemned after all loses the disposition', () => {
    const whole = [...steps.slice(0, verdictAt), brush, ...again];
    expect(decided(whole, [finding('bridgedBars', pair)], 'winder')).toEqual(['disposition']);
  });

  it('13: with no retest loses for that', () => {
    const untested = [...steps.slice(0, verdictAt), brush];
    expect(decided(untested, [finding('bridgedBars', pair)], 'service')).toEqual([
      'retested',
      'disposition',
      'supported',
    ]);
  });

  it('13: cleaned before the test, there is nothing left to find', () => {
    const hidden = [...steps.slice(0, placedAt), brush, ...round.map(still)];
    expect(decided(hidden, [finding('sound')], 'service')).toEqual(['remedyAfterFinding']);
  });

  it('in the cradle costs the rule of taking it out first', () => {
    const out = [...steps].map(({ action }) => action.type).lastIndexOf('armature.lift');
    const inside = [
      ...steps.slice(0, out),
      brush,
      ...again.slice(1, again.length - (verdictAt - out)),
      ...steps.slice(out, verdictAt),
    ];
    expect(decided(inside, [finding('bridgedBars', pair)], 'service')).toEqual(['remedySafe']);
  });

  it('skimmed below the limit makes scrap of it, and only to replace it is right', () => {
    const thin = { commutatorDiameterMm: 2000 * library.get('lap-24')!.commutatorRadius - 0.1 };
    const spoiled = scenarioWith([carbon], { ...shown, limits: thin });
    const skim = step({ type: 'remedy.do', remedy: 'skimAndPolish' });
    const attempt = perform(spoiled, [
      ...steps.slice(0, verdictAt),
      skim,
      ...round,
      ...steps.slice(verdictAt),
    ]);
    const lost = assess(attempt, library)
      .marks.filter(({ earned, of }) => earned < of)
      .map(({ id }) => id);
    expect(lost).toEqual(['partSpared', 'condition', 'place', 'disposition']);
  });
});
