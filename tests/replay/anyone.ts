import fc from 'fast-check';
import { type Action, BENCH_CARES, BRUSHES, GAUGES, MAT_PARTS, RANGES_A } from '../../src/bench/action.ts';
import { ALL_LEADS, FIELD_PLACES, PLATE_PLACES, type Place } from '../../src/bench/places.ts';
import type { ArmatureFault } from '../../src/engine/parts/armatureFault.ts';
import { REMEDIES } from '../../src/engine/parts/remedies.ts';
import type { JobOptions } from '../support/benchDriver.ts';

/** Someone at the bench who may do anything, sensible or not, at any pace. */
export interface Doing {
  readonly afterMs: number;
  readonly action: Action;
}

const bar = fc.integer({ min: 0, max: 24 });
const place: fc.Arbitrary<Place> = fc.oneof(
  { weight: 6, arbitrary: bar.map((n): Place => `bar:${n}`) },
  { weight: 1, arbitrary: bar.map((n): Place => `riser:${n}`) },
  { weight: 2, arbitrary: fc.constantFrom<Place>('core', 'shaft') },
  { weight: 2, arbitrary: fc.constantFrom(...ALL_LEADS).map((lead): Place => `tip:${lead}`) },
  { weight: 3, arbitrary: fc.constantFrom<Place>(...FIELD_PLACES, ...PLATE_PLACES) },
  { weight: 1, arbitrary: fc.constantFrom<Place>('handle:lamp.1', 'lampBulb') },
);
const lead = fc.constantFrom(...ALL_LEADS);

/** Leads, hands and armature come up more often than what ends or idles an attempt. */
const action: fc.Arbitrary<Action> = fc.oneof(
  {
    weight: 4,
    arbitrary: fc.constantFrom('off', 'low', 'high').map((to) => act({ type: 'selector.turn', to })),
  },
  { weight: 2, arbitrary: fc.constantFrom(...RANGES_A).map((to) => act({ type: 'range.turn', to })) },
  { weight: 3, arbitrary: fc.constant(act({ type: 'armature.place' })) },
  {
    weight: 1,
    arbitrary: fc
      .constantFrom('armature.lift', 'armature.hold', 'armature.release')
      .map((type) => act({ type })),
  },
  {
    weight: 5,
    arbitrary: fc
      .double({ min: -200, max: 200, noNaN: true })
      .map((byDeg) => act({ type: 'armature.turn', byDeg: byDeg + 0 })),
  },
  {
    weight: 6,
    arbitrary: fc
      .tuple(lead, fc.constantFrom('handle', 'handle', 'handle', 'tip'))
      .map(([id, grip]) => act({ type: 'lead.take', lead: id, grip })),
  },
  {
    weight: 12,
    arbitrary: fc.tuple(lead, place).map(([id, on]) => act({ type: 'lead.touch', lead: id, place: on })),
  },
  {
    weight: 6,
    arbitrary: fc
      .tuple(fc.constantFrom('lead.lift', 'lead.clamp', 'lead.holster'), lead)
      .map(([type, id]) => act({ type, lead: id })),
  },
  {
    weight: 3,
    arbitrary: fc.constantFrom('strip.take', 'strip.away', 'strip.hang').map((type) => act({ type })),
  },
  {
    weight: 3,
    arbitrary: fc
      .tuple(fc.double({ min: 60, max: 300, noNaN: true }), fc.constantFrom(0.5, 1, 3))
      .map(([angleDeg, heightMm]) => act({ type: 'strip.hold', angleDeg, heightMm })),
  },
  { weight: 1, arbitrary: place.map((on) => act({ type: 'lens.look', place: on })) },
  {
    weight: 4,
    arbitrary: fc
      .tuple(fc.constantFrom('part.takeUp', 'part.takeUp', 'part.putBack'), fc.constantFrom(...MAT_PARTS))
      .map(([type, part]) => act({ type, part })),
  },
  {
    weight: 3,
    arbitrary: fc.constantFrom(
      act({ type: 'brushes.part' }),
      act({ type: 'brushes.join' }),
      act({ type: 'tester.press', on: true }),
      act({ type: 'tester.press', on: false }),
      act({ type: 'tester.discharge' }),
      act({ type: 'tester.volts', to: 500 }),
      act({ type: 'prepare.check', item: 'ringsOff' }),
    ),
  },
  {
    weight: 2,
    arbitrary: fc.tuple(lead, fc.boolean()).map(([id, on]) => act({ type: 'lead.lean', lead: id, on })),
  },
  {
    weight: 2,
    arbitrary: fc
      .oneof(fc.constant(null), fc.tuple(place, place))
      .map((at) => act({ type: 'drop.feed', at })),
  },
  {
    weight: 2,
    arbitrary: fc
      .oneof(
        fc.constantFrom(...GAUGES).map((gauge) => ({ gauge })),
        fc.constantFrom(...BRUSHES).map((brush) => ({ gauge: 'brushLength', brush })),
      )
      .map((read) => act({ type: 'gauge.read', ...read })),
  },
  {
    weight: 2,
    arbitrary: fc.oneof(
      fc.constantFrom(...REMEDIES).map((remedy) => act({ type: 'remedy.do', remedy })),
      bar.map((n) => act({ type: 'remedy.do', remedy: 'resolderRiser', bar: n })),
      fc.constantFrom(...BENCH_CARES).map((what) => act({ type: 'bench.setRight', what })),
    ),
  },
  { weight: 1, arbitrary: bar.map((n) => act({ type: 'chalk.mark', bar: n })) },
);

function act(made: { readonly type: string; readonly [field: string]: unknown }): Action {
  return made as Action;
}

/** Mostly the pace of a hand, now and then long enough for a needle, a filament or the thermal cut-out. */
const pace = fc.oneof(
  { weight: 10, arbitrary: fc.double({ min: 0, max: 1500, noNaN: true }) },
  { weight: 3, arbitrary: fc.integer({ min: 0, max: 8000 }) },
  { weight: 1, arbitrary: fc.integer({ min: 30_000, max: 200_000 }) },
);

export const doings: fc.Arbitrary<readonly Doing[]> = fc.array(fc.record({ afterMs: pace, action }), {
  minLength: 5,
  maxLength: 60,
});

const faults = fc.constantFrom<readonly ArmatureFault[]>(
  [],
  [{ kind: 'riserJoint', bar: 5, form: 'bar', ohm: 'open' }],
  [{ kind: 'bridgedBars', bar: 3, ohm: 2e-4, by: 'copper' }],
  [{ kind: 'groundedBar', bar: 2, ohm: 0.5 }, { kind: 'dirtyCommutator' }],
  [{ kind: 'openCoil', coil: 1 }],
);

export const jobs: fc.Arbitrary<JobOptions> = fc
  .record<JobOptions>({
    part: fc.constantFrom('wave-23', 'lap-24'),
    mode: fc.constantFrom('guided', 'practice', 'assessed'),
    mains: fc.constantFrom('230V50Hz', '120V60Hz'),
    seed: fc.integer({ min: 0, max: 1e6 }),
    startRotationDeg: fc.integer({ min: 0, max: 359 }),
    faults,
    parts: fc.constantFrom<JobOptions['parts']>(['armature'], ['armature', 'fieldFrame', 'brushPlate']),
    tests: fc.constantFrom<JobOptions['tests']>(['look'], ['look', 'ground', 'megohm', 'millivolt']),
  })
  .chain(withMatFaults);

/** Faults of field frame, brush plate and bench, where the job has those parts. */
function withMatFaults(job: JobOptions): fc.Arbitrary<JobOptions> {
  const onMat = job.parts?.includes('fieldFrame') ? { ...job, ...MAT_FAULTS } : job;
  return fc.constantFrom<JobOptions>(job, onMat, { ...onMat, ...BENCH_FAULTS });
}
const MAT_FAULTS: JobOptions = {
  fieldFaults: [{ kind: 'groundedCoil', coil: 1, fraction: 0.5, ohm: 0.5 }],
  plateFaults: [{ kind: 'looseRivet', holder: 'plate:insulated1', makes: 'pressed', ohm: 0.5 }],
};
const BENCH_FAULTS: JobOptions = {
  benchFaults: [
    { kind: 'brokenLead', lead: 'lamp.1' },
    { kind: 'ammeterZero', offset: 0.03 },
  ],
};

/** A fresh seed for every run, printed so that a failure can be run again: SEED=… npx vitest run … */
export function printedSeed(what: string): number {
  const seed = Number(process.env.SEED ?? Math.floor(Math.random() * 2 ** 31));
  console.info(`${what}: seed ${seed}`);
  return seed;
}
