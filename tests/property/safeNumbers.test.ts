import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { neighbourReadings, spacedReadings, stripPulls } from '../../src/engine/answers.ts';
import { createArmatureSolver, emptyCradle, type Metal } from '../../src/engine/armatureBench.ts';
import { type Drive, MAINS } from '../../src/engine/drive.ts';
import { BENCH_GROWLER } from '../../src/engine/growler.ts';
import { scaleFraction, targetDeflection } from '../../src/engine/instruments/ammeter.ts';
import { armatureResistance } from '../../src/engine/instruments/armatureDc.ts';
import { hum } from '../../src/engine/instruments/hum.ts';
import {
  correctedTo40,
  displayedOhm,
  leftVolt,
  seeMegohms,
  TEST_VOLTS,
  terminalVolt,
} from '../../src/engine/instruments/insulationTester.ts';
import {
  AMBIENT_K,
  benchLamp,
  glow,
  lampCurrent,
  steadyFilament,
  stepFilament,
} from '../../src/engine/instruments/lamp.ts';
import {
  barDrops,
  neighbourDrops,
  poleFeed,
  seeMillivolts,
} from '../../src/engine/instruments/millivoltDrop.ts';
import { needleAt } from '../../src/engine/instruments/needle.ts';
import { feel } from '../../src/engine/instruments/stripMotion.ts';
import { stepCoil } from '../../src/engine/instruments/thermal.ts';
import { anyFaultyArmature } from '../engine/support/random.ts';
import { holds } from './holds.ts';

/** No valid part, fault combination, rotation or contact may give a number that is none. */
const real = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });
/** Resistances from hard metal to a dirty contact, evenly over the decades. */
const loopOhm = real(-4, 1).map((x) => 10 ** x);

const anyDrive: fc.Arbitrary<Drive> = fc.record({
  mains: fc.constantFrom(...Object.values(MAINS)),
  excitation: fc.constantFrom('low' as const, 'high' as const),
  rotationRad: real(-20, 20),
  windingC: real(-30, 200),
  meter: fc.constant(null),
});

function allFinite(values: Readonly<Record<string, number>>): void {
  for (const [name, value] of Object.entries(values)) expect(Number.isFinite(value), name).toBe(true);
}

function noneNegative(values: Readonly<Record<string, number>>): void {
  allFinite(values);
  for (const [name, value] of Object.entries(values)) expect(value, name).toBeGreaterThanOrEqual(0);
}

const metal = (bars: number, draw: number): Metal =>
  draw % (bars + 1) === bars ? 'core' : draw % (bars + 1);

describe('for any armature and faults', () => {
  it('growler, ammeter, strip, hum and feel are real numbers at any rotation, contact and place of the strip', () => {
    holds(
      'growler, ammeter, strip',
      60,
      fc.property(
        anyFaultyArmature,
        anyDrive,
        loopOhm,
        fc.nat(),
        fc.nat(),
        real(65, 295),
        real(0, 0.02),
        fc.option(real(-30, 200), { nil: undefined }),
        ({ a, faults }, cold, ohm, x, y, stripDeg, heightM, hotC) => {
          // One coil much warmer than the others, or all cold.
          const coilC =
            hotC === undefined ? undefined : Array.from({ length: a.bars }, (_, i) => (i ? 20 : hotC));
          const drive = { ...cold, coilC };
          const meter = { barA: x % a.bars, barB: y % a.bars, loopOhm: ohm };
          const p = createArmatureSolver(a).solve(faults, { ...drive, meter });
          const losses = { coil: Math.min(...p.coilLossW()), bridge: p.bridgeLossW() };
          noneNegative({
            ...losses,
            growlerA: p.growlerA,
            growlerW: p.growlerW,
            flux: p.fluxWb,
            meter: p.meterA,
          });
          const force = p.strip(stripDeg, heightM);
          allFinite({ mean: force.meanN, shake: force.alternatingN, along: force.tangentialN });
          allFinite({ ...feel(force, Math.max(heightM, 1e-5), drive.mains.hz) });
          const { turns } =
            BENCH_GROWLER.windings[drive.mains.hz === 50 ? '230V50Hz' : '120V60Hz'][drive.excitation];
          const heard = hum({ ampereTurns: p.growlerA * turns, fluxWb: p.fluxWb }, drive.mains.hz);
          noneNegative({ ...heard });
          expect(heard.level).toBeLessThanOrEqual(20);
          const target = targetDeflection(p.meterA, 30);
          allFinite({ target, needle: needleAt({ fromDeflection: 0, fromRate: 0, target }, 400).deflection });
        },
      ),
    );
  });

  it('a path between two metals is none or a real impedance, and the lamp over it has a real current and light', () => {
    holds(
      'path and lamp',
      60,
      fc.property(
        anyFaultyArmature,
        fc.nat(),
        fc.nat(),
        fc.constantFrom(230, 120),
        ({ a, faults }, x, y, volt) => {
          const solver = createArmatureSolver(a);
          const ends = [metal(a.bars, x), metal(a.bars, y)] as const;
          const path = solver.path(faults, ...ends, 50, Math.SQRT2 * volt);
          const back = solver.path(faults, ends[1], ends[0], 50, Math.SQRT2 * volt);
          expect(back === null).toBe(path === null);
          if (path && back) {
            allFinite({ re: path.re, im: path.im });
            // Rounding only: a path takes power and never gives any.
            expect(path.re).toBeGreaterThan(-1e-9);
            expect(Math.hypot(path.re - back.re, path.im - back.im)).toBeLessThan(
              1e-9 * (1 + Math.abs(path.re)),
            );
          }
          const lamp = benchLamp(volt);
          const circuit = { volt, path };
          const steady = steadyFilament(lamp, circuit);
          const soon = stepFilament(lamp, AMBIENT_K, circuit, 3);
          noneNegative({ steady, soon, amps: lampCurrent(lamp, steady, circuit), glow: glow(steady) });
          expect(soon).toBeGreaterThanOrEqual(AMBIENT_K);
        },
      ),
    );
  });

  it('insulation tester and millivolt drop show real numbers on any bar', () => {
    holds(
      'insulation tester and drop',
      60,
      fc.property(
        anyFaultyArmature,
        fc.nat(),
        fc.constantFrom(...TEST_VOLTS),
        real(-10, 60),
        fc.integer({ min: 0, max: 60_000 }),
        ({ a, faults }, x, volt, tempC, ms) => {
          const bar = x % a.bars;
          const ohm = armatureResistance(a, faults, bar, 'core', { peakV: terminalVolt(volt, null), tempC });
          const specimen = { ohm, farad: 5e-9 };
          const shown = displayedOhm(specimen, volt, ms);
          noneNegative({ shown, ...{ seen: seeMegohms(shown).megohms }, left: leftVolt(specimen, volt, ms) });
          noneNegative({ at40: correctedTo40(ohm ?? 1e9, tempC) });
          const drops = [...neighbourDrops(a, faults), ...barDrops(a, faults, poleFeed(a, bar))];
          for (const drop of drops) noneNegative({ mv: seeMillivolts(drop).millivolts });
        },
      ),
    );
  });

  it('whole passes and strip maps hold real numbers', () => {
    holds(
      'passes',
      10,
      fc.property(
        anyFaultyArmature,
        loopOhm,
        fc.constantFrom(...Object.values(MAINS)),
        ({ a, faults }, ohm, mains) => {
          const setup = { mains, excitation: 'high', loopOhm: ohm, windingC: 20 } as const;
          const solver = createArmatureSolver(a);
          for (const amps of neighbourReadings(solver, faults, setup)) noneNegative({ amps });
          for (const amps of spacedReadings(solver, faults, setup).readingA) noneNegative({ amps });
          for (const { pullN } of stripPulls(solver, faults, setup, [95, 180])) allFinite({ pullN });
        },
      ),
    );
  });
});

describe('for any setting', () => {
  it('an empty cradle, a coil that heats and a scale give real numbers', () => {
    holds(
      'empty cradle',
      100,
      fc.property(anyDrive, real(0, 500), real(1e-4, 1), fc.nat(100_000), (drive, watt, kg, steps) => {
        noneNegative({ ...emptyCradle(drive.mains, drive.excitation, drive.windingC) });
        noneNegative({ rise: stepCoil(0, watt, kg, steps), place: scaleFraction(watt, 15) });
      }),
    );
  });
});
