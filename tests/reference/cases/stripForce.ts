import { BENCH_GROWLER } from '../../../src/engine/growler.ts';
import { slotPotentials } from '../../../src/engine/magnetics/toothNetwork.ts';
import { stripFlux, stripForce } from '../../../src/engine/strip.ts';
import { lookAtStrip, newStripLinks } from '../../../src/engine/stripLinks.ts';
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
  /** Flux the strip carries per ampere in the coil, Wb/m. */
  readonly flux_c: number;
}
const { cases: stored } = referenceData<{ cases: readonly StripCase[] }>('fem-strip.json');

/** Small currents, so that the strip does not saturate; the force is scaled back. */
const SMALL = 1e-3;
const partOf = (one: StripCase) => (one.armature.startsWith('A') ? WAVE_23 : LAP_24);

/** Rotation that brings the slot of the case under the strip, and the potentials of tips and jaws for some currents. */
function potentials(one: StripCase, growlerA: number, coilA: number) {
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
  return { rotation, u: { re, im: new Float64Array(a.slots + 2) } };
}

function pull(one: StripCase, growlerA: number, coilA: number) {
  const { rotation, u } = potentials(one, growlerA, coilA);
  const gap = one.gap_mm / 1000;
  return stripForce(partOf(one), BENCH_GROWLER, SMALL ** -2, u, rotation, one.blade_beta_deg, gap);
}

/** Flux the strip carries: half of all that enters and leaves it. */
function flux(one: StripCase): Finding {
  const { rotation, u } = potentials(one, 0, 1);
  const links = newStripLinks(partOf(one).slots);
  lookAtStrip(partOf(one), BENCH_GROWLER, rotation, one.blade_beta_deg, one.gap_mm / 1000, links);
  return { ours: stripFlux(links, u) / 2 / SMALL, reference: Math.abs(one.flux_c) };
}

const coilPull = (one: StripCase): Finding => ({ ours: pull(one, 0, 1).meanN, reference: one.Fcc });

const row = rowsOf({
  unit: 'N/m/A²',
  source: 'plane finite elements of the strip over the core',
  verified: 'stored',
  standing: 'fitted',
  tolerance: within(0.08),
});

/** Off a slot or beside a jaw the formula is rougher, and says so. */
function toleranceOf(one: StripCase): number {
  if (one.slot_offset_pitches !== 0) return 0.2;
  return one.blade_beta_deg < 90 ? 0.1 : 0.08;
}

const nameOf = (one: StripCase) => {
  const place =
    one.slot_offset_pitches === 0 ? 'over the slot' : `${one.slot_offset_pitches} pitch beside the slot`;
  return `${partOf(one).id}, ${place} (${one.coil_side_under_blade} side), ${one.blade_beta_deg}°, gap ${one.gap_mm} mm`;
};
const idOf = (one: StripCase) =>
  [partOf(one).id, one.blade_beta_deg, one.slot_offset_pitches, one.coil_side_under_blade, one.gap_mm].join(
    '-',
  );

const near = stored.filter((c) => c.slot_offset_pitches < 0.5);
const overCoils: WitnessCase[] = near.map((one) =>
  row(`strip-${idOf(one)}`, nameOf(one), () => coilPull(one), { tolerance: within(toleranceOf(one)) }),
);

const carried: WitnessCase[] = near
  .filter((c) => c.blade_beta_deg >= 90 && c.coil_side_under_blade === 'plus')
  .map((one) =>
    row(`flux-${idOf(one)}`, `flux of the strip, ${nameOf(one)}`, () => flux(one), {
      unit: 'Wb/m/A',
      tolerance: within(toleranceOf(one)),
    }),
  );

/** Half a slot pitch off and a whole one, where little is left: against the pull over the slot. */
const pitchOff: WitnessCase[] = stored
  .filter((c) => c.slot_offset_pitches >= 0.5)
  .map((one) => {
    const over = stored.find(
      (c) => c.armature === one.armature && c.blade_beta_deg === 120 && c.slot_offset_pitches === 0,
    )!;
    return row(
      `strip-${partOf(one).id}-off-${one.slot_offset_pitches}`,
      `${partOf(one).id}, ${one.slot_offset_pitches} pitch beside the slot, against the pull over it`,
      () => ({ ...coilPull(one), scale: over.Fcc }),
      { tolerance: within(one.slot_offset_pitches === 1 ? 0.01 : 0.08) },
    );
  });

const besideJaw: WitnessCase[] = stored
  .filter((c) => c.blade_beta_deg === 75 && c.coil_side_under_blade === 'plus')
  .flatMap((one) => {
    const id = partOf(one).id;
    const change = { unit: 'N/m/(A·turn)²', tolerance: within(0.1) };
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
    'Over a slot centre 8 %, beside a jaw 10 %, a quarter pitch beside the slot 20 %; further off what little is left ' +
    'against the pull over the slot. Five constants of the formula were fitted to these cases.',
  cases: [...overCoils, ...carried, ...pitchOff, ...besideJaw, ...clearOfJaw],
};
