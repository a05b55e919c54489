import { slotLeakage } from '../../../src/engine/circuit/inductance.ts';
import { BENCH_GROWLER } from '../../../src/engine/growler.ts';
import { hum } from '../../../src/engine/instruments/hum.ts';
import { carterFraction, mouthPermeance, newJawView, toJaw } from '../../../src/engine/magnetics/gap.ts';
import { MU0 } from '../../../src/engine/math/constants.ts';
import type { ArmatureDesign } from '../../../src/engine/parts/armature.ts';
import { STRIP, stripForce } from '../../../src/engine/strip.ts';
import { WAVE_23 } from '../../engine/support/parts.ts';
import { equal, rowsOf, type WitnessCase, type WitnessGroup, within, worst } from '../case.ts';

const row = rowsOf({
  unit: '-',
  source: 'standard machine-design theory',
  verified: 'calc',
  standing: 'independent',
  tolerance: within(1e-5),
});

/** Two layers of 10 mm in an open slot of 8 mm, in units of mu0. */
const L05_SLOT: ArmatureDesign = { ...WAVE_23, layerHeight: 0.01, slotWidth: 0.008 };
const layers = () => {
  const { top, bottom, mutual } = slotLeakage(L05_SLOT);
  return { top: top / MU0, bottom: bottom / MU0, mutual: mutual / MU0 };
};

/** The slot of L03: conductor 12 high and 6 wide, wedge 1, lip 0.8, mouth 2.5 mm. */
const L03_SLOT: ArmatureDesign = {
  ...WAVE_23,
  slotMouth: 0.0025,
  slotWidth: 0.006,
  wedgeHeight: 0.001,
  lipHeight: 0.0008,
};

const leakage: WitnessCase[] = [
  row('L05-bottom', 'slot of two layers, bottom own', () => ({ ours: layers().bottom, reference: 1.666667 })),
  row('L05-top', 'slot of two layers, top own', () => ({ ours: layers().top, reference: 0.416667 })),
  row('L05-mutual', 'slot of two layers, mutual', () => ({ ours: layers().mutual, reference: 0.625 })),
  row('L06', '(bb + tt + 2bt)/4 of the same is h/(3b), the rectangular part L01', () => {
    const { top, bottom, mutual } = layers();
    return { ours: (top + bottom + 2 * mutual) / 4, reference: 0.833333 };
  }),
  row(
    'L02',
    'wedge and lip of a half-closed slot, no field bulging out: 2h3/(b+b0) + h4/b0',
    () => ({ ours: mouthPermeance(L03_SLOT, 1e-9) / MU0, reference: 2 / 8.5 + 0.8 / 2.5 }),
    // The rule takes the wedge at its mean width; ours integrates over the taper.
    { tolerance: within(0.03), verified: 'memory' },
  ),
];

/** Carter's factor tau/(tau - sigma·b). */
const carterFactor = () => 10 / (10 - carterFraction(3, 0.5) * 3);
const AT = [1, 2, 4, 8];
const fractions = () => AT.map((b) => carterFraction(b, 1));

const carter: WitnessCase[] = [
  row(
    'F11',
    'Carter’s fraction at b/g = 1, 2, 4, 8: worst',
    () => worst(fractions(), [0.15311, 0.279364, 0.448683, 0.618582]),
    { source: 'F. W. Carter 1901, exact form (F10)', verified: 'memory' },
  ),
  row(
    'F12',
    'the same against the fit 1/(1 + 5 g/b): worst',
    () => worst(fractions(), [0.166667, 0.285714, 0.444444, 0.615385], 0.618),
    { source: 'stored design-course page', verified: 'yes', tolerance: within(0.025) },
  ),
  row(
    'F13',
    'what is left of it, 1 - sigma, at b/g = 1 and 2: worst',
    () =>
      worst(
        fractions()
          .slice(0, 2)
          .map((s) => 1 - s),
        [0.82, 0.72],
      ),
    { source: 'stored solved problem (rounded values)', verified: 'yes', tolerance: within(0.04) },
  ),
  row(
    'F14',
    'Carter’s factor, pitch 10, mouth 3, gap 0.5 mm',
    () => ({ ours: carterFactor(), reference: 1.19797 }),
    {
      source: 'F10',
    },
  ),
];

/** Equivalent gap at the line where a flat jaw touches the gap's circle, and a little beside it. */
function gapAt(delta: number): number {
  const view = newJawView();
  toJaw(WAVE_23, BENCH_GROWLER, Math.PI / 4 + delta, WAVE_23.outerRadius, 1, view);
  return view.gap;
}

const gap: WitnessCase[] = [
  row('F-gap', 'equivalent gap at the contact line', () => ({ ours: gapAt(0) * 1e3, reference: 0.25 }), {
    unit: 'mm',
    source: 'plane geometry: a flat face a gap away from a circle',
  }),
  row(
    'F-gap-beside',
    'the same 3° beside it: g0 + r·δ²/2',
    () => {
      const delta = (3 * Math.PI) / 180;
      return { ours: gapAt(delta) * 1e3, reference: 0.25 + (32 * delta * delta) / 2 };
    },
    { unit: 'mm', source: 'plane geometry, second order', tolerance: within(0.01) },
  ),
];

/** Pull per metre on a strip at no potential over two teeth at ±u, rms, in phase. */
function overSlot(u: number) {
  const re = new Float64Array(WAVE_23.slots + 2);
  re[0] = u;
  re[WAVE_23.slots - 1] = -u;
  const potentials = { re, im: new Float64Array(WAVE_23.slots + 2) };
  return stripForce(WAVE_23, BENCH_GROWLER, 1, potentials, Math.PI, 180, 0.0005);
}

/** The same by B²/(2·mu0) with B = mu0·u/g straight across the gap, slot mouth left out. */
function maxwell(u: number): number {
  const steps = 2000;
  const dx = STRIP.width / steps;
  const r = WAVE_23.outerRadius;
  let sum = 0;
  for (let k = 0; k < steps; k++) {
    const x = (k + 0.5) * dx - STRIP.width / 2;
    if (Math.abs(x) < WAVE_23.slotMouth / 2) continue;
    const b = (MU0 * u) / (Math.hypot(x, r + 0.0005) - r);
    sum += (b * b * dx) / (2 * MU0);
  }
  return sum;
}

const pull: WitnessCase[] = [
  row(
    'P01',
    'pull of two teeth on the strip against B²/(2µ0) with a straight field',
    () => ({ ours: overSlot(1e-3).meanN, reference: maxwell(1e-3) }),
    // The field bulges and the strip's flux spreads: finite elements say the same (0.82 fitted).
    { unit: 'N/m', source: 'Maxwell stress', tolerance: within(0.2) },
  ),
  row(
    'P02-mean',
    'one field in phase: part at twice mains frequency over the mean (the mean is half the peak)',
    () => ({ ours: overSlot(1e-3).alternatingN / overSlot(1e-3).meanN, reference: 1 }),
    { source: 'B²·A/(4µ0)·(1 - cos 2ωt)', tolerance: within(1e-12) },
  ),
  row(
    'P02-rate',
    'pitch of the hum at 50 and 60 Hz',
    () => ({ ours: [50, 60].map((hz) => hum(null, hz).pitchHz).join(', '), reference: '100, 120' }),
    { unit: 'Hz', source: 'force goes with the square of a field', tolerance: equal },
  ),
];

export const fields: WitnessGroup = {
  title: 'Leakage, gaps and pull',
  about:
    'Formulas of slots, mouths, gaps and pulls that the code uses. Edges are in the equivalent gap, which the finite ' +
    'elements check; the tubes of F01, F03 and F05 serve the empty growler only (saturated teeth and open jaws), the ' +
    'other rows from F02 to F09 nothing.',
  cases: [...leakage, ...carter, ...gap, ...pull],
};
