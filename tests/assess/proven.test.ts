import { describe, expect, it } from 'vitest';
import { marksOf } from '../../src/assess/assess.ts';
import { PROVEN_ID } from '../../src/assess/diagnosis/proven.ts';
import { judgeRested, restedOf } from '../../src/assess/evidence/index.ts';
import { filmOf } from '../../src/assess/film.ts';
import type { Finding, TestKind } from '../../src/bench/paper.ts';
import type { ArmatureFault } from '../../src/engine/parts/armatureFault.ts';
import type { Scenario } from '../../src/scenario/scenario.ts';
import { expertAttempt, library, scenarioWith } from './attempts.ts';
import { perform, type Step, stepsOf } from './script.ts';

/**
 * Scripted learners at one job, a bad joint: what their marks and what their own readings say of them. Each does what
 * the expert does, less what that learner leaves out.
 */
const fault: ArmatureFault = { kind: 'riserJoint', bar: 8, form: 'bar', ohm: 0.03 };
const job = scenarioWith([fault]);
const steps = stepsOf(expertAttempt(job).attempt);
/** The expert chalks bar 3 and finds the joint at bar 8. */
const RIGHT: Finding = { condition: 'badRiserJoint', place: { kind: 'bar', count: 5 } };

function worked(done: readonly Step[], scenario: Scenario = job) {
  const film = filmOf(perform(scenario, done), library);
  const { marks, earned, of, stoppedBy } = marksOf(film);
  const mark = marks.find(({ id }) => id === PROVEN_ID)!;
  const rested = restedOf(film);
  return { mark, share: earned / of, stoppedBy, judged: rested && judgeRested(film, rested) };
}

const saying = (done: readonly Step[], ...findings: readonly Finding[]): Step[] =>
  done.map((one) =>
    one.action.type === 'verdict.write'
      ? { ...one, action: { ...one.action, verdict: { ...one.action.verdict, findings } } }
      : one,
  );

/** Nothing of what some tests showed gets written down. */
function unwritten(done: readonly Step[], ...tests: readonly TestKind[]): Step[] {
  return done.map((one) =>
    one.action.type === 'sheet.write' && tests.includes(one.action.line.test)
      ? { ...one, action: { type: 'sheet.write', line: { test: 'look', count: null, remark: 'read' } } }
      : one,
  );
}

const paperwork = steps.filter(({ action: { type } }) => type === 'verdict.write' || type === 'job.handIn');
const chalk = steps.filter(({ action: { type } }) => type === 'chalk.mark');

describe('five learners at a bad joint', () => {
  it('the expert proves it', () => {
    const { mark, share, judged } = worked(steps);
    expect(judged).toMatchObject({ judgement: 'proven', missed: [] });
    expect(mark).toMatchObject({ earned: mark.of, entries: [steps.length - 2] });
    expect(share).toBe(1);
  });

  it('the careless one reads three pairs and trusts to luck: marks are lost, and the verdict is not proven', () => {
    const lines = steps.flatMap(({ action }, at) =>
      action.type === 'sheet.write' && action.line.readingA !== undefined ? [at] : [],
    );
    const few = [...steps.slice(0, lines[2]! + 1), ...paperwork];
    const { mark, share, judged } = worked(few);
    expect(judged?.judgement).toBe('rightNotProven');
    expect(mark.earned).toBeLessThan(mark.of / 2);
    expect(share).toBeLessThan(0.6);
  });

  it.each([
    ['right', RIGHT],
    ['sound', { condition: 'sound', place: { kind: 'somewhere' } }],
  ] as const)('the lucky guesser who says %s with no reading proves nothing', (_, finding) => {
    const { mark, judged } = worked(saying([...chalk, ...paperwork], finding));
    expect(judged?.judgement).not.toBe('proven');
    expect(mark.earned / mark.of).toBeLessThan(0.05);
  });

  it('the lucky guesser who only looks proves nothing either', () => {
    const from = steps.findIndex(({ action: { type } }) => type === 'armature.place');
    const { judged, mark } = worked(saying([...steps.slice(0, from), ...paperwork], RIGHT));
    expect(judged?.judgement).toBe('rightNotProven');
    expect(mark.earned / mark.of).toBeLessThan(0.3);
  });

  it('the dangerous one may have proven it and is stopped all the same', () => {
    const at = steps.findIndex(({ action: { type } }) => type === 'verdict.write');
    const live: Step[] = [
      { action: { type: 'armature.place' }, pauseMs: 500 },
      { action: { type: 'selector.turn', to: 'high' }, pauseMs: 500 },
      { action: { type: 'armature.lift' }, pauseMs: 500 },
    ];
    const { stoppedBy } = worked([...steps.slice(0, at + 1), ...live]);
    expect(stoppedBy?.breach).toMatchObject({ interlock: 'liftedLive', critical: true });
  });

  it('the thorough one who is wrong goes against the own readings', () => {
    const wrong: Finding = { condition: 'badRiserJoint', place: { kind: 'bar', count: 12 } };
    const { mark, judged } = worked(saying(steps, wrong));
    expect(judged?.judgement).toBe('contradicted');
    expect(mark).toMatchObject({ earned: 0 });
    expect(mark.sentence).toMatch(/goes against your own readings/);
    expect(
      worked(saying(steps, { condition: 'sound', place: { kind: 'somewhere' } })).judged?.judgement,
    ).toBe('contradicted');
  });
});

describe('what counts as read', () => {
  it('in practice is the needle, in assessed work what was written', () => {
    const silent = unwritten(steps, 'neighbour', 'spaced');
    expect(worked(silent).judged?.judgement).toBe('proven');
    const assessed = scenarioWith([fault], { mode: 'assessed' });
    expect(worked(silent, assessed).judged?.judgement).not.toBe('proven');
    expect(worked(steps, assessed).judged?.judgement).toBe('proven');
  });

  it('is nothing that comes after the verdict', () => {
    const verdict = steps.filter(({ action: { type } }) => type === 'verdict.write');
    const rest = steps.filter(({ action: { type } }) => type !== 'verdict.write' && type !== 'chalk.mark');
    expect(worked([...chalk, ...verdict, ...rest]).judged?.judgement).toBe('rightNotProven');
  });
});
