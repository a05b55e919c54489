import { type AnyActorScope, createActor, getInitialSnapshot } from 'xstate';
import { rememberJudged } from './benchSetup.ts';
import type { BenchEvent } from './happening.ts';
import { ARMATURE_KIT } from './kit.ts';
import { type BenchInput, type BenchSnapshot, benchMachine, type Told } from './machine.ts';
import type { LeadView } from './observation.ts';
import { ALL_LEADS, type LeadId } from './places.ts';
import type { Outcome } from './port.ts';
import { type BenchState, type Holds, type Leads, supplyOf } from './state.ts';

/** A bench nobody has touched yet. */
export function startBench(input: BenchInput): BenchSnapshot {
  return getInitialSnapshot(benchMachine, input);
}

/** The event as the machine takes it. */
export function tell(snapshot: BenchSnapshot, event: BenchEvent): Told {
  return { ...event, stood: benchState(snapshot) } as Told;
}

/** What is known of an event before the machine takes it: the bench laid flat, and what became of the event. */
export interface Judged {
  readonly stood: BenchState;
  readonly outcome: Outcome;
}

/**
 * The bench after an event; the same bench when its guards refuse it. Pure.
 * @param known  of this very event at this very snapshot: saves working it out again
 */
export function nextBench(snapshot: BenchSnapshot, event: BenchEvent, known?: Judged): BenchSnapshot {
  if (known === undefined) return benchMachine.transition(snapshot, tell(snapshot, event), scope());
  const told = { ...event, stood: known.stood } as Told;
  rememberJudged(told, known.outcome);
  return benchMachine.transition(snapshot, told, scope());
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
      input: {
        mode: 'practice',
        geometry: { bars: 1, barZeroDeg: 0 },
        startRotationDeg: 0,
        kit: ARMATURE_KIT,
      },
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
  const { rotationDeg, rangeA, chalkedBar, looksAt, gauge, memory, geometry } = context;
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
    ...toolsOf(snapshot),
    mat: { fieldFrame: value.fieldFrame, brushPlate: value.brushPlate },
    brushesApart: value.fieldBrushes === 'apart',
    prepared: memory.prepared,
    lampFirst: context.kit.lampFirst,
    ...{ rotationDeg, rangeA, chalkedBar, looksAt, gauge, memory, geometry },
  };
}

function toolsOf({
  value,
  context: { kit, testVolt, feed },
}: BenchSnapshot): Pick<BenchState, 'tester' | 'drop'> {
  return {
    tester: { at: kit.tester ? 'rail' : 'absent', volt: testVolt, pressed: value.tester === 'down' },
    drop: { at: kit.drop ? 'rail' : 'absent', feed },
  };
}

function leadsOf({ value, context: { tips, kit } }: BenchSnapshot): Leads {
  const at: Readonly<Record<LeadId, LeadView['at']>> = {
    'ammeter.1': value.ammeter1,
    'ammeter.2': value.ammeter2,
    'lamp.1': value.lamp1,
    'lamp.2': value.lamp2,
    'tester.1': kit.tester ? value.tester1 : 'absent',
    'tester.2': kit.tester ? value.tester2 : 'absent',
    'drop.1': kit.drop ? value.drop1 : 'absent',
    'drop.2': kit.drop ? value.drop2 : 'absent',
  };
  return Object.fromEntries(ALL_LEADS.map((lead) => [lead, { at: at[lead], ...tips[lead] }])) as Record<
    LeadId,
    LeadView
  >;
}

function holds(name: BenchSnapshot['value']['left']): Holds {
  const lead = ALL_LEADS.find((id: LeadId) => id.replace('.', '') === name);
  return lead ?? (name as Holds);
}
