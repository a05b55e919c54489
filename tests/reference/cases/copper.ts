import { BENCH_GROWLER, windingOhm } from '../../../src/engine/growler.ts';
import { armatureResistance } from '../../../src/engine/instruments/armatureDc.ts';
import { neighbourDrops } from '../../../src/engine/instruments/millivoltDrop.ts';
import { STRIP } from '../../../src/engine/instruments/stripMotion.ts';
import { COPPER_DENSITY, COPPER_HEAT } from '../../../src/engine/instruments/thermal.ts';
import { COPPER_PER_K, COPPER_RESISTIVITY, copperRise, MU0 } from '../../../src/engine/math/constants.ts';
import { coilOhm } from '../../../src/engine/parts/winding.ts';
import { LAP_24, WAVE_23 } from '../../engine/support/parts.ts';
import { rowsOf, type WitnessGroup, within } from '../case.ts';

const IACS = 'IEC 60028 (1925); NBS Handbook 100 (1966), as quoted in two stored pages';
const row = rowsOf({
  unit: '-',
  source: IACS,
  verified: '2nd',
  standing: 'independent',
  tolerance: within(1e-9),
});

/** Temperature at which the straight line of copper's resistance meets zero, degrees C. */
function zeroResistance(): number {
  const slope = (copperRise(120) - copperRise(20)) / 100;
  return 20 - copperRise(20) / slope;
}

const warmDrop = () =>
  neighbourDrops(LAP_24, [], 5, { peakV: 0, tempC: 75 })[0]! / neighbourDrops(LAP_24, [], 5)[0]!;

/** Sheet of copper 1 mm² by 1 m: the resistance of a coil over its length, times the area. */
function coilResistivity(): number {
  const meanRadius = WAVE_23.outerRadius - WAVE_23.lipHeight - WAVE_23.wedgeHeight - WAVE_23.layerHeight;
  const overEnd = 1.25 * meanRadius * 2 * Math.PI * (WAVE_23.spanSlots / WAVE_23.slots) + 0.008;
  const length = 2 * (WAVE_23.stackLength + overEnd) * WAVE_23.turns;
  return (coilOhm(WAVE_23) * WAVE_23.conductorArea) / length;
}

export const copper: WitnessGroup = {
  title: 'Copper, iron, steel',
  about: 'Constants of materials. Drawn winding wire is taken 1.5 % above the annealed standard on purpose.',
  cases: [
    row(
      'M01',
      'resistivity of the winding at 20 °C, against annealed copper',
      () => ({ ours: COPPER_RESISTIVITY * 1e6, reference: 1 / 58 }),
      { unit: 'Ω·mm²/m', tolerance: within(0.02) },
    ),
    row(
      'M02',
      'the same out of a coil’s resistance, length and section',
      () => ({ ours: coilResistivity(), reference: 1.724138e-8 }),
      { unit: 'Ω·m', tolerance: within(0.02), verified: 'calc' },
    ),
    row(
      'M03',
      'conductivity of the winding at 20 °C',
      () => ({ ours: 1e-6 / COPPER_RESISTIVITY, reference: 58 }),
      { unit: 'MS/m', tolerance: within(0.02) },
    ),
    row('M04', 'density of copper', () => ({ ours: COPPER_DENSITY / 1000, reference: 8.89 }), {
      unit: 'g/cm³',
      tolerance: within(0.01),
      source: 'NBS Handbook 100 (1966)',
    }),
    row(
      'M05',
      'temperature coefficient of copper at 20 °C',
      () => ({ ours: COPPER_PER_K, reference: 0.00393 }),
      {
        unit: '1/K',
        source: 'IACS value; Industrial Power Engineering and Applications Handbook p. 970',
      },
    ),
    row(
      'M06',
      'inferred temperature of no resistance',
      () => ({ ours: zeroResistance(), reference: -234.45 }),
      {
        unit: '°C',
        source: '1/0.00393 - 20',
        verified: 'calc',
        tolerance: within(1e-4),
      },
    ),
    row('M07', 'R(75 °C)/R(20 °C) of copper', () => ({ ours: copperRise(75), reference: 1.21615 }), {
      source: '1 + 0.00393·55',
      verified: 'calc',
    }),
    row(
      'M07-growler',
      'the same of a growler winding',
      () => {
        const winding = BENCH_GROWLER.windings['230V50Hz'].high;
        return { ours: windingOhm(winding, 75) / windingOhm(winding, 20), reference: 1.21615 };
      },
      { source: '1 + 0.00393·55', verified: 'calc' },
    ),
    row(
      'M07-drop',
      'the same of a millivolt drop from bar to bar',
      () => ({ ours: warmDrop(), reference: 1.21615 }),
      {
        source: '1 + 0.00393·55',
        verified: 'calc',
        tolerance: within(1e-5),
      },
    ),
    row('M08', 'vacuum permeability', () => ({ ours: MU0, reference: 1.256637e-6 }), {
      unit: 'H/m',
      source: 'SI, exact value before 2019',
      verified: 'memory',
      tolerance: within(1e-6),
    }),
    row('M13-E', 'Young’s modulus of the strip', () => ({ ours: STRIP.youngPa / 1e9, reference: 205 }), {
      unit: 'GPa',
      source: 'handbook values; 210 GPa in a stored beam example',
    }),
    row('M13-rho', 'density of the strip', () => ({ ours: STRIP.densityKgM3, reference: 7850 }), {
      unit: 'kg/m³',
      source: 'handbook values; a stored beam example',
    }),
    row('M-heat', 'specific heat of copper', () => ({ ours: COPPER_HEAT, reference: 385 }), {
      unit: 'J/(kg·K)',
      source: 'handbook value',
      verified: 'memory',
    }),
    row(
      'M-coil',
      'coil of lap-24 by the insulation and drop model, bar to bar, against its coils in series and parallel',
      () => {
        const coil = coilOhm(LAP_24) + 2 * 20e-6;
        return { ours: armatureResistance(LAP_24, [], 0, 1)!, reference: (coil * 23) / 24 };
      },
      { unit: 'Ω', source: 'ring of 24 equal resistors', verified: 'calc', tolerance: within(1e-6) },
    ),
  ],
};
