import { type AnyActorScope, createActor, getInitialSnapshot } from 'xstate';
import type { BenchEvent } from './happening.ts';
import { type BenchInput, type BenchSnapshot, benchMachine, type Told } from './machine.ts';
import { LEAD_IDS, type LeadId } from './places.ts';
import { type BenchState, type Holds, type Leads, supplyOf } from './state.ts';
import { LEADS_HUNG } from './untouched.ts';

/** A bench nobody has touched yet. */
export function startBench(input: BenchInput): BenchSnapshot {
  return getInitialSnapshot(benchMachine, input);
}

/** The event as the machine takes it. */
export function tell(snapshot: BenchSnapshot, event: BenchEvent): Told {
  return { ...event, stood: benchState(snapshot) } as Told;
}

/** The bench after an event; the same bench when its guards refuse it. Pure. */
export function nextBench(snapshot: BenchSnapshot, event: BenchEvent): BenchSnapshot {
  return benchMachine.transition(snapshot, tell(snapshot, event), scope());
}

/**
 * `transition` of xstate starts a throw-away actor at every call, ten times the cost of the step itself. The machine
 * starts no children and sends nothing, so one idle scope serves all benches.
 */
let idle: AnyActorScope | undefined;
function scope(): AnyActorScope {
  if (idle === undefined) {
    const nothing = () => {};
    const self = createActor(benchMachine, {
      input: { mode: 'practice', geometry: { bars: 1, barZeroDeg: 0 }, startRotationDeg: 0 },
    });
    const named = { self, system: self.system, id: 'bench', sessionId: 'bench' };
    idle = {
      ...named,
      logger: nothing,
      defer: nothing,
      emit: nothing,
      stopChild: nothing,
      actionExecutor: nothing,
    };
  }
  return idle;
}

/** The statechart's regions and memory, laid flat. */
export function benchState(snapshot: BenchSnapshot): BenchState {
  const { value, context } = snapshot;
  const stage = value.attempt;
  return {
    stage,
    selector: value.selector,
    cutOut: value.cutOut,
    supply: supplyOf(stage, value.cutOut, value.selector),
    cradle: value.cradle === 'armature' ? 'armature' : 'empty',
    hands: [holds(value.left), holds(value.right)],
    leads: leadsOf(snapshot),
    strip: { at: value.strip, angleDeg: context.stripAngleDeg, heightMm: context.stripHeightMm },
    lamp: value.lamp,
    rotationDeg: context.rotationDeg,
    rangeA: context.rangeA,
    chalkedBar: context.chalkedBar,
    looksAt: context.looksAt,
    geometry: context.geometry,
  };
}

function leadsOf({ value, context: { tips } }: BenchSnapshot): Leads {
  return {
    'ammeter.1': { at: value.ammeter1, ...tips['ammeter.1'] },
    'ammeter.2': { at: value.ammeter2, ...tips['ammeter.2'] },
    'lamp.1': { at: value.lamp1, ...tips['lamp.1'] },
    'lamp.2': { at: value.lamp2, ...tips['lamp.2'] },
    'tester.1': LEADS_HUNG['tester.1'],
    'tester.2': LEADS_HUNG['tester.2'],
    'drop.1': LEADS_HUNG['drop.1'],
    'drop.2': LEADS_HUNG['drop.2'],
  };
}

function holds(name: BenchSnapshot['value']['left']): Holds {
  const lead = LEAD_IDS.find((id: LeadId) => id.replace('.', '') === name);
  return lead ?? (name as Holds);
}
