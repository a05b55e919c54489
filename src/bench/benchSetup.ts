import { setup } from 'xstate';
import type { TestVolt } from '../engine/instruments/insulationTester.ts';
import type { MatPart, RangeA } from './action.ts';
import type { CommutatorGeometry } from './geometry.ts';
import { type BenchEvent, isHappening } from './happening.ts';
import { judge } from './judge.ts';
import type { Kit } from './kit.ts';
import { makesLampTest } from './lampTests.ts';
import { memoryAfter } from './memory.ts';
import type { LeadId, Place } from './places.ts';
import type { Breach, Mode, Outcome } from './port.ts';
import { type BenchState, type GaugeKept, type HandIndex, handFor, type Memory } from './state.ts';
import type { Tips } from './tips.ts';

export interface BenchInput {
  readonly mode: Mode;
  readonly geometry: CommutatorGeometry;
  /** Rotation the armature lies at when it is first placed, degrees. */
  readonly startRotationDeg: number;
  readonly kit: Kit;
}

/** What the machine remembers besides the states of its regions. */
export interface Context extends BenchInput {
  readonly tips: Tips;
  readonly rotationDeg: number;
  readonly rangeA: RangeA;
  readonly chalkedBar: number | null;
  readonly looksAt: Place | null;
  readonly stripAngleDeg: number | null;
  readonly stripHeightMm: number | null;
  readonly gauge: GaugeKept | null;
  readonly testVolt: TestVolt;
  readonly feed: readonly [Place, Place] | null;
  readonly memory: Memory;
  /** The critical breach that stopped the attempt. */
  readonly stoppedBy: Breach | null;
}

/** An event with the bench as it stood when it came: guards look across regions through it. Made by `tell` only. */
type WithBench<E> = E extends BenchEvent ? E & { readonly stood: BenchState } : never;
export type Told = WithBench<BenchEvent>;

/** Types and guards that the regions of the statechart share. */
export const bench = setup({
  types: {} as { context: Context; events: Told; input: BenchInput },
  guards: {
    passes: ({ context, event }) => goesThrough(context.mode, event),
    critical: ({ context, event }) => criticalBreach(context.mode, event) !== undefined,
    takesWith: ({ context, event }, { hand, lead }: { hand: HandIndex; lead?: LeadId }) =>
      !isHappening(event) &&
      (lead === undefined || ('lead' in event && event.lead === lead)) &&
      handFor(event.stood, event) === hand &&
      goesThrough(context.mode, event),
    ofLead: ({ context, event }, { lead }: { lead: LeadId }) =>
      'lead' in event && event.lead === lead && goesThrough(context.mode, event),
    turnsTo: ({ context, event }, { to }: { to: BenchState['selector'] }) =>
      event.type === 'selector.turn' && event.to === to && goesThrough(context.mode, event),
    leavesLow: ({ context, event }) =>
      event.type === 'selector.turn' && event.to !== 'low' && goesThrough(context.mode, event),
    testsWithLamp: ({ context, event }) =>
      makesLampTest(event.stood, event) && goesThrough(context.mode, event),
    onMat: ({ context }, { part }: { part: MatPart }) => context.kit.mat.includes(part),
    ofPart: ({ context, event }, { part }: { part: MatPart }) =>
      'part' in event && event.part === part && goesThrough(context.mode, event),
    presses: ({ context, event }, { on }: { on: boolean }) =>
      event.type === 'tester.press' && event.on === on && goesThrough(context.mode, event),
    /** Most acts leave nothing behind to remember, and a snapshot made for nothing costs as much as any. */
    remembers: ({ context, event }) =>
      !isHappening(event) &&
      goesThrough(context.mode, event) &&
      memoryAfter(event.stood, event) !== event.stood.memory,
    standsAtOff: ({ event }) => event.stood.selector === 'off',
    putsAway: ({ context, event }) =>
      !isHappening(event) && !LEAVES_IN_HAND.has(event.type) && goesThrough(context.mode, event),
  },
});

/** Acts of pen and chalk that can be done with lens or gauge still at the part. */
const LEAVES_IN_HAND: ReadonlySet<string> = new Set(['sheet.write', 'verdict.write', 'chalk.mark']);

/** Every region asks what becomes of an event: it is judged once. */
const judged = new WeakMap<Told, Outcome>();

/** Hands over what became of an event where that has been judged already. */
export function rememberJudged(event: Told, outcome: Outcome): void {
  judged.set(event, outcome);
}

function outcomeOf(mode: Mode, event: Told): Outcome {
  const known = judged.get(event) ?? judge(event.stood, event, mode);
  judged.set(event, known);
  return known;
}

function goesThrough(mode: Mode, event: Told): boolean {
  return outcomeOf(mode, event).kind === 'done';
}

/** The critical breach of an event that goes through. */
export function criticalBreach(mode: Mode, event: Told): Breach | undefined {
  const outcome = outcomeOf(mode, event);
  return outcome.kind === 'done' ? outcome.breaches.find((breach) => breach.critical) : undefined;
}
