import { setup } from 'xstate';
import type { TestVolt } from '../engine/instruments/insulationTester.ts';
import type { MatPart, RangeA } from './action.ts';
import type { CommutatorGeometry } from './geometry.ts';
import { type BenchEvent, isHappening } from './happening.ts';
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

/** What is known of an event before the machine takes it. */
export interface Judged {
  /** The bench laid flat, as it stood when the event came: guards look across regions through it. */
  readonly stood: BenchState;
  readonly outcome: Outcome;
}

type WithBench<E> = E extends BenchEvent ? E & Judged : never;
/** An event as the machine takes it. Made by `tell` only. */
export type Told = WithBench<BenchEvent>;

/** Types and guards that the regions of the statechart share. */
export const bench = setup({
  types: {} as { context: Context; events: Told; input: BenchInput },
  guards: {
    passes: ({ event }) => goesThrough(event),
    critical: ({ event }) => criticalBreach(event) !== undefined,
    takesWith: ({ event }, { hand, lead }: { hand: HandIndex; lead?: LeadId }) =>
      !isHappening(event) &&
      (lead === undefined || ('lead' in event && event.lead === lead)) &&
      handFor(event.stood, event) === hand &&
      goesThrough(event),
    ofLead: ({ event }, { lead }: { lead: LeadId }) =>
      'lead' in event && event.lead === lead && goesThrough(event),
    turnsTo: ({ event }, { to }: { to: BenchState['selector'] }) =>
      event.type === 'selector.turn' && event.to === to && goesThrough(event),
    leavesLow: ({ event }) => event.type === 'selector.turn' && event.to !== 'low' && goesThrough(event),
    testsWithLamp: ({ event }) => makesLampTest(event.stood, event) && goesThrough(event),
    onMat: ({ context }, { part }: { part: MatPart }) => context.kit.mat.includes(part),
    ofPart: ({ event }, { part }: { part: MatPart }) =>
      'part' in event && event.part === part && goesThrough(event),
    presses: ({ event }, { on }: { on: boolean }) =>
      event.type === 'tester.press' && event.on === on && goesThrough(event),
    /** Most acts leave nothing behind to remember, and a snapshot made for nothing costs as much as any. */
    remembers: ({ event }) =>
      !isHappening(event) && goesThrough(event) && memoryAfter(event.stood, event) !== event.stood.memory,
    standsAtOff: ({ event }) => event.stood.selector === 'off',
    putsAway: ({ event }) => !isHappening(event) && !LEAVES_IN_HAND.has(event.type) && goesThrough(event),
  },
});

/** Acts of pen and chalk that can be done with lens or gauge still at the part. */
const LEAVES_IN_HAND: ReadonlySet<string> = new Set(['sheet.write', 'verdict.write', 'chalk.mark']);

function goesThrough({ outcome }: Told): boolean {
  return outcome.kind === 'done';
}

/** The critical breach of an event that goes through. */
export function criticalBreach({ outcome }: Told): Breach | undefined {
  return outcome.kind === 'done' ? outcome.breaches.find((breach) => breach.critical) : undefined;
}
