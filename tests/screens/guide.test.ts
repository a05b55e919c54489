import { describe, expect, it } from 'vitest';
import { assess } from '../../src/assess/assess.ts';
import type { Attempt } from '../../src/attempt/entry.ts';
import type { SheetLine, TestKind, Verdict } from '../../src/bench/paper.ts';
import { jobOf } from '../../src/scenario/public/view.ts';
import { atHand } from '../../src/screens/apprentice/bench/atHand.ts';
import { fold, type Known, NOTHING_KNOWN } from '../../src/screens/apprentice/bench/guide/known.ts';
import { nextStep } from '../../src/screens/apprentice/bench/guide/next.ts';
import type { Situation, Step } from '../../src/screens/apprentice/bench/guide/step.ts';
import { nearestReading } from '../../src/screens/apprentice/bench/reading.ts';
import { BenchDriver, type JobOptions, job as jobFile, PARTS } from '../support/benchDriver.ts';

/** More steps than any job needs; a guide that goes round in circles runs into it. */
const MOST_STEPS = 1500;

const VERDICT: Verdict = {
  part: 'armature',
  findings: [{ condition: 'notTested', place: { kind: 'somewhere' } }],
  disposition: 'service',
  sure: 0.5,
  because: '',
};

/** A beginner who does exactly what the guide says, on a bench that refuses what is dangerous. */
class Beginner {
  readonly scenario;
  readonly me;
  readonly job;
  readonly lines: SheetLine[] = [];
  readonly said: string[] = [];
  known: Known = NOTHING_KNOWN;

  constructor(options: JobOptions) {
    this.scenario = jobFile({ ...options, mode: 'guided' });
    this.me = new BenchDriver({ scenario: this.scenario, mode: 'guided' });
    this.job = jobOf(this.scenario, PARTS);
  }

  get at(): Situation {
    this.known = fold(this.known, this.me.sees, this.job.armature);
    return { job: this.job, seen: this.me.sees, lines: this.lines, verdict: null, known: this.known };
  }

  follow(): this {
    for (let n = 0; n < MOST_STEPS; n += 1) {
      const step = nextStep(this.at);
      this.said.push(step.say);
      if (step.say.includes('verdict')) return this;
      this.take(step);
    }
    throw new Error(`still at it after ${MOST_STEPS} steps: ${this.said.slice(-6).join(' / ')}`);
  }

  private take(step: Step): void {
    expect(step.why.length, step.say).toBeGreaterThan(20);
    if (step.act) {
      this.me.does(step.act, 700);
      expect(this.me.refusal, `${step.say} (${JSON.stringify(step.act)})`).toBeNull();
    } else if (step.write) this.write(step.write);
    else this.me.waits(2500);
    this.me.waits(500);
  }

  private write(test: TestKind): void {
    const { seen, job } = this.at;
    const here = atHand(seen, job.armature);
    const count = here?.test === test ? here.count : null;
    const line: SheetLine = { test, count, ...this.result(test) };
    this.me.does({ type: 'sheet.write', line });
    this.lines.push(line);
  }

  private result(test: TestKind): Partial<SheetLine> {
    const seen = this.me.sees;
    if (test === 'ground') return { lamp: seen.lamp.glow > 0 ? 'lit' : 'dark' };
    if (test === 'strip') return { strip: seen.strip.pull > 0 ? 'pulled' : 'still' };
    return test === 'look'
      ? { remark: 'nothing to see' }
      : { readingA: nearestReading(seen), rangeA: seen.rangeA };
  }

  /** Hands in, whatever the verdict, and gives the marks for how the work was done. */
  procedure() {
    this.me.does({ type: 'verdict.write', verdict: VERDICT }).handsIn();
    const attempt = {
      format: 'slot-and-riser/attempt',
      version: 1,
      id: 'guided',
      mode: 'guided',
      learner: '',
      startedAt: '2026-03-02T08:40:00Z',
      scenario: this.scenario,
      entries: this.me.session.log,
      endMs: this.me.atMs,
    } as Attempt;
    return assess(attempt, PARTS).marks.filter(({ group }) => group === 'procedure');
  }
}

describe('the guide, followed to the letter by a beginner', () => {
  it.each<[string, JobOptions]>([
    ['a sound wave armature', { part: 'wave-23' }],
    ['a sound four-pole lap armature', { part: 'lap-28' }],
    ['a sound two-pole armature at 120 V', { part: 'lap-24', mains: '120V60Hz', startRotationDeg: 40 }],
    ['a riser joint gone', { faults: [{ kind: 'riserJoint', bar: 5, form: 'bar', ohm: 'open' }] }],
    ['a grounded bar', { faults: [{ kind: 'groundedBar', bar: 9, ohm: 0.5 }] }],
    ['bridged bars', { faults: [{ kind: 'bridgedBars', bar: 5, ohm: 2e-4, by: 'copper' }] }],
  ])('gets through %s without a refusal and with every mark for procedure', (_what, options) => {
    const beginner = new Beginner(options).follow();
    const marks = beginner.procedure();
    expect(marks.length).toBeGreaterThan(15);
    const lost = marks.filter(({ earned, of }) => earned < of);
    expect(
      lost.map(({ title, earned, of, sentence }) => `${title}: ${earned} of ${of}. ${sentence}`),
    ).toEqual([]);
  });
});
