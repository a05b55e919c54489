import { describe, expect, it } from 'vitest';
import { assess } from '../../src/assess/assess.ts';
import type { Attempt } from '../../src/attempt/entry.ts';
import type { PartKind } from '../../src/bench/action.ts';
import { linesThatCount, type RemedyDone } from '../../src/bench/guide/guide.ts';
import type { SheetLine, TestKind, Verdict } from '../../src/bench/paper.ts';
import { PART_WORDS } from '../../src/bench/toolWords.ts';
import { jobOf } from '../../src/scenario/public/view.ts';
import { atHand } from '../../src/screens/apprentice/bench/atHand.ts';
import { isFigureTest, isLampTest } from '../../src/screens/apprentice/bench/entryKinds.ts';
import { fold, type Known, NOTHING_KNOWN } from '../../src/screens/apprentice/bench/guide/known.ts';
import { nextStep } from '../../src/screens/apprentice/bench/guide/next.ts';
import type { Situation, Step } from '../../src/screens/apprentice/bench/guide/step.ts';
import { figureShown, nearestReading } from '../../src/screens/apprentice/bench/reading.ts';
import {
  EMPTY_DRAFT,
  type EntryDraft,
  prefill,
  toLine,
} from '../../src/screens/apprentice/bench/sheetEntry.ts';
import { BenchDriver, type JobOptions, job as jobFile, PARTS } from '../support/benchDriver.ts';

/** More steps than any job needs; a guide that goes round in circles runs into it. */
const MOST_STEPS = 1500;
/** Time in which a lit filament goes dark, ms. */
const AFTERGLOW_MS = 3000;

function verdictOn(part: PartKind): Verdict {
  const findings = [{ condition: 'notTested', place: { kind: 'somewhere' } }] as const;
  return { part, findings, disposition: 'service', sure: 0.5, because: '' };
}

/** A beginner who does exactly what the guide says, on a bench that refuses what is dangerous. */
class Beginner {
  readonly scenario;
  readonly me;
  readonly job;
  readonly lines: SheetLine[] = [];
  readonly remedies: RemedyDone[] = [];
  readonly verdicts: Verdict[] = [];
  readonly said: string[] = [];
  known: Known = NOTHING_KNOWN;

  constructor(options: JobOptions) {
    this.scenario = jobFile({ ...options, mode: 'guided' });
    this.me = new BenchDriver({ scenario: this.scenario, mode: 'guided' });
    this.job = jobOf(this.scenario, PARTS);
  }

  get at(): Situation {
    const { job, me, remedies, verdicts } = this;
    this.known = fold(this.known, me.sees, job.armature);
    const lines = linesThatCount(this.lines, remedies);
    return { job, seen: me.sees, lines, remedies, verdicts, known: this.known };
  }

  /** To the end: every test, every remedy, a verdict on each part, and the job handed in. */
  follow(): this {
    for (let n = 0; n < MOST_STEPS; n += 1) {
      const step = nextStep(this.at);
      this.said.push(step.say);
      if (step.say.includes('hand the job in')) {
        this.me.handsIn();
        return this;
      }
      if (step.say.includes('verdict')) this.decide();
      else this.take(step);
    }
    throw new Error(`still at it after ${MOST_STEPS} steps: ${this.said.slice(-6).join(' / ')}`);
  }

  private decide(): void {
    const part = this.job.parts.find((one) => this.said.at(-1)!.includes(PART_WORDS[one]))!;
    this.verdicts.push(verdictOn(part));
    this.me.does({ type: 'verdict.write', verdict: verdictOn(part) });
  }

  private take(step: Step): void {
    expect(step.why.length, step.say).toBeGreaterThan(20);
    if (step.act?.type === 'remedy.do') {
      const { remedy, bar = null } = step.act;
      this.remedies.push({ remedy, bar, linesBefore: this.lines.length });
    }
    if (step.act) {
      this.me.does(step.act, 700);
      expect(this.me.refusal, `${step.say} (${JSON.stringify(step.act)})`).toBeNull();
    } else if (step.write) this.write(step.write);
    else this.me.waits(2500);
    this.me.waits(500);
  }

  /** Fills the form in as the page does: place and tool carried over, the reading typed. */
  private write(test: TestKind): void {
    const { seen, job } = this.at;
    const here = atHand(seen, job.armature);
    const blank = { ...EMPTY_DRAFT, test };
    const draft = here?.test === test ? prefill(blank, here, seen) : blank;
    const written = toLine({ ...draft, ...this.result(test) });
    expect(written, test).toMatchObject({ ok: true });
    if (!written.ok) return;
    this.me.does({ type: 'sheet.write', line: written.line });
    this.lines.push(written.line);
  }

  private result(test: TestKind): Partial<EntryDraft> {
    if (isFigureTest(test)) this.me.waits(5000);
    if (isLampTest(test)) this.me.waits(AFTERGLOW_MS);
    const seen = this.me.sees;
    if (isLampTest(test)) return { lamp: seen.lamp.glow > 0 ? 'lit' : 'dark' };
    if (test === 'strip') return { strip: seen.strip.pull > 0 ? 'pulled' : 'still' };
    if (isFigureTest(test)) return { reading: figureShown(test, seen) ?? '' };
    return test === 'look'
      ? { remark: 'nothing to see' }
      : { reading: String(nearestReading(seen)), rangeA: seen.rangeA };
  }

  /** The marks for how the work was done. */
  procedure() {
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

describe('the guide, followed from the first look to the job handed in', () => {
  const FRAME: JobOptions = {
    parts: ['fieldFrame'],
    tests: ['look', 'fieldContinuity', 'fieldInsulation', 'megohm', 'millivolt', 'gauges'],
  };
  const PLATE: JobOptions = {
    parts: ['brushPlate'],
    tests: ['look', 'plateInsulation', 'plateEarthed', 'megohm', 'gauges'],
  };
  const handedIn = ({ me }: Beginner) => {
    expect(me.refusal).toBeNull();
    expect(me.everythingBroken).toEqual([]);
    expect(me.session.stateAt(me.atMs).stage).toBe('handedIn');
  };
  const lampAt = ({ lines }: Beginner, at: string) => lines.filter((line) => line.at === at && line.lamp);

  it('takes a sound field frame to its verdict through every test of its card', () => {
    const beginner = new Beginner(FRAME).follow();
    handedIn(beginner);
    const written = new Set(beginner.lines.map(({ test }) => test));
    expect([...written].sort()).toEqual([...FRAME.tests!].sort());
    expect(beginner.lines.every(({ part }) => part === 'fieldFrame')).toBe(true);
    expect(beginner.verdicts.map(({ part }) => part)).toEqual(['fieldFrame']);
  });

  it('takes a field frame with an open coil to its verdict without a remedy', () => {
    const beginner = new Beginner({ ...FRAME, fieldFaults: [{ kind: 'openCoil', coil: 3 }] }).follow();
    handedIn(beginner);
    expect(beginner.remedies).toEqual([]);
    expect(beginner.lines.some(({ test, lamp }) => test === 'fieldContinuity' && lamp === 'dark')).toBe(true);
  });

  it('takes a brush plate with a loose rivet through remedy and retest to its verdict', () => {
    const rivet = { kind: 'looseRivet', holder: 'plate:insulated1', makes: 'pressed', ohm: 0.2 } as const;
    const beginner = new Beginner({ ...PLATE, plateFaults: [rivet] }).follow();
    handedIn(beginner);
    expect(beginner.remedies.map(({ remedy }) => remedy)).toContain('tightenRivets');
    const lamp = lampAt(beginner, 'plate:insulated1').map((line) => line.lamp);
    expect([lamp[0], lamp.at(-1)]).toEqual(['lit', 'dark']);
  });

  it('takes all three parts of one job to three verdicts', () => {
    const parts = ['armature', 'fieldFrame', 'brushPlate'] as const;
    const tests = [
      'look',
      'neighbour',
      'ground',
      'strip',
      ...FRAME.tests!.slice(1, 3),
      ...PLATE.tests!.slice(1, 3),
    ];
    const beginner = new Beginner({ parts, tests: tests as TestKind[] }).follow();
    handedIn(beginner);
    expect(beginner.verdicts.map(({ part }) => part)).toEqual([...parts]);
  });

  it('resolders the riser that has dropped out and reads every pair again', () => {
    const riser = { kind: 'riserJoint', bar: 5, form: 'bar', ohm: 'open' } as const;
    const beginner = new Beginner({ tests: ['neighbour', 'strip'], faults: [riser] }).follow();
    handedIn(beginner);
    expect(beginner.remedies).toMatchObject([{ remedy: 'resolderRiser', bar: 5 }]);
    const readings = beginner.lines.filter(({ test }) => test === 'neighbour');
    expect(readings.length).toBe(46);
    const least = (from: number) =>
      Math.min(...readings.slice(from, from + 23).map(({ readingA }) => readingA!));
    expect(least(23)).toBeGreaterThan(3 * least(0));
  });

  it.each<[string, JobOptions['benchFaults']]>([
    ['a cracked handle', [{ kind: 'crackedHandle', lead: 'lamp.1' }]],
    ['a blown lamp', [{ kind: 'blownLamp' }]],
  ])('puts %s right before the ground test of an armature', (_what, benchFaults = []) => {
    const beginner = new Beginner({ tests: ['ground'], benchFaults }).follow();
    handedIn(beginner);
    const acts = beginner.me.session.log.map(({ action }) => action.type);
    expect(acts).toContain('bench.setRight');
    expect(beginner.lines.map(({ test }) => test)).toEqual(['ground']);
  });

  it('gets carbon out from between the bars before anyone calls the armature shorted', () => {
    const carbon = { kind: 'bridgedBars', bar: 5, ohm: 2e-3, by: 'carbon' } as const;
    const beginner = new Beginner({ tests: ['neighbour', 'strip'], faults: [carbon] }).follow();
    handedIn(beginner);
    expect(beginner.remedies.map(({ remedy }) => remedy)).toEqual(['brushBetweenBars']);
    expect(beginner.lines.filter(({ test }) => test === 'strip').at(-1)?.strip).toBe('still');
  });
});
