import { describe, expect, it } from 'vitest';
import {
  groundPaths,
  growlerCurrents,
  largestSpacing,
  NOMINAL_LOOP_OHM,
  neighbourReadings,
  STRIP_PLACES_DEG,
  spacedReadings,
  spacedStation,
  stripPulls,
  type TestSetup,
} from '../../src/engine/answers.ts';
import { createArmatureSolver } from '../../src/engine/armatureBench.ts';
import { MAINS } from '../../src/engine/drive.ts';
import type { ArmatureDesign } from '../../src/engine/parts/armature.ts';
import type { ArmatureFault } from '../../src/engine/parts/armatureFault.ts';
import { coilPlaces } from '../../src/engine/parts/winding.ts';
import { ARMATURES, drive, LAP_24, LAP_28, WAVE_23 } from './support/parts.ts';

/** Facts of the trade that must come out of the physics by themselves. Common practice, no source, unless named. */
const SETUP: TestSetup = {
  mains: MAINS['230V50Hz'],
  excitation: 'high',
  loopOhm: NOMINAL_LOOP_OHM,
  windingC: 20,
};
const FELT_N = 0.05;

/** Bars whose neighbouring reading falls below the sound one by more than an eye resolves. */
function fallen(a: ArmatureDesign, faults: readonly ArmatureFault[]): number[] {
  const solver = createArmatureSolver(a);
  const sound = neighbourReadings(solver, [], SETUP);
  const faulty = neighbourReadings(solver, faults, SETUP);
  return faulty.flatMap((amps, bar) => (amps < 0.9 * sound[bar]! ? [bar] : []));
}

describe('ammeter on a sound armature', () => {
  it('reads most about 90 degrees of commutator apart on the four-pole wave armature', () => {
    const point = createArmatureSolver(WAVE_23).solve([], drive());
    const readings = Array.from({ length: 11 }, (_, k) => {
      const { first, second } = spacedStation(WAVE_23, k + 1);
      return point.reading(first, second, NOMINAL_LOOP_OHM);
    });
    const spacing = 1 + readings.indexOf(Math.max(...readings));
    expect(Math.abs((spacing * 360) / 23 - 90)).toBeLessThan(360 / 23);
    expect(Math.max(...readings)).toBeGreaterThan(3 * readings[0]!);
    expect(largestSpacing(createArmatureSolver(WAVE_23), SETUP)).toBe(spacing);
  });

  it('reads the same at every bar with one coil in a slot, neighbouring and spaced', () => {
    for (const a of [WAVE_23, LAP_28]) {
      const solver = createArmatureSolver(a);
      for (const pass of [neighbourReadings(solver, [], SETUP), spacedReadings(solver, [], SETUP).readingA]) {
        for (const amps of pass) expect(amps / pass[0]!).toBeCloseTo(1, 9);
      }
    }
  });

  it('alternates bar by bar with two coils in a slot', () => {
    const pass = neighbourReadings(createArmatureSolver(LAP_24), [], SETUP);
    pass.forEach((amps, bar) => {
      expect(amps / pass[bar % 2]!).toBeCloseTo(1, 9);
    });
    expect(Math.abs(pass[0]! / pass[1]! - 1)).toBeGreaterThan(0.02);
  });

  it('the ring carries no current: the volts round it add up to zero (reference G01)', () => {
    for (const a of ARMATURES) {
      const point = createArmatureSolver(a).solve([], drive({ rotationRad: 0.1 }));
      expect(Math.max(...point.coilCurrentA())).toBeLessThan(1e-6);
    }
  });
});

describe('bad riser joint', () => {
  it.each(ARMATURES.map((a) => [a.id, a] as const))(
    'drops out at its bar in the neighbouring pass, %s',
    (_id, a) => {
      for (const ohm of [0.02, 'open'] as const) {
        const fault: ArmatureFault = { kind: 'riserJoint', bar: 5, form: 'bar', ohm };
        expect(fallen(a, [fault])).toEqual([4, 5]);
      }
    },
  );

  it('reads nothing at all once the joint is open', () => {
    const open: ArmatureFault = { kind: 'riserJoint', bar: 5, form: 'bar', ohm: 'open' };
    const pass = neighbourReadings(createArmatureSolver(WAVE_23), [open], SETUP);
    expect([pass[4], pass[5]]).toEqual([0, 0]);
  });
});

describe('open coil', () => {
  it('falls at two pairs on opposite sides of a wave armature, at one pair of a lap, and nowhere else', () => {
    const open: ArmatureFault = { kind: 'openCoil', coil: 5 };
    expect(fallen(WAVE_23, [open])).toEqual(pairsThrough(WAVE_23, 5));
    expect(pairsThrough(WAVE_23, 5)).toHaveLength(2);
    expect(fallen(LAP_28, [open])).toEqual([5]);
    expect(fallen(LAP_24, [open])).toEqual([5]);
  });

  it('leaves the open-circuit volts as they were', () => {
    for (const a of ARMATURES) {
      const solver = createArmatureSolver(a);
      const sound = solver.solve([], drive({ rotationRad: 0.2 }));
      const open = solver.solve([{ kind: 'openCoil', coil: 5 }], drive({ rotationRad: 0.2 }));
      for (let b = 1; b < a.bars; b++) expect(open.openVolt(0, b)).toBeCloseTo(sound.openVolt(0, b), 9);
    }
  });

  it('is the same to the ammeter as one coil end off its bar', () => {
    const pass = (fault: ArmatureFault) => neighbourReadings(createArmatureSolver(WAVE_23), [fault], SETUP);
    const off = pass({ kind: 'riserJoint', bar: 5, form: 'oneEnd', ohm: 'open' });
    pass({ kind: 'openCoil', coil: 5 }).forEach((amps, bar) => {
      expect(amps).toBeCloseTo(off[bar]!, 9);
    });
  });

  it('falls less than a hard bridge, and a soft bridge is hardly seen', () => {
    const lowest = (fault: ArmatureFault) => {
      const solver = createArmatureSolver(WAVE_23);
      const sound = neighbourReadings(solver, [], SETUP)[0]!;
      return Math.min(...neighbourReadings(solver, [fault], SETUP)) / sound;
    };
    const bridge = (ohm: number): ArmatureFault => ({ kind: 'bridgedBars', bar: 5, ohm, by: 'copper' });
    expect(lowest(bridge(0.0002))).toBeLessThan(lowest({ kind: 'openCoil', coil: 5 }));
    expect(lowest(bridge(0.05))).toBeGreaterThan(0.97);
  });
});

/** Neighbouring pairs b, b+1 whose short way through the winding passes a coil: lap one, four-pole wave two. */
function pairsThrough(a: ArmatureDesign, coil: number): number[] {
  const places = coilPlaces(a);
  return Array.from({ length: a.bars }, (_, b) => b).filter((b) => {
    const next = (b + 1) % a.bars;
    const chain = (from: number, to: number) => {
      const second = places[from]!.endBar;
      return places[second]!.endBar === to ? [from, second] : [];
    };
    return [...chain(b, next), ...chain(next, b)].includes(coil);
  });
}

describe('lamp between bar and core', () => {
  it('finds no path on a sound armature, and one from every bar of a grounded one (reference G06)', () => {
    for (const a of ARMATURES) {
      const solver = createArmatureSolver(a);
      expect(groundPaths(solver, [], SETUP.mains)).toEqual(new Array(a.bars).fill(null));
      const grounded = groundPaths(solver, [{ kind: 'groundedBar', bar: 5, ohm: 0.5 }], SETUP.mains);
      for (const ohm of grounded) expect(ohm).toBeLessThan(1);
    }
  });

  it('one ground changes no ammeter reading; two hard ones do (reference G18)', () => {
    const solver = createArmatureSolver(LAP_24);
    const sound = neighbourReadings(solver, [], SETUP);
    const one: ArmatureFault = { kind: 'groundedBar', bar: 5, ohm: 0.02 };
    const two: ArmatureFault = { kind: 'groundedBar', bar: 17, ohm: 0.02 };
    neighbourReadings(solver, [one], SETUP).forEach((amps, bar) => {
      expect(amps).toBeCloseTo(sound[bar]!, 9);
    });
    const both = neighbourReadings(solver, [one, two], SETUP);
    expect(Math.max(...both.map((amps, bar) => Math.abs(amps / sound[bar]! - 1)))).toBeGreaterThan(0.2);
  });
});

describe('steel strip', () => {
  it('is still on a sound armature everywhere away from the jaws', () => {
    for (const a of ARMATURES) {
      const pulls = stripPulls(createArmatureSolver(a), [], SETUP);
      for (const p of pulls) expect(Math.abs(p.pullN), `${a.id} at ${p.stripDeg}`).toBeLessThan(FELT_N / 5);
    }
  });

  it('is pulled towards the jaws beside them, sound or not', () => {
    for (const a of ARMATURES) {
      const f = createArmatureSolver(a).solve([], drive()).strip(70, 0.0005);
      expect(Math.hypot(f.meanN, f.tangentialN)).toBeGreaterThan(FELT_N);
    }
  });

  // References G13, G14: a bridge closes p coils in series, so 2p slots carry their current: 4 on a four-pole wave.
  it('is pulled hardest at the slots of the coils a bridge closes: 4 on the wave, 2 on the two-pole lap', () => {
    expect(pulledSlots(WAVE_23, bridgeAt(5), 180)).toEqual([0, 6, 12, 17]);
    expect(pulledSlots(LAP_24, bridgeAt(5), 180)).toEqual([2, 8]);
  });

  it('cannot feel a four-pole lap at the top, but on either side of it', () => {
    expect(largestPull(LAP_28, bridgeAt(5), 180)).toBeLessThan(FELT_N);
    expect(largestPull(LAP_28, bridgeAt(5), 120)).toBeGreaterThan(1);
    expect(largestPull(LAP_28, bridgeAt(5), 240)).toBeGreaterThan(1);
  });

  it('is still at an open coil (reference G17) and at a single ground (G18), and weaker on LOW', () => {
    for (const a of ARMATURES) {
      for (const fault of [
        { kind: 'openCoil', coil: 5 },
        { kind: 'groundedBar', bar: 5, ohm: 0.02 },
      ] as const) {
        const pulls = stripPulls(createArmatureSolver(a), [fault], SETUP);
        expect(Math.max(...pulls.map((p) => Math.abs(p.pullN)))).toBeLessThan(FELT_N / 5);
      }
    }
    const low = stripPulls(createArmatureSolver(WAVE_23), bridgeAt(5), { ...SETUP, excitation: 'low' });
    const weak = Math.max(...low.map((p) => p.pullN));
    expect(weak).toBeGreaterThan(FELT_N);
    expect(weak).toBeLessThan(
      0.7 * Math.max(...STRIP_PLACES_DEG.map((d) => largestPull(WAVE_23, bridgeAt(5), d))),
    );
  });

  it('pulls less the higher it is held, and never without bound', () => {
    const point = createArmatureSolver(WAVE_23).solve(bridgeAt(5), drive({ rotationRad: Math.PI }));
    const heights = [0, 1e-5, 1e-4, 3e-4, 5e-4, 8e-4, 1.5e-3, 3e-3, 6e-3, 0.02, 0.1];
    const pulls = heights.map((h) => point.strip(180, h).meanN);
    for (let k = 1; k < pulls.length; k++) expect(pulls[k]!).toBeLessThanOrEqual(pulls[k - 1]!);
    expect(pulls[0]).toBeLessThan(20);
    expect(pulls.at(-1)).toBeLessThan(1e-4);
  });

  it('shakes at twice mains frequency about as hard as it is pulled, with one current in phase', () => {
    const f = createArmatureSolver(LAP_24)
      .solve(bridgeAt(5), drive({ rotationRad: Math.PI - 2 * (Math.PI / 6) }))
      .strip(180, 5e-4);
    expect(f.meanN).toBeGreaterThan(1);
    expect(f.alternatingN / f.meanN).toBeGreaterThan(0.9);
    expect(f.alternatingN / f.meanN).toBeLessThanOrEqual(1);
  });
});

function bridgeAt(bar: number): ArmatureFault[] {
  return [{ kind: 'bridgedBars', bar, ohm: 0.0002, by: 'copper' }];
}

function largestPull(a: ArmatureDesign, faults: readonly ArmatureFault[], stripDeg: number): number {
  return Math.max(...stripPulls(createArmatureSolver(a), faults, SETUP, [stripDeg]).map((p) => p.pullN));
}

/** Slots under the strip at which the pull is at least half the largest. */
function pulledSlots(a: ArmatureDesign, faults: readonly ArmatureFault[], stripDeg: number): number[] {
  const pulls = stripPulls(createArmatureSolver(a), faults, SETUP, [stripDeg]).map((p) => p.pullN);
  return pulls.flatMap((n, slot) => (n > Math.max(...pulls) / 2 ? [slot] : []));
}

describe('growler', () => {
  it('takes several times its normal current with an empty cradle', () => {
    for (const a of ARMATURES) {
      for (const mains of Object.values(MAINS)) {
        const { currentA, emptyCurrentA } = growlerCurrents(createArmatureSolver(a), [], { ...SETUP, mains });
        expect(emptyCurrentA / currentA).toBeGreaterThan(3);
        expect(emptyCurrentA / currentA).toBeLessThan(5);
      }
    }
  });
});
