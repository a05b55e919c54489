import type { Observation } from '../../../src/bench/observation.ts';
import type { Job } from '../../../src/scenario/public/job.ts';
import { Changes } from '../../../src/scene/drawing/changes.ts';
import { type BenchScene, createBenchScene } from '../../../src/scene/index.ts';
import { besideOf, type Layout, layOut } from '../../../src/scene/layout.ts';
import { sampleJob, samples } from '../../../tools/scene/samples.ts';

/** A moment of the bench by the name of a sample, with what is different about it here. */
export interface Moment {
  readonly state: string;
  readonly part?: 'wave23' | 'lap24';
  readonly but?: Partial<Observation>;
  /** How it is drawn; the plain canvas if left out. */
  readonly drawing?: 'canvas' | 'webgl';
}

const WIDTH = 640;
const HEIGHT = 470;
/** What an edge that is smoothed inside another cut may differ by, of 255; and how many px may differ by more. */
const SMOOTHING = 24;
const MOST_APART = 0.0002;

function putHost(): HTMLElement {
  document.body.replaceChildren();
  const host = document.createElement('div');
  host.style.cssText = `position:absolute;inset:0 auto auto 0;width:${WIDTH}px;height:${HEIGHT}px`;
  document.body.append(host);
  return host;
}

function setScene(host: HTMLElement, job: Job, drawing: 'canvas' | 'webgl' = 'canvas'): Promise<BenchScene> {
  return createBenchScene({ host, send: () => ({ kind: 'done', breaches: [] }) }, job, {
    reducedMotion: true,
    showBarNumbers: false,
    lettering: false,
    drawing,
    scaleFraction: (amps, range) => Math.min(1, amps / range),
  });
}

function seenIn(job: Job, { state, but }: Moment): Observation {
  const seen = samples(job)[state];
  if (!seen) throw new Error(`There is no sample called ${state}.`);
  return { ...seen, ...but };
}

/** Board and lens fetch what they paint with after the first picture. */
async function settled(ms = 250): Promise<void> {
  await new Promise((done) => setTimeout(done, ms));
  for (let frame = 0; frame < 3; frame++) await nextFrame();
  await sharp();
}

/** On a slow machine a moving bench is drawn with fewer px, and with all of them once it has come to rest. */
async function sharp(): Promise<void> {
  while (document.querySelector('canvas')!.width !== WIDTH * devicePixelRatio) await nextFrame();
}

function nextFrame(): Promise<unknown> {
  return new Promise((done) => requestAnimationFrame(done));
}

/** Draws one moment without words and without motion, and says where everything stands. */
async function drawMoment(moment: Moment): Promise<Layout> {
  const job = sampleJob(moment.part ?? 'wave23', 'branches');
  const scene = await setScene(putHost(), job, moment.drawing);
  scene.show(seenIn(job, moment));
  await settled();
  return layOut(job.armature, WIDTH, HEIGHT, besideOf(job));
}

/**
 * Draws one moment after another in one scene, where only what differs is drawn, and then all of it once more.
 * @returns the moments that did not come out the same, with the share of px that differ
 */
async function drawOneAfterAnother(moments: readonly Moment[]): Promise<string[]> {
  const job = sampleJob('wave23', 'branches');
  const scene = await setScene(putHost(), job);
  const turnTo = async (moment: Moment, ms: number) => {
    scene.show(seenIn(job, moment));
    await settled(ms);
    const changed = pixels();
    await drawWhole(scene);
    return apart(changed.data, pixels().data);
  };
  const wrong: string[] = [];
  for (const [i, moment] of moments.entries()) {
    if ((await turnTo(moment, 120)) <= MOST_APART) continue;
    // Something that is fetched when it is first wanted may have come in between; the second time it is there.
    await turnTo(moments[Math.max(0, i - 1)]!, 600);
    const share = await turnTo(moment, 600);
    if (share > MOST_APART) wrong.push(`${i}: ${moment.state}, ${(100 * share).toFixed(3)} %`);
  }
  return wrong;
}

async function drawWhole(scene: BenchScene): Promise<void> {
  const { since } = Changes.prototype;
  Changes.prototype.since = () => null;
  scene.hint(null);
  for (let frame = 0; frame < 2; frame++) await nextFrame();
  await sharp();
  Changes.prototype.since = since;
}

function pixels(): ImageData {
  const canvas = document.querySelector('canvas')!;
  return canvas.getContext('2d')!.getImageData(0, 0, canvas.width, canvas.height);
}

function apart(a: Uint8ClampedArray, b: Uint8ClampedArray): number {
  let count = 0;
  for (let i = 0; i < a.length; i += 4) {
    const off = Math.max(...[0, 1, 2].map((c) => Math.abs(a[i + c]! - b[i + c]!)));
    if (off > SMOOTHING) count += 1;
  }
  return (4 * count) / a.length;
}

export type DrawMoment = typeof drawMoment;
export type DrawOneAfterAnother = typeof drawOneAfterAnother;
Object.assign(globalThis, { drawMoment, drawOneAfterAnother });
