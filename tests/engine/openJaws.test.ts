import { describe, expect, it } from 'vitest';
import { emptyCradle } from '../../src/engine/armatureBench.ts';
import { MAINS } from '../../src/engine/drive.ts';
import { BENCH_GROWLER, emptyHenry, type GrowlerDesign } from '../../src/engine/growler.ts';
import { openEnds } from '../../src/engine/magnetics/openJaws.ts';
import { MU0 } from '../../src/engine/math/constants.ts';

/** How much more the field round the ends makes of the plane inductance (that one from finite elements). */
function fringe(g: GrowlerDesign): number {
  return 1 + (MU0 * openEnds(g)) / (g.openInductance * g.coreDepth);
}

describe('growler without an armature', () => {
  it('spreads its field round the ends of the core by a factor between 1.2 and 1.6', () => {
    expect(fringe(BENCH_GROWLER)).toBeGreaterThan(1.2);
    expect(fringe(BENCH_GROWLER)).toBeLessThan(1.6);
  });

  it('by the less the deeper the core, and the more the thicker its legs', () => {
    expect(fringe({ ...BENCH_GROWLER, coreDepth: 0.1 })).toBeLessThan(fringe(BENCH_GROWLER));
    const thick = { ...BENCH_GROWLER, jaws: { ...BENCH_GROWLER.jaws, outer: 0.05 } };
    expect(openEnds(thick)).toBeGreaterThan(openEnds(BENCH_GROWLER));
  });

  // Roters, Electromagnetic Devices (1941), as coded in the Modelica Standard Library: half cylinder 0.26 μ0·l, half
  // hollow cylinder (μ0·l/π)·ln(1 + t/r_i), quarter sphere 0.077 μ0·g.
  it('agrees with the flux tubes by hand where the jaws are two straight legs', () => {
    const straight: GrowlerDesign = {
      ...BENCH_GROWLER,
      faceFrom: 0.02 * Math.SQRT2,
      faceTo: 0.02 * Math.SQRT2,
      jaws: { outer: 0.04, inner: 0.02, nose: 0.02, shoulder: 0.02, windingTop: -0.03 },
    };
    const tubes = 2 * 0.05 * (0.26 + Math.log(1 + 0.02 / 0.02) / Math.PI);
    const corners = 2 * 0.077 * 0.04;
    expect(openEnds(straight)).toBeCloseTo(tubes + corners, 9);
  });

  it('takes its current from that inductance and the resistance of its winding', () => {
    for (const mains of Object.values(MAINS)) {
      const id = mains.volt === 230 ? '230V50Hz' : '120V60Hz';
      const { turns, ohm20 } = BENCH_GROWLER.windings[id].low;
      const x = 2 * Math.PI * mains.hz * turns ** 2 * emptyHenry(BENCH_GROWLER);
      const { growlerA, fluxWb } = emptyCradle(mains, 'low', 20);
      expect(growlerA * Math.hypot(ohm20, x)).toBeCloseTo(mains.volt, 6);
      expect(fluxWb / (Math.SQRT2 * growlerA * turns * emptyHenry(BENCH_GROWLER))).toBeCloseTo(1, 9);
    }
  });
});
