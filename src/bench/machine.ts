import type { SnapshotFrom } from 'xstate';
import { DEFAULT_TEST_VOLT } from '../engine/instruments/insulationTester.ts';
import { RANGES_A } from './action.ts';
import { bench } from './benchSetup.ts';
import { attempt, cradle, cutOut, lamp, lens, marks, selector, strip } from './deviceRegions.ts';
import { handRegion, leadRegion } from './handRegions.ts';
import { dropFeed, fieldBrushes, gauge, matRegion, memory, tester } from './partRegions.ts';
import { TIPS_HOLSTERED } from './tips.ts';

export type { BenchInput, Told } from './benchSetup.ts';

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
    ammeter1: leadRegion('ammeter.1'),
    ammeter2: leadRegion('ammeter.2'),
    lamp1: leadRegion('lamp.1'),
    lamp2: leadRegion('lamp.2'),
    tester1: leadRegion('tester.1'),
    tester2: leadRegion('tester.2'),
    drop1: leadRegion('drop.1'),
    drop2: leadRegion('drop.2'),
    fieldFrame: matRegion('fieldFrame'),
    brushPlate: matRegion('brushPlate'),
    fieldBrushes,
    gauge,
    tester,
    dropFeed,
    memory,
    marks,
  },
});
export type BenchSnapshot = SnapshotFrom<typeof benchMachine>;
