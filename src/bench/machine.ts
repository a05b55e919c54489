import { type SnapshotFrom, setup } from 'xstate';
import { RANGES_A, type RangeA } from './action.ts';
import type { CommutatorGeometry } from './geometry.ts';
import type { BenchEvent } from './happening.ts';
import { makesLampTest } from './interlocks.ts';
import { goesThrough, isHappening, judge } from './judge.ts';
import { LEAD_IDS, type LeadId, type Place } from './places.ts';
import type { Breach, Mode } from './port.ts';
import { type BenchState, type HandIndex, handFor } from './state.ts';
import { TIPS_HOLSTERED, type Tips, tipsAfter, turnedBy } from './tips.ts';

export interface BenchInput {
  readonly mode: Mode;
  readonly geometry: CommutatorGeometry;
  /** Rotation the armature lies at when it is first placed, degrees. */
  readonly startRotationDeg: number;
}

/** What the machine remembers besides the states of its regions. */
interface Context extends BenchInput {
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

const bench = setup({
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

function criticalBreach(mode: Mode, event: Told): Breach | undefined {
  const outcome = judge(event.stood, event, mode);
  return outcome.kind === 'done' ? outcome.breaches.find((breach) => breach.critical) : undefined;
}

const followTips = bench.assign({
  tips: ({ context, event }) => tipsAfter(context.tips, event, event.stood),
});

const attempt = bench.createStateConfig({
  initial: 'working',
  states: {
    working: {
      on: {
        'job.handIn': { guard: 'passes', target: 'handedIn' },
        '*': {
          guard: 'critical',
          target: 'stopped',
          actions: bench.assign({
            stoppedBy: ({ context, event }) => criticalBreach(context.mode, event) ?? null,
          }),
        },
      },
    },
    stopped: {},
    handedIn: {},
  },
});

const toPosition = (to: BenchState['selector']) =>
  ({ guard: { type: 'turnsTo', params: { to } }, target: to }) as const;
const selector = bench.createStateConfig({
  initial: 'off',
  states: {
    off: { on: { 'selector.turn': [toPosition('low'), toPosition('high')] } },
    low: { on: { 'selector.turn': [toPosition('off'), toPosition('high')] } },
    high: { on: { 'selector.turn': [toPosition('off'), toPosition('low')] } },
  },
});

/** Arms itself again only at OFF, so that a bench that has cooled does not start by itself. */
const cutOut = bench.createStateConfig({
  initial: 'armed',
  states: {
    armed: { on: { 'bench.tripped': 'tripped' } },
    tripped: { on: { 'bench.cooled': [{ guard: 'standsAtOff', target: 'armed' }, { target: 'cooled' }] } },
    cooled: {
      on: { 'selector.turn': { guard: { type: 'turnsTo', params: { to: 'off' } }, target: 'armed' } },
    },
  },
});

const turn = bench.assign({
  rotationDeg: ({ context, event }) =>
    event.type === 'armature.turn' ? turnedBy(context.rotationDeg, event.byDeg) : context.rotationDeg,
});
const cradle = bench.createStateConfig({
  initial: 'neverUsed',
  states: {
    neverUsed: {
      on: {
        'armature.place': {
          guard: 'passes',
          target: 'armature',
          actions: bench.assign({ rotationDeg: ({ context }) => turnedBy(context.startRotationDeg, 0) }),
        },
      },
    },
    armature: {
      on: {
        'armature.lift': { guard: 'passes', target: 'empty' },
        'armature.turn': { guard: 'passes', actions: turn },
      },
    },
    empty: { on: { 'armature.place': { guard: 'passes', target: 'armature' } } },
  },
});

const holdStrip = bench.assign(({ event }) =>
  event.type === 'strip.hold' ? { stripAngleDeg: event.angleDeg, stripHeightMm: event.heightMm } : {},
);
const takeStripAway = bench.assign({ stripAngleDeg: null, stripHeightMm: null });
const strip = bench.createStateConfig({
  initial: 'rail',
  states: {
    rail: { on: { 'strip.take': { guard: 'passes', target: 'hand' } } },
    hand: {
      on: {
        'strip.hold': { guard: 'passes', target: 'core', actions: holdStrip },
        'strip.hang': { guard: 'passes', target: 'rail' },
      },
    },
    core: {
      exit: takeStripAway,
      on: {
        'strip.hold': { guard: 'passes', actions: holdStrip },
        'strip.away': { guard: 'passes', target: 'hand' },
        'strip.hang': { guard: 'passes', target: 'rail' },
        'armature.lift': { guard: 'passes', target: 'hand' },
      },
    },
  },
});

const look = {
  guard: 'passes',
  target: 'held',
  actions: bench.assign({ looksAt: ({ event }) => (event.type === 'lens.look' ? event.place : null) }),
} as const;
const lens = bench.createStateConfig({
  initial: 'rail',
  states: {
    rail: { on: { 'lens.look': look } },
    held: {
      on: {
        'lens.look': look,
        '*': { guard: 'putsLensAway', target: 'rail', actions: bench.assign({ looksAt: null }) },
      },
    },
  },
});

/** Prove, test, prove again; what was proved on one spell of LOW does not hold for the next. */
const lampTest = { guard: 'testsWithLamp', target: 'used' } as const;
const lampDead = { guard: 'leavesLow', target: 'unproved' } as const;
const lamp = bench.createStateConfig({
  initial: 'unproved',
  states: {
    unproved: { on: { 'lamp.proved': 'proved', 'lead.touch': lampTest, 'selector.turn': lampTest } },
    proved: { on: { 'lead.touch': lampTest, 'selector.turn': lampDead, 'bench.tripped': 'unproved' } },
    used: { on: { 'lamp.proved': 'proved', 'selector.turn': lampDead, 'bench.tripped': 'unproved' } },
  },
});

/** Dots separate levels of a state, so the leads go by these names inside the machine. */
const LEAD_STATE = {
  'ammeter.1': 'ammeter1',
  'ammeter.2': 'ammeter2',
  'lamp.1': 'lamp1',
  'lamp.2': 'lamp2',
} as const satisfies Record<LeadId, string>;

function takes(hand: HandIndex, lead: LeadId, target: string = LEAD_STATE[lead]) {
  return { guard: { type: 'takesWith', params: { hand, lead } }, target } as const;
}

function letsGo(lead: LeadId, target: string) {
  return { guard: { type: 'ofLead', params: { lead } }, target } as const;
}

function holdsLead(hand: HandIndex, lead: LeadId, joins: LeadId | null) {
  const on = { 'lead.holster': letsGo(lead, 'nothing'), 'lead.clamp': letsGo(lead, 'nothing') };
  return joins === null ? { on } : { on: { ...on, 'lead.take': takes(hand, joins, 'bothAmmeterLeads') } };
}

function handRegion(hand: HandIndex) {
  const withHand = { type: 'takesWith', params: { hand } } as const;
  const letsGoOne = [letsGo('ammeter.1', 'ammeter2'), letsGo('ammeter.2', 'ammeter1')];
  return bench.createStateConfig({
    initial: 'nothing',
    states: {
      nothing: {
        on: {
          'armature.hold': { guard: withHand, target: 'armature' },
          'strip.take': { guard: withHand, target: 'strip' },
          'lead.take': LEAD_IDS.map((lead) => takes(hand, lead)),
        },
      },
      armature: {
        on: {
          'armature.release': { guard: 'passes', target: 'nothing' },
          'armature.lift': { guard: 'passes', target: 'nothing' },
        },
      },
      strip: { on: { 'strip.hang': { guard: 'passes', target: 'nothing' } } },
      ammeter1: holdsLead(hand, 'ammeter.1', 'ammeter.2'),
      ammeter2: holdsLead(hand, 'ammeter.2', 'ammeter.1'),
      lamp1: holdsLead(hand, 'lamp.1', null),
      lamp2: holdsLead(hand, 'lamp.2', null),
      bothAmmeterLeads: { on: { 'lead.holster': letsGoOne, 'lead.clamp': letsGoOne } },
    },
  });
}

function leadRegion(lead: LeadId) {
  const guard = { type: 'ofLead', params: { lead } } as const;
  return bench.createStateConfig({
    initial: 'holster',
    states: {
      holster: { on: { 'lead.take': { guard, target: 'hand' } } },
      hand: {
        on: { 'lead.holster': { guard, target: 'holster' }, 'lead.clamp': { guard, target: 'stand' } },
      },
      stand: { on: { 'lead.take': { guard, target: 'hand' }, 'lead.holster': { guard, target: 'holster' } } },
    },
  });
}

/** What is only remembered: which metal each tip is on, the range dial, the chalk. */
const marks = bench.createStateConfig({
  on: {
    'lead.*': { guard: 'passes', actions: followTips },
    'armature.turn': { guard: 'passes', actions: followTips },
    'armature.lift': { guard: 'passes', actions: followTips },
    'range.turn': {
      guard: 'passes',
      actions: bench.assign({
        rangeA: ({ context, event }) => (event.type === 'range.turn' ? event.to : context.rangeA),
      }),
    },
    'chalk.mark': {
      guard: 'passes',
      actions: bench.assign({
        chalkedBar: ({ context, event }) => (event.type === 'chalk.mark' ? event.bar : context.chalkedBar),
      }),
    },
  },
});

/** The bench, its leads and the two hands at it, as a statechart. Time enters through happenings, never through timers. */
export const benchMachine = bench.createMachine({
  id: 'bench',
  type: 'parallel',
  context: ({ input }) => ({
    ...input,
    tips: TIPS_HOLSTERED,
    rotationDeg: 0,
    rangeA: RANGES_A[RANGES_A.length - 1]!,
    chalkedBar: null,
    looksAt: null,
    stripAngleDeg: null,
    stripHeightMm: null,
    stoppedBy: null,
  }),
  states: {
    attempt,
    selector,
    cutOut,
    cradle,
    strip,
    lens,
    lamp,
    left: handRegion(0),
    right: handRegion(1),
    ammeter1: leadRegion('ammeter.1'),
    ammeter2: leadRegion('ammeter.2'),
    lamp1: leadRegion('lamp.1'),
    lamp2: leadRegion('lamp.2'),
    marks,
  },
});
export type BenchSnapshot = SnapshotFrom<typeof benchMachine>;
