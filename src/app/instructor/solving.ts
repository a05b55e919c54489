import type { ArmatureDesign } from '../../engine/parts/armature.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import type { Effects } from '../../screens/instructor/desk.ts';

/** A question to the worker and its answer, held together by a number. */
export interface Question {
  readonly nth: number;
  readonly scenario: Scenario;
  readonly design: ArmatureDesign;
}
export type Reply = { readonly nth: number } & ({ readonly effects: Effects } | { readonly failed: string });

let worker: Worker | null = null;
let asked = 0;
interface Waiting {
  readonly done: (effects: Effects) => void;
  readonly failed: (why: Error) => void;
}
const waiting = new Map<number, Waiting>();

function failAll(why: string): void {
  for (const { failed } of waiting.values()) failed(new Error(why));
  waiting.clear();
}

function startWorker(): Worker {
  const started = new Worker(new URL('./effectsWorker.ts', import.meta.url), { type: 'module' });
  started.onmessage = ({ data }: MessageEvent<Reply>) => {
    const one = waiting.get(data.nth);
    waiting.delete(data.nth);
    if ('effects' in data) one?.done(data.effects);
    else one?.failed(new Error(data.failed));
  };
  started.onerror = ({ message }) => failAll(message);
  return started;
}

/** Solves a part off the main thread, so that the page stays at hand; where there are no workers, on the spot. */
export async function solveEffects(scenario: Scenario, design: ArmatureDesign): Promise<Effects> {
  if (typeof Worker === 'undefined') {
    const { effectsOf } = await import('./effects.ts');
    return effectsOf(scenario, design);
  }
  worker ??= startWorker();
  const nth = asked++;
  const answer = new Promise<Effects>((done, failed) => waiting.set(nth, { done, failed }));
  worker.postMessage({ nth, scenario, design } satisfies Question);
  return answer;
}
