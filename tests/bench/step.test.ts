import { describe, expect, it } from 'vitest';
import { adjacencyMapToArray, getAdjacencyMap } from 'xstate/graph';
import type { BenchEvent } from '../../src/bench/happening.ts';
import { ARMATURE_KIT, type Kit } from '../../src/bench/kit.ts';
import { type BenchSnapshot, benchMachine, type Told } from '../../src/bench/machine.ts';
import { benchState, nextBench, tell } from '../../src/bench/step.ts';
import { CRADLE, CUT_OUT, FOUR_BARS, leadWork, PROOF, SELECTOR, STRIP, TURNING } from './walk.ts';

const LOOKING: readonly BenchEvent[] = [
  { type: 'lens.look', place: 'bar:0' },
  { type: 'chalk.mark', bar: 1 },
  { type: 'gauge.read', gauge: 'diameter' },
];
const RAIL: Kit = { ...ARMATURE_KIT, mat: ['fieldFrame'], tester: true, drop: true };

/** Every act and happening at least once, in walks small enough to be complete. */
const WALKS: Readonly<Record<string, { readonly kit: Kit; readonly alphabet: readonly BenchEvent[] }>> = {
  'turning, looking and chalk': { kit: ARMATURE_KIT, alphabet: [...CRADLE, ...TURNING, ...LOOKING] },
  'strip and cut-out': { kit: ARMATURE_KIT, alphabet: [...SELECTOR, ...CRADLE, ...STRIP, ...CUT_OUT] },
  'the lamp': {
    kit: ARMATURE_KIT,
    alphabet: [
      ...SELECTOR,
      PROOF,
      { type: 'armature.place' },
      ...leadWork('lamp.1', ['core', 'tip:lamp.2'], ['handle', 'tip']),
      { type: 'job.handIn' },
    ],
  },
  'the tools of the rail': {
    kit: RAIL,
    alphabet: [
      { type: 'part.takeUp', part: 'fieldFrame' },
      { type: 'part.putBack', part: 'fieldFrame' },
      { type: 'brushes.part' },
      { type: 'brushes.join' },
      { type: 'lead.take', lead: 'tester.1', grip: 'handle' },
      { type: 'lead.touch', lead: 'tester.1', place: 'field:case' },
      { type: 'lead.clamp', lead: 'tester.1' },
      { type: 'lead.holster', lead: 'tester.1' },
      { type: 'tester.press', on: true },
      { type: 'tester.press', on: false },
      { type: 'tester.volts', to: 500 },
      { type: 'range.turn', to: 15 },
    ],
  },
};

describe('a step of the bench', () => {
  for (const [name, { kit, alphabet }] of Object.entries(WALKS)) {
    it(`asks no region too few: ${name}`, () => {
      const map = getAdjacencyMap(benchMachine, {
        input: { mode: 'practice', geometry: FOUR_BARS, startRotationDeg: 0, kit },
        events: (snapshot) => alphabet.map((event) => tell(snapshot as BenchSnapshot, event)),
        serializeEvent: ({ stood: _, outcome: __, ...event }) => JSON.stringify(event),
        serializeState: (snapshot) => kept(snapshot as BenchSnapshot),
      });
      const steps = adjacencyMapToArray<BenchSnapshot, Told>(map);
      expect(steps.length).toBeGreaterThan(50);
      const moved = new Set<string>();
      for (const { state, event, nextState } of steps) {
        const { stood, outcome: _, ...bare } = event;
        const next = nextBench(state, bare as BenchEvent);
        expect(benchState(next)).toEqual(benchState(nextState));
        if (kept(next) !== kept(state)) moved.add(event.type);
        else expect(benchState(state)).toEqual(stood);
      }
      expect([...moved].sort()).toEqual([...new Set(alphabet.map(({ type }) => type))].sort());
    });
  }
});

function kept({ value, context: { kit: _, ...context } }: BenchSnapshot): string {
  return JSON.stringify([value, { ...context, memory: { ...context.memory, minutesSpent: 0 } }]);
}
