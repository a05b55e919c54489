import { bench } from './benchSetup.ts';
import { isHappening } from './happening.ts';
import { memoryAfter } from './memory.ts';
import { tipsAfter, turnedBy } from './tips.ts';

/** Regions of one state each, that only remember. */

const followTips = bench.assign({
  tips: ({ context, event }) => tipsAfter(context.tips, event, event.stood),
});

/** The armature turns, and with it the bars under tips that stay where they are. */
const turn = bench.assign({
  rotationDeg: ({ context, event }) =>
    event.type === 'armature.turn' ? turnedBy(context.rotationDeg, event.byDeg) : context.rotationDeg,
  tips: ({ context, event }) => tipsAfter(context.tips, event, event.stood),
});

/** Where every lead is and which metal its tip is on, how the armature lies, dials, chalk, clamps of the feed. */
export const marks = bench.createStateConfig({
  on: {
    'lead.*': { guard: 'passes', actions: followTips },
    'armature.place': { guard: 'passes', actions: followTips },
    'armature.lift': { guard: 'passes', actions: followTips },
    'armature.turn': { guard: 'passes', actions: turn },
    'part.putBack': { guard: 'passes', actions: followTips },
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
    'tester.volts': {
      guard: 'passes',
      actions: bench.assign({
        testVolt: ({ context, event }) => (event.type === 'tester.volts' ? event.to : context.testVolt),
      }),
    },
    'drop.feed': {
      guard: 'passes',
      actions: bench.assign({
        feed: ({ context, event }) => (event.type === 'drop.feed' ? event.at : context.feed),
      }),
    },
  },
});

/** What is remembered of acts gone by. */
export const memory = bench.createStateConfig({
  on: {
    '*': {
      guard: 'remembers',
      actions: bench.assign({
        memory: ({ context, event }) =>
          isHappening(event) ? context.memory : memoryAfter(event.stood, event),
      }),
    },
  },
});
