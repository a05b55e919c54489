import type { Action } from '../../bench/action.ts';
import { barAngleDeg, barAt, canReach } from '../../bench/geometry.ts';
import type { Observation } from '../../bench/observation.ts';
import type { Outcome } from '../../bench/port.ts';
import type { Job } from '../../scenario/public/job.ts';

/** A bench as anyone at it has it: what can be done, and what can be seen, heard and felt. */
export interface Bench {
  act(action: Action, atMs: number): Outcome;
  observe(atMs: number): Observation;
}

/** Pause before every act of a person who knows the work, ms. */
const HAND_MS = 250;
const GLANCE_MS = 150;
/** An eye places a bar to a tenth of a degree: one at the very edge of reach is left for the next turn. */
const EYE_DEG = 0.1;
/** Longest a needle is waited for, ms. */
const PATIENCE_MS = 8000;

/**
 * A pair of practised hands with a clock. They see only what an observation holds, and they fail loudly when the bench
 * refuses something a practised person would not try.
 */
export class Hands {
  readonly job: Job;
  private readonly bench: Bench;
  private nowMs: number;

  constructor(bench: Bench, job: Job, fromMs = 0) {
    this.bench = bench;
    this.job = job;
    this.nowMs = fromMs;
  }

  get atMs(): number {
    return this.nowMs;
  }

  see(): Observation {
    return this.bench.observe(this.nowMs);
  }

  wait(ms: number): Observation {
    this.nowMs += ms;
    return this.see();
  }

  do(action: Action): Observation {
    this.nowMs += HAND_MS;
    const outcome = this.bench.act(action, this.nowMs);
    if (outcome.kind === 'refused') throw new Error(`${action.type} was refused: ${outcome.sentence}`);
    return this.see();
  }

  /** Does each in turn. */
  all(...actions: readonly Action[]): void {
    for (const action of actions) this.do(action);
  }

  /** Waits for the needle to stand still. */
  restNeedle(): Observation {
    let seen = this.wait(GLANCE_MS);
    for (let waited = 0; !seen.needle.atRest && waited < PATIENCE_MS; waited += GLANCE_MS)
      seen = this.wait(GLANCE_MS);
    return seen;
  }

  /** The bar under a fixed station as the armature lies now. */
  barAt(stationDeg: number): number {
    return barAt(this.job.armature, stationDeg, this.see().rotationDeg);
  }

  /** Bars that can be got at as the armature lies now. */
  barsInReach(): number[] {
    const { rotationDeg } = this.see();
    const bars = Array.from({ length: this.job.armature.bars }, (_, bar) => bar);
    const angles = (bar: number) =>
      [-EYE_DEG, EYE_DEG].map((off) => barAngleDeg(this.job.armature, bar, rotationDeg + off));
    return bars.filter((bar) => angles(bar).every(canReach));
  }

  /** Turns the armature so that the next bar, in the sense of rising numbers, comes to every station. */
  nextBar(): void {
    this.do({ type: 'armature.turn', byDeg: -360 / this.job.armature.bars });
  }

  /** Lets a part or a growler that has grown hot cool down, the bench off, and goes on as before. */
  keepCool(): void {
    const { selector } = this.see();
    if (selector === 'off' || !this.isHot()) return;
    this.do({ type: 'selector.turn', to: 'off' });
    for (let waited = 0; !this.isCool() && waited < 60; waited += 1) this.wait(30_000);
    this.do({ type: 'selector.turn', to: selector });
  }

  private isHot(): boolean {
    const { partHeat, growlerHeat } = this.see();
    return (
      partHeat === 'hot' || partHeat === 'smoking' || growlerHeat === 'hot' || growlerHeat === 'tooHotToTouch'
    );
  }

  private isCool(): boolean {
    const { partHeat, growlerHeat } = this.see();
    return partHeat === 'cool' && growlerHeat === 'cool';
  }
}
