import type { SnapshotFrom } from 'xstate';
import { DEFAULT_TEST_VOLT } from '../engine/instruments/insulationTester.ts';
import { RANGES_A } from './action.ts';
import { bench } from './benchSetup.ts';
import { attempt, cradle, cutOut, lamp, lens, selector, strip } from './deviceRegions.ts';
import { handRegion } from './handRegions.ts';
import { marks, memory } from './keptRegions.ts';
import { fieldBrushes, gauge, matRegion, tester } from './partRegions.ts';
import { tipsHung } from './tips.ts';

export type { BenchInput, Told } from './benchSetup.ts';

/** The bench, its leads and the two hands at it, as a statechart. Time enters through happenings, never through timers. */
export const benchMachine = bench.createMachine({
  id: 'bench',
  type: 'parallel',
  context: ({ input }) => ({
    ...input,
    tips: tipsHung(input.kit),
    rotationDeg: 0,
    rangeA: RANGES_A[RANGES_A.length - 1]!,
    chalkedBar: null,
    looksAt: null,
    stripAngleDeg: null,
    stripHeightMm: null,
    gauge: null,
    testVolt: DEFAULT_TEST_VOLT,
    feed: null,
    memory: { charged: null, lampTested: [], cracked: input.kit.cracked, minutesSpent: 0, prepared: [] },
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
    fieldFrame: matRegion('fieldFrame'),
    brushPlate: matRegion('brushPlate'),
    fieldBrushes,
    gauge,
    tester,
    memory,
    marks,
  },
});
export type BenchSnapshot = SnapshotFrom<typeof benchMachine>;
