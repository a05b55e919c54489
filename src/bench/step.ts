import { type AnyActorScope, createActor, getInitialSnapshot } from 'xstate';
import type { Judged } from './benchSetup.ts';
import type { BenchEvent } from './happening.ts';
import { judge } from './judge.ts';
import { ARMATURE_KIT } from './kit.ts';
import { type BenchInput, type BenchSnapshot, benchMachine, type Told } from './machine.ts';
import { ALL_LEADS, type LeadId } from './places.ts';
import { type BenchState, type Holds, supplyOf } from './state.ts';

/** A bench nobody has touched yet. */
export function startBench(input: BenchInput): BenchSnapshot {
  return getInitialSnapshot(benchMachine, input);
}

/** The event as the machine takes it. @param known  of this very event at this very snapshot, where it was judged already */
export function tell(snapshot: BenchSnapshot, event: BenchEvent, known?: Judged): Told {
  if (known !== undefined) return { ...event, ...known } as Told;
  const stood = benchState(snapshot);
  return { ...event, stood, outcome: judge(stood, event, snapshot.context.mode) } as Told;
}

/** The bench after an event; the same bench when its guards refuse it. Pure. */
export function nextBench(snapshot: BenchSnapshot, event: BenchEvent, known?: Judged): BenchSnapshot {
  const heard = heardOf(snapshot, event.type);
  const next = benchMachine.transition(heard, tell(snapshot, event, known), scope());
  return next === heard ? snapshot : next;
}

/**
 * The bench as far as it hears of an event. xstate asks every region all the same, and most of what an act costs would
 * be regions that have nothing to say; what comes after is made of the whole bench again.
 */
function heardOf(snapshot: BenchSnapshot, type: BenchEvent['type']): BenchSnapshot {
  const { value } = snapshot;
  const part = Object.fromEntries(regionsHearing(type).map((region) => [region, value[region]]));
  return { ...snapshot, value: part as typeof value };
}

type Region = keyof BenchSnapshot['value'];
const hearing = new Map<BenchEvent['type'], readonly Region[]>();
function regionsHearing(type: BenchEvent['type']): readonly Region[] {
  const known = hearing.get(type);
  if (known !== undefined) return known;
  const regions = Object.values(benchMachine.root.states);
  const hear = regions.filter(({ events }) => events.some((heard) => covers(heard, type)));
  const keys = hear.map(({ key }) => key as Region);
  hearing.set(type, keys);
  return keys;
}

/** @param heard  the name of an event, or of all that begin alike, as in `lead.*` */
function covers(heard: string, type: string): boolean {
  return heard === type || (heard.endsWith('*') && type.startsWith(heard.slice(0, -1)));
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
    leads: context.tips,
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

function holds(name: BenchSnapshot['value']['left']): Holds {
  const lead = ALL_LEADS.find((id: LeadId) => id.replace('.', '') === name);
  return lead ?? (name as Holds);
}
