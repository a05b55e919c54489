import { emptyCradle } from '../../../src/engine/armatureBench.ts';
import { MAINS } from '../../../src/engine/drive.ts';
import { BENCH_GROWLER, emptyHenry, type GrowlerDesign } from '../../../src/engine/growler.ts';
import { openEnds } from '../../../src/engine/magnetics/openJaws.ts';
import { slotPotentials } from '../../../src/engine/magnetics/toothNetwork.ts';
import { readExcess, staticExcess } from '../../../src/engine/magnetics/toothSaturation.ts';
import { WAVE_23 } from '../../engine/support/parts.ts';
import {
  absolute,
  between,
  type Finding,
  rowsOf,
  type WitnessCase,
  type WitnessGroup,
  within,
  worst,
} from '../case.ts';
import { referenceData } from '../data.ts';

interface SaturatedCase {
  readonly theta_in_slot_pitches: number;
  readonly NI_peak: number;
  readonly Lp_secant_H_per_m: number;
  readonly flux_mWb_depth52mm: number;
  /** Flux each coil links, over the growler's. */
  readonly coil_over_primary: readonly number[];
}
const { cases: stored } = referenceData<{ cases: readonly SaturatedCase[] }>('fem-saturation.json');
const DEPTH = 0.052;

const potentialsAt = (one: SaturatedCase) =>
  slotPotentials(WAVE_23, BENCH_GROWLER, (2 * Math.PI * one.theta_in_slot_pitches) / WAVE_23.slots).m;

/** Secant inductance of the growler at the flux of the case. */
function secant(one: SaturatedCase): number {
  const m = potentialsAt(one);
  const flux = one.flux_mWb_depth52mm * 1e-3;
  const linear = flux / DEPTH / m[0]!;
  return flux / DEPTH / (linear + readExcess(staticExcess(WAVE_23, DEPTH, m), flux));
}

/** By how much the inductance has fallen below that at the smallest flux of the same rotation. */
function fallen(one: SaturatedCase): Finding {
  const weak = stored.find((c) => c.NI_peak === 50 && c.theta_in_slot_pitches === one.theta_in_slot_pitches)!;
  return {
    ours: secant(one) / secant(weak),
    reference: one.Lp_secant_H_per_m / weak.Lp_secant_H_per_m,
  };
}

/** Flux every coil links over the growler's, which the model leaves as it is with linear iron. */
function linked(one: SaturatedCase): number[] {
  const m = potentialsAt(one);
  const w = WAVE_23.slots + 1;
  return one.coil_over_primary.map((_, coil) => {
    const end = (coil + WAVE_23.spanSlots) % WAVE_23.slots;
    return (m[(1 + coil) * w]! - m[(1 + end) * w]!) / m[0]!;
  });
}

/** The coil astride a jaw, which links most. */
function most(one: SaturatedCase): Finding {
  const reference = Math.max(...one.coil_over_primary);
  return { ours: linked(one)[one.coil_over_primary.indexOf(reference)]!, reference };
}

const row = rowsOf({
  unit: 'H/m',
  source: 'plane non-linear finite elements, arc-tangent iron; not settled above 0.5 mWb',
  verified: 'stored',
  standing: 'independent',
  tolerance: within(0.005),
});

function toleranceOf({ flux_mWb_depth52mm: mWb }: SaturatedCase): number {
  if (mWb < 0.45) return 0.005;
  return mWb < 0.65 ? 0.035 : 0.065;
}

const iron: WitnessCase[] = stored.flatMap((one) => {
  const id = `${one.theta_in_slot_pitches}-${one.NI_peak}`;
  const where = `wave-23 at ${one.theta_in_slot_pitches} slot pitches, ${one.flux_mWb_depth52mm.toFixed(2)} mWb`;
  const own = row(
    `SAT-own-${id}`,
    `${where}: growler own`,
    () => ({ ours: secant(one), reference: one.Lp_secant_H_per_m }),
    { tolerance: within(toleranceOf(one)) },
  );
  const weak = one.flux_mWb_depth52mm < 0.45;
  const share = weak
    ? row(
        `SAT-share-${id}`,
        `${where}: share of it a coil links, worst coil`,
        () => worst(linked(one), one.coil_over_primary, 1),
        { unit: 'of growler flux', tolerance: absolute(0.02) },
      )
    : row(`SAT-share-${id}`, `${where}: share of it the coil links that links most`, () => most(one), {
        unit: 'of growler flux',
        tolerance: within(0.025),
      });
  return one.NI_peak === 350
    ? [
        own,
        share,
        row(`SAT-fall-${id}`, `${where}: fall of it from weak flux`, () => fallen(one), {
          unit: '-',
          tolerance: absolute(0.003),
        }),
      ]
    : [own, share];
});

/** Jaws as two straight legs 40 mm apart and 20 mm thick, 50 mm high: the flux tubes by hand. */
const STRAIGHT: GrowlerDesign = {
  ...BENCH_GROWLER,
  faceFrom: 0.02 * Math.SQRT2,
  faceTo: 0.02 * Math.SQRT2,
  jaws: { outer: 0.04, inner: 0.02, nose: 0.02, shoulder: 0.02, windingTop: -0.03 },
};
const ROTERS = {
  unit: 'µ0·m',
  source: 'Roters, Electromagnetic Devices (1941), as coded in Modelica FluxTubes: F01, F03, F05',
  verified: 'yes',
  tolerance: within(1e-9),
} as const;

const empty: WitnessCase[] = [
  row(
    'F01',
    'ends of two straight legs: half cylinders, half hollow cylinders, quarter spheres',
    () => ({
      ours: openEnds(STRAIGHT),
      reference: 2 * 0.05 * (0.26 + Math.log(1 + 0.02 / 0.02) / Math.PI) + 2 * 0.077 * 0.04,
    }),
    ROTERS,
  ),
  row(
    'F-fringe',
    'empty growler over its plane inductance: spread round the ends',
    () => ({
      ours:
        1 +
        (4e-7 * Math.PI * openEnds(BENCH_GROWLER)) / (BENCH_GROWLER.openInductance * BENCH_GROWLER.coreDepth),
    }),
    {
      unit: '-',
      source: 'other tubes give 1.2 to 1.6; never measured',
      verified: 'calc',
      standing: 'ours',
      tolerance: between(1.2, 1.6),
    },
  ),
  row(
    'empty-ohm',
    'empty growler, 230 V LOW: current times impedance of that inductance',
    () => {
      const { turns, ohm20 } = BENCH_GROWLER.windings['230V50Hz'].low;
      const x = 100 * Math.PI * turns ** 2 * emptyHenry(BENCH_GROWLER);
      const { growlerA } = emptyCradle(MAINS['230V50Hz'], 'low', 20);
      return { ours: growlerA * Math.hypot(ohm20, x), reference: 230 };
    },
    { unit: 'V', source: 'Ohm’s law', verified: 'calc', tolerance: within(1e-9) },
  ),
];

export const saturation: WitnessGroup = {
  title: 'Saturated teeth and open jaws',
  about:
    'Nothing here was fitted. The share of the growler’s flux a coil links is left as with linear iron: the coil that ' +
    'links most is right within 2.5 %, but coils under the edge of a jaw link less by up to 0.08 of the growler’s flux ' +
    'at 0.58 mWb and 0.13 at 0.71 mWb (the bench runs at 0.51 mWb on HIGH), and these are not compared.',
  cases: [...iron, ...empty],
};
