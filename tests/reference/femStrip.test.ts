import { describe, expect, it } from 'vitest';
import { BENCH_GROWLER } from '../../src/engine/growler.ts';
import { slotPotentials } from '../../src/engine/magnetics/toothNetwork.ts';
import { stripForce } from '../../src/engine/strip.ts';
import { LAP_24, WAVE_23 } from '../engine/support/parts.ts';
import { referenceData } from './data.ts';

/**
 * Pull on the strip against plane finite elements of the same geometry, N per metre of depth: F_ab per ampere in a
 * and b, c the coil with one side under the strip, p the growler (ampere-turns). Over a slot centre 8 %; beside it
 * the formula is rough (30 %), and the pull of the jaws is right to a factor near 90 degrees only.
 */
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
const { cases } = referenceData<{ cases: readonly StripCase[] }>('fem-strip.json');

/** Small currents, so that the strip does not saturate; the force is scaled back. */
const SMALL = 1e-3;

function pull(one: StripCase, growlerA: number, coilA: number) {
  const a = one.armature.startsWith('A') ? WAVE_23 : LAP_24;
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

const label = (c: StripCase) =>
  `${c.armature} ${c.coil_side_under_blade} side, ${c.blade_beta_deg} degrees, ${c.gap_mm} mm`;
const centred = cases.filter((c) => c.slot_offset_pitches === 0);
const clear = centred.filter((c) => c.blade_beta_deg >= 90);

describe('strip force against finite elements', () => {
  it.each(clear.map((c) => [label(c), c] as const))('%s: over the slot within 8 %%', (_label, one) => {
    expect(Math.abs(pull(one, 0, 1).meanN / one.Fcc - 1)).toBeLessThan(0.08);
  });

  it('near a jaw, with the coil alone: within 8 % on A, 25 % on C where strip and jaw all but touch', () => {
    for (const one of centred.filter((c) => c.blade_beta_deg === 75)) {
      const limit = one.armature.startsWith('A') ? 0.08 : 0.25;
      expect(Math.abs(pull(one, 0, 1).meanN / one.Fcc - 1), label(one)).toBeLessThan(limit);
    }
  });

  it('a quarter pitch off the slot: within 30 %', () => {
    for (const one of cases.filter((c) => c.slot_offset_pitches === 0.25))
      expect(Math.abs(pull(one, 0, 1).meanN / one.Fcc - 1), label(one)).toBeLessThan(0.3);
  });

  it('a whole pitch off the slot there is next to no pull', () => {
    for (const one of cases.filter((c) => c.slot_offset_pitches === 1)) {
      const centre = clear.find((c) => c.armature === one.armature && c.blade_beta_deg === 120)!;
      expect(Math.abs(pull(one, 0, 1).meanN)).toBeLessThan(0.01 * centre.Fcc);
      expect(Math.abs(one.Fcc)).toBeLessThan(0.01 * centre.Fcc);
    }
  });

  it('background of the growler beside the jaw at 75 degrees: outward and towards the jaw, within 20 %', () => {
    for (const one of centred.filter((c) => c.blade_beta_deg === 75)) {
      const f = pull(one, 1, 0);
      expect(Math.abs(f.meanN / one.Fpp - 1), label(one)).toBeLessThan(0.2);
      expect(Math.abs(f.tangentialN / one.Tpp - 1), label(one)).toBeLessThan(0.2);
    }
  });

  it('background dies away by a factor of more than 50 from 75 to 90 degrees and of 500 to 105', () => {
    const at = (beta: number) =>
      centred.find((c) => c.armature.startsWith('A') && c.blade_beta_deg === beta)!;
    const size = (beta: number) => Math.abs(pull(at(beta), 1, 0).meanN);
    expect(size(75) / size(90)).toBeGreaterThan(50);
    expect(size(75) / size(105)).toBeGreaterThan(500);
    expect(Math.abs(at(75).Fpp / at(90).Fpp)).toBeGreaterThan(50);
  });
});
