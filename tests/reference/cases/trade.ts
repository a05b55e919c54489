import { largestSpacing, NOMINAL_LOOP_OHM, spacedStation } from '../../../src/engine/answers.ts';
import { createArmatureSolver } from '../../../src/engine/armatureBench.ts';
import { JUST_FELT_N } from '../../../src/engine/instruments/stripMotion.ts';
import type { ArmatureDesign } from '../../../src/engine/parts/armature.ts';
import type { ArmatureFault } from '../../../src/engine/parts/armatureFault.ts';
import { ARMATURES, drive, LAP_24, LAP_28, WAVE_23 } from '../../engine/support/parts.ts';
import { absolute, between, equal, rowsOf, type WitnessCase, type WitnessGroup } from '../case.ts';
import {
  bridgeAt,
  fallen,
  largestChange,
  largestPull,
  neighbourPass,
  SETUP,
  spacedPass,
} from '../support/bench.ts';

const row = rowsOf({
  unit: '-',
  source: 'common practice, no source',
  verified: 'practice',
  standing: 'independent',
  tolerance: equal,
});
const THEORY = { source: 'theory of closed drum windings', verified: 'calc' } as const;

const open: readonly ArmatureFault[] = [{ kind: 'openCoil', coil: 5 }];
const riser = (ohm: number | 'open'): readonly ArmatureFault[] => [
  { kind: 'riserJoint', bar: 5, form: 'bar', ohm },
];
const ground = (bar: number): ArmatureFault => ({ kind: 'groundedBar', bar, ohm: 0.02 });

const spread = (pass: readonly number[]) => 100 * (Math.max(...pass) / Math.min(...pass) - 1);
/** Spread of the bars that lie alike in their slot, %. */
const kindSpread = (pass: readonly number[], kinds: number) =>
  Math.max(...Array.from({ length: kinds }, (_, k) => spread(pass.filter((_, i) => i % kinds === k))));

/** Lowest reading of a neighbouring pass over the sound one, %. */
function lowest(a: ArmatureDesign, faults: readonly ArmatureFault[]): number {
  const sound = neighbourPass(a, []);
  return 100 * Math.min(...neighbourPass(a, faults).map((amps, bar) => amps / sound[bar]!));
}

const spacingDeg = (a: ArmatureDesign) => (largestSpacing(createArmatureSolver(a), SETUP) * 360) / a.bars;

/** Largest over the smallest of the sound readings with the first probe horizontal. */
function spacedGain(): number {
  const point = createArmatureSolver(WAVE_23).solve([], drive());
  const amps = Array.from({ length: 11 }, (_, k) => {
    const { first, second } = spacedStation(WAVE_23, k + 1);
    return point.reading(first, second, NOMINAL_LOOP_OHM);
  });
  return Math.max(...amps) / amps[0]!;
}

const PERCENT = { unit: '%' } as const;
const sound: WitnessCase[] = [
  row(
    'spacing-wave-23',
    'wave-23: spacing of the largest reading, first probe horizontal',
    () => ({ ours: spacingDeg(WAVE_23), reference: 90 }),
    { unit: '°', tolerance: absolute(360 / 23) },
  ),
  row('spacing-lap-28', 'lap-28: the same', () => ({ ours: spacingDeg(LAP_28), reference: 90 }), {
    unit: '°',
    tolerance: absolute(360 / 28),
  }),
  row('spaced-gain', 'wave-23: that reading over the neighbouring one', () => ({ ours: spacedGain() }), {
    tolerance: between(2, 10),
  }),
  ...[WAVE_23, LAP_28].flatMap((a) => [
    row(
      `even-nb-${a.id}`,
      `${a.id}, sound: spread of the neighbouring pass`,
      () => ({ ours: spread(neighbourPass(a, [])) }),
      {
        ...PERCENT,
        tolerance: between(0, 1e-6),
      },
    ),
    row(
      `even-sp-${a.id}`,
      `${a.id}, sound: spread of the spaced pass`,
      () => ({ ours: spread(spacedPass(a, [])) }),
      {
        ...PERCENT,
        tolerance: between(0, 1e-6),
      },
    ),
  ]),
  row(
    'even-lap-24',
    'lap-24, sound: spread among bars that lie alike in their slots',
    () => ({
      ours: kindSpread(neighbourPass(LAP_24, []), 2),
    }),
    { ...PERCENT, tolerance: between(0, 1e-6) },
  ),
  row(
    'alternate-lap-24',
    'lap-24, two coils to a slot, sound: alternation from bar to bar',
    () => ({
      ours: spread(neighbourPass(LAP_24, [])),
    }),
    { ...PERCENT, tolerance: between(2, 15) },
  ),
];

const list = (values: readonly number[]) => values.join(', ');
const FIRST = { unit: 'first bar' } as const;

const opens: WitnessCase[] = [
  row(
    'open-wave-23',
    'wave-23, coil 5 open: pairs that fall, on opposite sides',
    () => ({
      ours: list(fallen(WAVE_23, open)),
      reference: '4, 16',
    }),
    { ...FIRST, ...THEORY },
  ),
  row(
    'open-lap-28',
    'lap-28, coil 5 open: pairs that fall',
    () => ({ ours: list(fallen(LAP_28, open)), reference: '5' }),
    {
      ...FIRST,
      ...THEORY,
    },
  ),
  ...ARMATURES.flatMap((a) => [
    row(
      `open-volts-${a.id}`,
      `${a.id}, coil open: largest change of an open-circuit voltage (the ring’s volts add up to nothing)`,
      () => ({ ours: openVoltChange(a) }),
      { ...THEORY, unit: 'V', tolerance: between(0, 1e-9) },
    ),
    row(
      `riser-${a.id}`,
      `${a.id}, riser joint of bar 5 at 20 mΩ: pairs that fall`,
      () => ({
        ours: list(fallen(a, riser(0.02))),
        reference: '4, 5',
      }),
      FIRST,
    ),
    row(
      `riser-open-${a.id}`,
      `${a.id}, riser joint of bar 5 open: what its two pairs read`,
      () => {
        const pass = neighbourPass(a, riser('open'));
        return { ours: pass[4]! + pass[5]!, reference: 0 };
      },
      { unit: 'A' },
    ),
    row(
      `ground-one-${a.id}`,
      `${a.id}, one bar grounded: largest change of an ammeter reading`,
      () => ({
        ours: Math.max(
          largestChange(neighbourPass(a, [ground(5)]), neighbourPass(a, [])),
          largestChange(spacedPass(a, [ground(5)]), spacedPass(a, [])),
        ),
      }),
      { ...PERCENT, ...THEORY, tolerance: between(0, 1e-9) },
    ),
  ]),
  row(
    'end-off',
    'wave-23, one coil end off its bar against an open coil: largest difference of a reading',
    () => {
      const off: ArmatureFault = { kind: 'riserJoint', bar: 5, form: 'oneEnd', ohm: 'open' };
      return { ours: largestChange(neighbourPass(WAVE_23, [off]), neighbourPass(WAVE_23, open)) };
    },
    { ...PERCENT, ...THEORY, tolerance: between(0, 1e-9) },
  ),
  row(
    'ground-two',
    'lap-24, two bars grounded: largest change of a reading',
    () => ({
      ours: 100 * largestChange(neighbourPass(LAP_24, [ground(5), ground(17)]), neighbourPass(LAP_24, [])),
    }),
    { ...PERCENT, ...THEORY, tolerance: between(20, 1000) },
  ),
];

function openVoltChange(a: ArmatureDesign): number {
  const solver = createArmatureSolver(a);
  const whole = solver.solve([], drive({ rotationRad: 0.2 }));
  const broken = solver.solve(open, drive({ rotationRad: 0.2 }));
  const changes = Array.from({ length: a.bars }, (_, b) => broken.openVolt(0, b) - whole.openVolt(0, b));
  return Math.max(...changes.map(Math.abs));
}

const bridges: WitnessCase[] = [
  row(
    'bridge-hard',
    'wave-23, lowest reading: hard bridge (0.2 mΩ) less open coil',
    () => ({
      ours: lowest(WAVE_23, bridgeAt(5)) - lowest(WAVE_23, open),
    }),
    { ...PERCENT, tolerance: between(-100, -5) },
  ),
  row(
    'bridge-soft',
    'wave-23, lowest reading with a soft bridge of 50 mΩ',
    () => ({
      ours: lowest(WAVE_23, bridgeAt(5, 0.05)),
    }),
    { ...PERCENT, tolerance: between(97, 101) },
  ),
  row(
    'bridge-soft-strip',
    'wave-23, largest pull with a soft bridge of 50 mΩ',
    () => ({
      ours: largestPull(WAVE_23, bridgeAt(5, 0.05)),
    }),
    { unit: 'N', tolerance: between(0, JUST_FELT_N) },
  ),
  row(
    'bridge-carbon',
    'wave-23, carbon of 10 Ω: change of a reading',
    () => ({
      ours: 100 * largestChange(neighbourPass(WAVE_23, bridgeAt(5, 10)), neighbourPass(WAVE_23, [])),
    }),
    { ...PERCENT, tolerance: between(0, 0.1) },
  ),
];

export const trade: WitnessGroup = {
  title: 'Facts of the trade: ammeter',
  about:
    'What a mechanic knows, which must come out of the physics by itself. No authoritative source was found for what is ' +
    'called practice.',
  cases: [...sound, ...opens, ...bridges],
};
