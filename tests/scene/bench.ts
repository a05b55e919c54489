import type { Action } from '../../src/bench/action.ts';
import type { Observation } from '../../src/bench/observation.ts';
import type { Job } from '../../src/scenario/public/job.ts';
import { type Desk, freshUi, type Pointer, type Ui } from '../../src/scene/handling/desk.ts';
import { besideOf, type HungTool, layOut } from '../../src/scene/layout.ts';
import type { Situation } from '../../src/scene/pose.ts';
import type { Point } from '../../src/scene/project.ts';
import { pretend } from '../../tools/scene/pretend.ts';
import { sampleJob, samples } from '../../tools/scene/samples.ts';

export const JOB = sampleJob('wave23');
export const DYNAMO = sampleJob('lap24');
export const SAMPLES = samples(JOB);

/** Sizes of the picture on the three screens the product is made for, CSS px. */
export const HOSTS = {
  desk: [988, 747],
  tablet: [684, 615],
  phone: [377, 641],
  lowPhone: [363, 420],
  slimPhone: [306, 420],
  flat: [780, 420],
  slim: [562, 420],
} as const;
export type HostName = keyof typeof HOSTS;

export function situation(host: HostName, seen: Observation, job = JOB): Situation {
  const [width, height] = HOSTS[host];
  return {
    layout: layOut(job.armature, width, height, besideOf(job)),
    part: job.armature,
    seen,
    rotationDeg: seen.rotationDeg,
    carried: { leads: {} },
  };
}

/** A desk with a make-believe bench behind it, which obeys unless told to refuse. */
export class TryDesk implements Desk {
  readonly ui: Ui = freshUi();
  readonly sent: Action[] = [];
  readonly refuses = new Set<Action['type']>();
  clock = 0;
  private readonly host: HostName;
  seen: Observation;

  private readonly job: Job;

  constructor(host: HostName, seen: Observation, job = JOB) {
    this.host = host;
    this.job = job;
    this.seen = seen;
  }

  situation(): Situation {
    const s = situation(this.host, this.seen, this.job);
    return { ...s, rotationDeg: s.rotationDeg + this.ui.turning, carried: { leads: this.ui.leads } };
  }

  readonly opened: HungTool[] = [];
  openTool(tool: HungTool): void {
    this.opened.push(tool);
  }

  act(action: Action): boolean {
    if (this.refuses.has(action.type)) return false;
    this.sent.push(action);
    this.seen = pretend(this.seen, action, JOB.armature);
    return true;
  }

  redraw(): void {}

  now(): number {
    return this.clock;
  }

  /** What was sent since the last time this was asked. */
  took(): Action[] {
    return this.sent.splice(0);
  }
}

export function at(p: Point, kind: Pointer['kind'] = 'mouse', id = 1): Pointer {
  return { id, at: p, shown: p, kind, fine: false };
}
