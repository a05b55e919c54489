import type { MatPart } from './action.ts';
import { bench } from './benchSetup.ts';

/** A part on the mat: not of this job, standing at the back, or brought forward. */
export function matRegion(part: MatPart) {
  const onMat = { type: 'onMat', params: { part } } as const;
  const guard = { type: 'ofPart', params: { part } } as const;
  return bench.createStateConfig({
    initial: 'absent',
    states: {
      absent: { always: { guard: onMat, target: 'away' } },
      away: { on: { 'part.takeUp': { guard, target: 'forward' } } },
      forward: { on: { 'part.putBack': { guard, target: 'away' } } },
    },
  });
}

/** The two field brushes lie against one another until someone keeps them apart. */
export const fieldBrushes = bench.createStateConfig({
  initial: 'together',
  states: {
    together: { on: { 'brushes.part': { guard: 'passes', target: 'apart' } } },
    apart: { on: { 'brushes.join': { guard: 'passes', target: 'together' } } },
  },
});

const measure = {
  guard: 'passes',
  target: 'held',
  actions: bench.assign({
    gauge: ({ event }) =>
      event.type === 'gauge.read' ? { gauge: event.gauge, brush: event.brush ?? null } : null,
  }),
} as const;
export const gauge = bench.createStateConfig({
  initial: 'rail',
  states: {
    rail: { on: { 'gauge.read': measure } },
    held: {
      on: {
        'gauge.read': measure,
        '*': { guard: 'putsAway', target: 'rail', actions: bench.assign({ gauge: null }) },
      },
    },
  },
});

/** Button of the insulation tester. */
export const tester = bench.createStateConfig({
  initial: 'up',
  states: {
    up: { on: { 'tester.press': { guard: { type: 'presses', params: { on: true } }, target: 'down' } } },
    down: { on: { 'tester.press': { guard: { type: 'presses', params: { on: false } }, target: 'up' } } },
  },
});
