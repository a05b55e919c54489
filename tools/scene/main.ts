import '../../src/screens/shared/letters.css';
import type { Action } from '../../src/bench/action.ts';
import type { Observation } from '../../src/bench/observation.ts';
import type { Outcome } from '../../src/bench/port.ts';
import { createBenchScene } from '../../src/scene/index.ts';
import { pretend } from './pretend.ts';
import { restingBench, sampleJob, samples } from './samples.ts';

/**
 * The scene by itself, driven by observations made by hand: ?state=spaced&part=lap24&frame=shunt&numbers=1&still=1.
 * Actions move a make-believe bench that has hands and switches but no physics.
 */
const query = new URLSearchParams(location.search);
const job = sampleJob(query.get('part') ?? 'wave23', query.get('frame'));
const log: Action[] = [];
let seen: Observation = samples(job)[query.get('state') ?? 'placed'] ?? restingBench();

const send = (action: Action): Outcome => {
  log.push(action);
  seen = pretend(seen, action, job.armature);
  scene.show(seen);
  return { kind: 'done', breaches: [] };
};

const host = document.getElementById('bench')!;
const scene = await createBenchScene({ host, send }, job, {
  reducedMotion: query.get('still') === '1',
  showBarNumbers: query.get('numbers') === '1',
  lettering: query.get('plain') !== '1',
  drawing: (query.get('drawing') ?? 'auto') as 'auto' | 'webgl' | 'canvas',
  scaleFraction: (amps, range) => Math.min(1, amps / range) ** 1.5,
});
scene.show(seen);
new ResizeObserver(() => scene.resize()).observe(host);
Object.assign(window, {
  scene,
  log,
  seen: () => seen,
  state: (name: string) => {
    seen = samples(job)[name]!;
    scene.show(seen);
  },
  set: (part: Partial<Observation>) => {
    seen = { ...seen, ...part };
    scene.show(seen);
  },
});
