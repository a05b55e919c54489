import { expect } from 'vitest';
import { assess } from '../../src/assess/assess.ts';
import type { Attempt } from '../../src/attempt/entry.ts';
import type { PartKind } from '../../src/bench/action.ts';
import { linesThatCount, type RemedyDone } from '../../src/bench/guide/guide.ts';
import type { SheetLine, TestKind, Verdict } from '../../src/bench/paper.ts';
import { PART_WORDS } from '../../src/bench/toolWords.ts';
import { jobOf } from '../../src/scenario/public/view.ts';
import type { Scenario } from '../../src/scenario/scenario.ts';
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
import { partLibrary } from '../scenario/files.ts';
import { BenchDriver } from './benchDriver.ts';

const PARTS = partLibrary();

/** More steps than any job needs; a guide that goes round in circles runs into it. */
const MOST_STEPS = 1500;
/** Time between two looks at something that cools, ms. */
const COOLING_MS = 30_000;
/** Time in which a lit filament goes dark, ms. */
const AFTERGLOW_MS = 3000;

function verdictOn(part: PartKind): Verdict {
  const findings = [{ condition: 'notTested', place: { kind: 'somewhere' } }] as const;
  return { part, findings, disposition: 'service', sure: 0.5, because: '' };
}

/** A beginner who does exactly what the guide says, on a bench that refuses what is dangerous. */
export class Beginner {
  readonly scenario;
  readonly me;
  readonly job;
  readonly lines: SheetLine[] = [];
  readonly remedies: RemedyDone[] = [];
  readonly verdicts: Verdict[] = [];
  readonly said: string[] = [];
  known: Known = NOTHING_KNOWN;

  constructor(scenario: Scenario) {
    this.scenario = scenario;
    this.me = new BenchDriver({ scenario, mode: 'guided' });
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
    else this.me.waits(step.say.includes('cool') ? COOLING_MS : 2500);
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
