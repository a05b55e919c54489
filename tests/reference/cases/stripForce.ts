import { BENCH_GROWLER } from '../../../src/engine/growler.ts';
import { slotPotentials } from '../../../src/engine/magnetics/toothNetwork.ts';
import { stripForce } from '../../../src/engine/strip.ts';
import { LAP_24, WAVE_23 } from '../../engine/support/parts.ts';
import { absolute, type Finding, rowsOf, type WitnessCase, type WitnessGroup, within } from '../case.ts';
import { referenceData } from '../data.ts';

/** Force in N per metre of depth: F_ab per ampere in a and b, c the coil with one side under the strip, p the growler. */
interface StripCase {
  readonly armature: string;
  readonly blade_beta_deg: number;
  readonly slot_offset_pitches: number;
  readonly coil_side_under_blade: 'plus' | 'minus';
  readonly gap_mm: number;
  readonly Fpp: number;
  readonly Fcc: number;
  readonly Tpp: number;
}
const { cases: stored } = referenceData<{ cases: readonly StripCase[] }>('fem-strip.json');

/** Small currents, so that the strip does not saturate; the force is scaled back. */
const SMALL = 1e-3;
const partOf = (one: StripCase) => (one.armature.startsWith('A') ? WAVE_23 : LAP_24);

function pull(one: StripCase, growlerA: number, coilA: number) {
  const a = partOf(one);
  const pitch = (2 * Math.PI) / a.slots;
  const under = one.coil_side_under_blade === 'plus' ? 0 : a.spanSlots;
  const rotation = (one.blade_beta_deg * Math.PI) / 180 + (one.slot_offset_pitches - under) * pitch;
  const p = slotPotentials(a, BENCH_GROWLER, rotation);
  const w = a.slots + 1;
  const re = Float64Array.from({ length: a.slots + 2 }, (_, t) => {
    const coil = p.tips[t * w + 1]! - p.tips[t * w + 1 + a.spanSlots]!;
    return SMALL * (growlerA * p.tips[t * w]! + coilA * coil);
  });
  const u = { re, im: new Float64Array(a.slots + 2) };
  return stripForce(a, BENCH_GROWLER, SMALL ** -2, u, rotation, one.blade_beta_deg, one.gap_mm / 1000);
}

const coilPull = (one: StripCase): Finding => ({ ours: pull(one, 0, 1).meanN, reference: one.Fcc });

const row = rowsOf({
  unit: 'N/m/A²',
  source: 'plane finite elements of the strip over the core',
  verified: 'stored',
  standing: 'fitted',
  tolerance: within(0.08),
});

/** Off a slot or beside a jaw the formula is rough, and says so. */
function toleranceOf(one: StripCase): number {
  if (one.slot_offset_pitches !== 0) return 0.3;
  return one.blade_beta_deg < 90 && one.armature.startsWith('C') ? 0.25 : 0.08;
}

const near = stored.filter((c) => c.slot_offset_pitches < 0.5);
const overCoils: WitnessCase[] = near.map((one) => {
  const a = partOf(one);
  const place =
    one.slot_offset_pitches === 0 ? 'over the slot' : `${one.slot_offset_pitches} pitch beside the slot`;
  return row(
    `strip-${a.id}-${one.blade_beta_deg}-${one.slot_offset_pitches}-${one.coil_side_under_blade}-${one.gap_mm}`,
    `${a.id}, ${place} (${one.coil_side_under_blade} side), ${one.blade_beta_deg}°, gap ${one.gap_mm} mm`,
    () => coilPull(one),
    { tolerance: within(toleranceOf(one)) },
  );
});

/** A whole slot pitch off: next to nothing, against the pull over the slot. */
const pitchOff: WitnessCase[] = stored
  .filter((c) => c.slot_offset_pitches === 1)
  .map((one) => {
    const over = stored.find(
      (c) => c.armature === one.armature && c.blade_beta_deg === 120 && c.slot_offset_pitches === 0,
    )!;
    return row(
      `strip-${partOf(one).id}-pitch-off`,
      `${partOf(one).id}, a whole pitch beside the slot, against the pull over it`,
      () => ({ ...coilPull(one), scale: over.Fcc }),
      { tolerance: within(0.01) },
    );
  });

const besideJaw: WitnessCase[] = stored
  .filter((c) => c.blade_beta_deg === 75 && c.coil_side_under_blade === 'plus')
  .flatMap((one) => {
    const id = partOf(one).id;
    const change = { unit: 'N/m/(A·turn)²', tolerance: within(0.2) };
    return [
      row(
        `strip-${id}-jaw-radial`,
        `${id}, 75°, growler alone: radial`,
        () => ({ ours: pull(one, 1, 0).meanN, reference: one.Fpp }),
        change,
      ),
      row(
        `strip-${id}-jaw-along`,
        `${id}, 75°, growler alone: tangential`,
        () => ({ ours: pull(one, 1, 0).tangentialN, reference: one.Tpp }),
        change,
      ),
    ];
  });

/** Clear of the jaws the growler alone pulls next to nothing, against its pull beside the jaw. */
const clearOfJaw: WitnessCase[] = stored
  .filter((c) => c.blade_beta_deg === 105 && c.coil_side_under_blade === 'plus')
  .map((one) => {
    const beside = stored.find((c) => c.armature === one.armature && c.blade_beta_deg === 75)!;
    return row(
      `strip-${partOf(one).id}-clear`,
      `${partOf(one).id}, 105°, growler alone against its pull at 75°`,
      () => ({ ours: pull(one, 1, 0).meanN / pull(beside, 1, 0).meanN, reference: one.Fpp / beside.Fpp }),
      { unit: '-', tolerance: absolute(0.002) },
    );
  });

export const strip: WitnessGroup = {
  title: 'Pull on the strip, against finite elements',
  about:
    'Over a slot centre 8 %. A quarter pitch beside it 30 %, and 25 % on the two-pole core where strip and jaw all but ' +
    'touch. Five constants of the formula were fitted to this table. Half a pitch off the pull is not trusted and not ' +
    'compared.',
  cases: [...overCoils, ...pitchOff, ...besideJaw, ...clearOfJaw],
};
