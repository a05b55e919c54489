import type { Observation } from '../../../src/bench/observation.ts';
import { createBenchScene } from '../../../src/scene/index.ts';
import { besideOf, type Layout, layOut } from '../../../src/scene/layout.ts';
import { sampleJob, samples } from '../../../tools/scene/samples.ts';

/** A moment of the bench by the name of a sample, with what is different about it here. */
export interface Moment {
  readonly state: string;
  readonly part?: 'wave23' | 'lap24';
  readonly but?: Partial<Observation>;
}

const WIDTH = 640;
const HEIGHT = 470;

/** Draws one moment without words and without motion, and says where everything stands. */
async function drawMoment(moment: Moment): Promise<Layout> {
  document.body.replaceChildren();
  const host = document.createElement('div');
  host.style.cssText = `position:absolute;inset:0 auto auto 0;width:${WIDTH}px;height:${HEIGHT}px`;
  document.body.append(host);
  const job = sampleJob(moment.part ?? 'wave23', 'branches');
  const scene = await createBenchScene({ host, send: () => ({ kind: 'done', breaches: [] }) }, job, {
    reducedMotion: true,
    showBarNumbers: false,
    lettering: false,
    drawing: 'canvas',
    scaleFraction: (amps, range) => Math.min(1, amps / range),
  });
  const seen = samples(job)[moment.state];
  if (!seen) throw new Error(`There is no sample called ${moment.state}.`);
  scene.show({ ...seen, ...moment.but });
  // Board and lens fetch what they paint with after the first picture.
  await new Promise((done) => setTimeout(done, 250));
  for (let frame = 0; frame < 3; frame++) await new Promise((done) => requestAnimationFrame(done));
  return layOut(job.armature, WIDTH, HEIGHT, besideOf(job));
}

export type DrawMoment = typeof drawMoment;
Object.assign(globalThis, { drawMoment });
