import type { Action } from '../bench/action.ts';
import { judge } from '../bench/judge.ts';
import type { Observation } from '../bench/observation.ts';
import type { Mode, Outcome } from '../bench/port.ts';
import type { BenchState } from '../bench/state.ts';
import type { ArmatureDesign } from '../engine/parts/armature.ts';
import type { PartLibrary, Scenario } from '../scenario/scenario.ts';
import { advance } from './advance.ts';
import type { Entry, Happened } from './entry.ts';
import { putOnBench } from './part.ts';
import { observe, seenNeedle, sensed, stir } from './sense.ts';
import { withTouch } from './touch.ts';
import { afterAct, firstWorld, type World } from './world.ts';

/** One attempt at the bench while it runs: the only place where statechart and physics meet. */
export interface Session {
  readonly mode: Mode;
  /** Every act so far, refused ones included. */
  readonly log: readonly Entry[];
  /** Does one thing at an instant not before the last act's. */
  act(action: Action, atMs: number): Outcome;
  /** What eyes and ears have at an instant not before the last act's. Looking never changes what comes later. */
  observe(atMs: number): Observation;
  /** The needle alone, as `observe` shows it: for looking often. */
  needleAt(atMs: number): Observation['needle'];
  /** The statechart laid flat at an instant; knows no fault. */
  stateAt(atMs: number): BenchState;
  /** What has come about by itself since the last act, up to an instant. */
  sinceLastAct(atMs: number): readonly Happened[];
  /** How soon after an instant a look could find something new. */
  stirAt(atMs: number): 'moving' | 'slow' | 'still';
}

export interface SessionInput {
  readonly scenario: Scenario;
  readonly design: ArmatureDesign;
  /** Left out: the mode the scenario asks for. */
  readonly mode?: Mode;
}

export function createSession({ scenario, design, mode = scenario.public.mode }: SessionInput): Session {
  const part = putOnBench(scenario, design);
  const log: Entry[] = [];
  let afterLast = firstWorld(part, mode);
  let furthest = afterLast;

  /** From the furthest world anyone has looked at, or afresh from the last act when that lies beyond. */
  const worldAt = (atMs: number): World => {
    if (!(atMs >= afterLast.atMs)) {
      throw new RangeError(`A session only goes forward: ${atMs} ms came after ${afterLast.atMs} ms.`);
    }
    furthest = advance(part, atMs >= furthest.atMs ? furthest : afterLast, atMs);
    return furthest;
  };

  return {
    mode,
    log,
    act(action, atMs) {
      const world = worldAt(atMs);
      const judged = judge(world.state, action, mode);
      const outcome = withTouch(judged, part);
      const since = world.happened.slice(afterLast.happened.length);
      const entry = { n: log.length, atMs, action, outcome, before: sensed(part, world) };
      log.push(since.length > 0 ? { ...entry, since } : entry);
      afterLast = outcome.kind === 'done' ? afterAct(part, world, action, judged) : world;
      furthest = afterLast;
      return outcome;
    },
    observe: (atMs) => observe(part, worldAt(atMs)),
    needleAt: (atMs) => seenNeedle(worldAt(atMs)),
    stateAt: (atMs) => worldAt(atMs).state,
    sinceLastAct: (atMs) => worldAt(atMs).happened.slice(afterLast.happened.length),
    stirAt: (atMs) => stir(worldAt(atMs)),
  };
}

/** The design a scenario asks for. */
export function designOf(scenario: Scenario, library: PartLibrary): ArmatureDesign {
  const design = library.get(scenario.public.armature);
  if (design === undefined) throw new RangeError(`No part type ${scenario.public.armature} in the library.`);
  return design;
}
