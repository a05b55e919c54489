import { bench, criticalBreach } from './benchSetup.ts';
import type { BenchState } from './state.ts';
import { turnedBy } from './tips.ts';

export const attempt = bench.createStateConfig({
  initial: 'working',
  states: {
    working: {
      on: {
        'job.handIn': { guard: 'passes', target: 'handedIn' },
        '*': {
          guard: 'critical',
          target: 'stopped',
          actions: bench.assign({
            stoppedBy: ({ event }) => criticalBreach(event) ?? null,
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
export const selector = bench.createStateConfig({
  initial: 'off',
  states: {
    off: { on: { 'selector.turn': [toPosition('low'), toPosition('high')] } },
    low: { on: { 'selector.turn': [toPosition('off'), toPosition('high')] } },
    high: { on: { 'selector.turn': [toPosition('off'), toPosition('low')] } },
  },
});

/** Arms itself again only at OFF, so that a bench that has cooled does not start by itself. */
export const cutOut = bench.createStateConfig({
  initial: 'armed',
  states: {
    armed: { on: { 'bench.tripped': 'tripped' } },
    tripped: { on: { 'bench.cooled': [{ guard: 'standsAtOff', target: 'armed' }, { target: 'cooled' }] } },
    cooled: {
      on: { 'selector.turn': { guard: { type: 'turnsTo', params: { to: 'off' } }, target: 'armed' } },
    },
  },
});

export const cradle = bench.createStateConfig({
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
      },
    },
    empty: { on: { 'armature.place': { guard: 'passes', target: 'armature' } } },
  },
});

const holdStrip = bench.assign(({ event }) =>
  event.type === 'strip.hold' ? { stripAngleDeg: event.angleDeg, stripHeightMm: event.heightMm } : {},
);
const takeStripAway = bench.assign({ stripAngleDeg: null, stripHeightMm: null });
export const strip = bench.createStateConfig({
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
export const lens = bench.createStateConfig({
  initial: 'rail',
  states: {
    rail: { on: { 'lens.look': look } },
    held: {
      on: {
        'lens.look': look,
        '*': { guard: 'putsAway', target: 'rail', actions: bench.assign({ looksAt: null }) },
      },
    },
  },
});

/** Prove, test, prove again; what was proved on one spell of LOW does not hold for the next. */
const lampTest = { guard: 'testsWithLamp', target: 'used' } as const;
const lampDead = { guard: 'leavesLow', target: 'unproved' } as const;
export const lamp = bench.createStateConfig({
  initial: 'unproved',
  states: {
    unproved: { on: { 'lamp.proved': 'proved', 'lead.touch': lampTest, 'selector.turn': lampTest } },
    proved: { on: { 'lead.touch': lampTest, 'selector.turn': lampDead, 'bench.tripped': 'unproved' } },
    used: { on: { 'lamp.proved': 'proved', 'selector.turn': lampDead, 'bench.tripped': 'unproved' } },
  },
});
