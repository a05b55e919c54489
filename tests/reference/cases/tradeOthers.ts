import { growlerCurrents } from '../../../src/engine/answers.ts';
import { createArmatureSolver, emptyCradle } from '../../../src/engine/armatureBench.ts';
import { MAINS } from '../../../src/engine/drive.ts';
import { BENCH_GROWLER } from '../../../src/engine/growler.ts';
import { hum } from '../../../src/engine/instruments/hum.ts';
import { benchLamp, glow, steadyFilament } from '../../../src/engine/instruments/lamp.ts';
import { neighbourDrops } from '../../../src/engine/instruments/millivoltDrop.ts';
import { JUST_FELT_N } from '../../../src/engine/instruments/stripMotion.ts';
import { COLD_WINDING, stepWinding } from '../../../src/engine/instruments/thermal.ts';
import type { ArmatureFault } from '../../../src/engine/parts/armatureFault.ts';
import { ARMATURES, drive, LAP_24, LAP_28, WAVE_23 } from '../../engine/support/parts.ts';
import { between, rowsOf, type WitnessCase, type WitnessGroup } from '../case.ts';
import { bridgeAt, largestPull, pulls, SETUP } from '../support/bench.ts';

const row = rowsOf({
  unit: '-',
  source: 'common practice, no source',
  verified: 'practice',
  standing: 'independent',
  tolerance: between(0, 0),
});
const THEORY = { source: 'this model and this geometry', verified: 'calc', standing: 'ours' } as const;
const PERCENT = { unit: '%' } as const;
const LOW = { ...SETUP, excitation: 'low' } as const;
const NEWTON = { unit: 'N' } as const;
const stripFacts: WitnessCase[] = [
  row(
    'strip-low',
    'wave-23, hard bridge: largest pull on LOW over that on HIGH',
    () => ({
      ours: largestPull(WAVE_23, bridgeAt(5), undefined, LOW) / largestPull(WAVE_23, bridgeAt(5)),
    }),
    { tolerance: between(0.1, 0.7) },
  ),
  row(
    'strip-low-felt',
    'wave-23, hard bridge: largest pull on LOW',
    () => ({
      ours: largestPull(WAVE_23, bridgeAt(5), undefined, LOW),
    }),
    { ...NEWTON, tolerance: between(JUST_FELT_N, 5) },
  ),
  row(
    'strip-lap-top',
    'lap-28, hard bridge: largest pull at the top, 180°',
    () => ({
      ours: Math.max(...pulls(LAP_28, bridgeAt(5), 180)),
    }),
    { ...NEWTON, ...THEORY, tolerance: between(-1, JUST_FELT_N) },
  ),
  row(
    'strip-lap-side',
    'lap-28, hard bridge: largest pull at 120°',
    () => ({
      ours: Math.max(...pulls(LAP_28, bridgeAt(5), 120)),
    }),
    { ...NEWTON, ...THEORY, tolerance: between(1, 20) },
  ),
  ...ARMATURES.map((a) =>
    row(
      `strip-jaw-${a.id}`,
      `${a.id}, sound: pull beside a jaw, 70°`,
      () => {
        const f = createArmatureSolver(a).solve([], drive()).strip(70, 0.0005);
        return { ours: Math.hypot(f.meanN, f.tangentialN) };
      },
      { ...NEWTON, tolerance: between(JUST_FELT_N, 20) },
    ),
  ),
];

const mainsOf = (id: keyof typeof MAINS) => MAINS[id];
const MAINS_IDS = ['230V50Hz', '120V60Hz'] as const;
const growler: WitnessCase[] = MAINS_IDS.flatMap((id) => [
  row(
    `empty-${id}`,
    `${id}, HIGH: empty cradle over wave-23 in it, current`,
    () => {
      const currents = growlerCurrents(createArmatureSolver(WAVE_23), [], { ...SETUP, mains: mainsOf(id) });
      return { ours: currents.emptyCurrentA / currents.currentA };
    },
    { tolerance: between(3, 5) },
  ),
  row(
    `empty-trip-${id}`,
    `${id}, HIGH: minutes until an empty cradle trips the cut-out`,
    () => {
      const lossW = (windingC: number) => emptyCradle(mainsOf(id), 'high', windingC).growlerW;
      return { ours: (stepWinding(COLD_WINDING, lossW, 36_000).trippedAfter ?? Number.NaN) / 600 };
    },
    { unit: 'min', tolerance: between(1, 10) },
  ),
]);

const loudness = (p: { growlerA: number; fluxWb: number }) =>
  hum({ ampereTurns: p.growlerA * BENCH_GROWLER.windings['230V50Hz'].high.turns, fluxWb: p.fluxWb }, 50)
    .level;

const others: WitnessCase[] = [
  row(
    'hum-empty',
    'steps of loudness an empty cradle is above wave-23 in it',
    () => ({
      ours:
        loudness(emptyCradle(MAINS['230V50Hz'], 'high', 20)) -
        loudness(createArmatureSolver(WAVE_23).solve([], drive())),
    }),
    { unit: 'steps', tolerance: between(3, 20) },
  ),
  row(
    'lamp-500',
    'glow through 500 Ω: a lit lamp proves no good joint',
    () => ({
      ours: glow(steadyFilament(benchLamp(230), { volt: 230, path: { re: 500, im: 0 } })),
    }),
    { unit: 'of 8', tolerance: between(6, 8) },
  ),
  row(
    'drop-turns',
    'lap-24, 1 of 6 turns shorted: lowest millivolt drop over sound',
    () => {
      const turn: ArmatureFault = { kind: 'turnShort', coil: 5, turns: 1, ohm: 1e-3 };
      const now = neighbourDrops(LAP_24, [turn]).map((v) => v!);
      return { ours: (100 * Math.min(...now)) / neighbourDrops(LAP_24, [])[0]! };
    },
    { ...PERCENT, tolerance: between(75, 95) },
  ),
];

export const tradeOthers: WitnessGroup = {
  title: 'Facts of the trade: strip, growler, lamp',
  about:
    'That a four-pole lap cannot be felt at the top is a result of this model and this geometry; no handbook states it.',
  cases: [...stripFacts, ...growler, ...others],
};
