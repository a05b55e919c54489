import {
  amplitude,
  movingMass,
  naturalHz,
  STRIP,
  type StripBlade,
  tipStiffness,
} from '../../../src/engine/instruments/stripMotion.ts';
import { rowsOf, type WitnessGroup, within } from '../case.ts';

const BLADE: StripBlade = { ...STRIP, thicknessM: 0.64e-3, widthM: 12.7e-3 };
const BAR: StripBlade = {
  thicknessM: 0.05,
  widthM: 0.05,
  freeLengthM: 1,
  youngPa: 210e9,
  densityKgM3: 7850,
};
const FREQUENCY = 'first root 1.8751 of the clamped-free bar (stored vibration user guide, p. 97)';

const row = rowsOf({
  unit: 'Hz',
  source: FREQUENCY,
  verified: 'calc',
  standing: 'independent',
  tolerance: within(2e-4),
});

const at = (freeLengthM: number) => naturalHz({ ...BLADE, freeLengthM });

/** Free length at which the blade rings at a frequency, mm. */
function lengthFor(hz: number): number {
  let low = 0.02;
  let high = 0.5;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (at(middle) > hz) low = middle;
    else high = middle;
  }
  return low * 1000;
}

export const vibration: WitnessGroup = {
  title: 'Strip as a cantilever',
  about:
    'The steel strip held at one end. Only the first mode is in the code, so V06 (ratio of the second) has no row.',
  cases: [
    row(
      'V01',
      'first root out of the frequency',
      () => {
        const { thicknessM, youngPa, densityKgM3, freeLengthM } = STRIP;
        const root = Math.sqrt((youngPa * thicknessM ** 2) / (12 * densityKgM3 * freeLengthM ** 4));
        return { ours: Math.sqrt((2 * Math.PI * naturalHz(STRIP)) / root), reference: 1.8751 };
      },
      { unit: '-', source: 'stored vibration user guide, p. 97', verified: 'yes' },
    ),
    row('V03', 'bar 1 m × 50 × 50 mm', () => ({ ours: naturalHz(BAR), reference: 41.776 })),
    row('V04-100', 'blade 0.64 mm, 100 mm free', () => ({ ours: at(0.1), reference: 52.83 })),
    row('V04-150', 'the same, 150 mm free', () => ({ ours: at(0.15), reference: 23.48 })),
    row('V04-200', 'the same, 200 mm free', () => ({ ours: at(0.2), reference: 13.21 }), {
      tolerance: within(5e-4),
    }),
    row('V05-100', 'free length that rings at 100 Hz', () => ({ ours: lengthFor(100), reference: 72.69 }), {
      unit: 'mm',
    }),
    row('V05-120', 'free length that rings at 120 Hz', () => ({ ours: lengthFor(120), reference: 66.35 }), {
      unit: 'mm',
    }),
    row(
      'V07',
      'tip stiffness, 12.7 × 0.64 × 150 mm',
      () => ({ ours: tipStiffness({ ...BLADE, freeLengthM: 0.15 }), reference: 50.55 }),
      { unit: 'N/m', source: '3EI/L³' },
    ),
    row(
      'V-mass',
      'frequency of tip stiffness over moving mass, against the bar’s own',
      () => ({
        ours: Math.sqrt(tipStiffness(STRIP) / movingMass(STRIP)) / (2 * Math.PI),
        reference: naturalHz(STRIP),
      }),
      { source: 'ω² = k/m', tolerance: within(0.01) },
    ),
    row(
      'V-ring',
      'amplitude at resonance over that of a steady force: 1/(2ζ), ζ = 0.03',
      () => ({
        ours: amplitude(STRIP, 0.01, naturalHz(STRIP)) / amplitude(STRIP, 0.01, 0),
        reference: 1 / 0.06,
      }),
      { unit: '-', source: 'theory of one mass and spring', tolerance: within(1e-6) },
    ),
  ],
};
