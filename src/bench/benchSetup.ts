import { setup } from 'xstate';
import type { RangeA } from './action.ts';
import type { CommutatorGeometry } from './geometry.ts';
import type { BenchEvent } from './happening.ts';
import { makesLampTest } from './interlocks.ts';
import { goesThrough, isHappening, judge } from './judge.ts';
import type { LeadId, Place } from './places.ts';
import type { Breach, Mode } from './port.ts';
import { type BenchState, type HandIndex, handFor } from './state.ts';
import type { Tips } from './tips.ts';

export interface BenchInput {
  readonly mode: Mode;
  readonly geometry: CommutatorGeometry;
  /** Rotation the armature lies at when it is first placed, degrees. */
  readonly startRotationDeg: number;
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
    passes: ({ context, event }) => goesThrough(event.stood, event, context.mode),
    critical: ({ context, event }) => criticalBreach(context.mode, event) !== undefined,
    takesWith: ({ context, event }, { hand, lead }: { hand: HandIndex; lead?: LeadId }) =>
      !isHappening(event) &&
      (lead === undefined || ('lead' in event && event.lead === lead)) &&
      handFor(event.stood, event) === hand &&
      goesThrough(event.stood, event, context.mode),
    ofLead: ({ context, event }, { lead }: { lead: LeadId }) =>
      'lead' in event && event.lead === lead && goesThrough(event.stood, event, context.mode),
    turnsTo: ({ context, event }, { to }: { to: BenchState['selector'] }) =>
      event.type === 'selector.turn' && event.to === to && goesThrough(event.stood, event, context.mode),
    leavesLow: ({ context, event }) =>
      event.type === 'selector.turn' && event.to !== 'low' && goesThrough(event.stood, event, context.mode),
    testsWithLamp: ({ context, event }) =>
      makesLampTest(event.stood, event) && goesThrough(event.stood, event, context.mode),
    standsAtOff: ({ event }) => event.stood.selector === 'off',
    putsLensAway: ({ context, event }) =>
      !isHappening(event) && !LEAVES_LENS.has(event.type) && goesThrough(event.stood, event, context.mode),
  },
});

/** Acts of pen and chalk that can be done with the lens still over the part. */
const LEAVES_LENS: ReadonlySet<string> = new Set(['lens.look', 'sheet.write', 'verdict.write', 'chalk.mark']);

/** The critical breach of an event that goes through. */
export function criticalBreach(mode: Mode, event: Told): Breach | undefined {
  const outcome = judge(event.stood, event, mode);
  return outcome.kind === 'done' ? outcome.breaches.find((breach) => breach.critical) : undefined;
}
