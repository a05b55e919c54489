import { describe, expect, it } from 'vitest';
import { checkFault, checkWinding, createArmatureSolver } from '../../src/engine/armatureBench.ts';
import { newInductances, segmentInductances } from '../../src/engine/circuit/inductance.ts';
import { LoopCircuit } from '../../src/engine/circuit/loopSolution.ts';
import { windingTopology } from '../../src/engine/circuit/topology.ts';
import { endLeakageHenry, LINEAR_GROWLER, sharedDepth } from '../../src/engine/growler.ts';
import { slotPotentials } from '../../src/engine/magnetics/toothNetwork.ts';
import type { ArmatureDesign } from '../../src/engine/parts/armature.ts';
import type { ArmatureFault } from '../../src/engine/parts/armatureFault.ts';
import { coilPlaces } from '../../src/engine/parts/winding.ts';
import { solveNodal } from '../reference/support/nodal.ts';
import { drive, EQUALISED_LAP_28, FORCED_WAVE_35, LAP_24, LAP_28, WAVE_23 } from './support/parts.ts';
import { buildArmature } from './support/random.ts';

/** The whole set of windings and faults the bench knows: each wound, each solved, each against a full nodal solution. */

/** Smallest core of its kind from `least` slots up that can be wound. */
function wound(
  choice: Pick<ArmatureDesign, 'winding' | 'poles' | 'coilsPerSlot'>,
  chord: number,
  dummy = false,
) {
  for (let slots = 4 * choice.poles; slots < 60; slots++) {
    for (const sense of [1, -1]) {
      const rest = {
        turns: choice.poles === 2 ? 3 : 1,
        chord,
        equalised: false,
        dummy,
        fill: 0.5,
        jawGap: 2.5e-4,
      };
      const a = { ...buildArmature({ ...choice, slots, sense, ...rest }), id: nameOf(choice, chord, dummy) };
      if (checkWinding(a).length === 0) return a;
    }
  }
  throw new Error(`No core for ${nameOf(choice, chord, dummy)}.`);
}

function nameOf(
  { winding, poles, coilsPerSlot }: Parameters<typeof wound>[0],
  chord: number,
  dummy: boolean,
) {
  return `${poles}-pole ${winding}, ${coilsPerSlot} a slot${chord ? ', chorded' : ''}${dummy ? ', dummy coil' : ''}`;
}

const KINDS = ([2, 4, 6] as const).flatMap((poles) =>
  ([1, 2, 3] as const).flatMap((coilsPerSlot) =>
    (['lap', 'wave'] as const).map((winding) => ({ winding, poles, coilsPerSlot })),
  ),
);
/** Two and six pole waves with three coils a slot have a multiple of three bars and can only be forced or not at all. */
const possible = KINDS.filter(({ winding, poles, coilsPerSlot }) => {
  if (winding === 'lap' || poles === 2) return true;
  return poles === 4 ? coilsPerSlot !== 2 : coilsPerSlot !== 3;
});
const WINDINGS: readonly ArmatureDesign[] = [
  ...possible.map((k) => wound(k, 0)),
  ...possible.filter((k) => k.coilsPerSlot === 1).map((k) => wound(k, -1)),
  wound({ winding: 'wave', poles: 4, coilsPerSlot: 2 }, 0, true),
  wound({ winding: 'wave', poles: 6, coilsPerSlot: 1 }, 0, true),
  EQUALISED_LAP_28,
  FORCED_WAVE_35,
];

/** Coil with its lower side under the top side of another. */
function coilUnder(a: ArmatureDesign, topCoil: number): number {
  const places = coilPlaces(a);
  return places.findIndex((p) => p.bottomSlot === places[topCoil]!.topSlot);
}

/** Every kind of fault at the ends and in the middle of its grades, and several at once. */
function faultSets(a: ArmatureDesign): Readonly<Record<string, readonly ArmatureFault[]>> {
  const joint = (bar: number, form: 'bar' | 'oneEnd' | 'bothEnds', ohm: number | 'open') =>
    ({ kind: 'riserJoint', bar, form, ohm }) as const;
  const forms = (['bar', 'oneEnd', 'bothEnds'] as const).flatMap((form) =>
    ([1e-3, 0.02, 0.5, 'open'] as const).map(
      (ohm) => [`joint ${form} ${ohm}`, [joint(3, form, ohm)]] as const,
    ),
  );
  const bridges = ([1e-4, 5e-3, 10] as const).map(
    (ohm) =>
      [`bridge ${ohm}`, [{ kind: 'bridgedBars', bar: 4, ohm, by: ohm < 1 ? 'copper' : 'carbon' }]] as const,
  );
  const short = { kind: 'coilShort', topCoil: 5, bottomCoil: coilUnder(a, 5), ohm: 1e-3 } as const;
  return {
    sound: [],
    open: [{ kind: 'openCoil', coil: 2 }],
    ...Object.fromEntries(forms),
    ...Object.fromEntries(bridges),
    'one turn short': [{ kind: 'turnShort', coil: 1, turns: 1, ohm: 1e-3 }],
    'all turns short': [{ kind: 'turnShort', coil: 1, turns: a.turns, ohm: 2e-4 }],
    ...(short.bottomCoil >= 0 ? { 'coil to coil': [short] } : {}),
    'ground at a bar': [{ kind: 'groundedBar', bar: 0, ohm: 0.5 }],
    'ground in mid-coil': [{ kind: 'groundedCoil', coil: 0, fraction: 0.5, ohm: 0.02 }],
    'two grounds': [
      { kind: 'groundedBar', bar: 1, ohm: 0.02 },
      { kind: 'groundedCoil', coil: 6, fraction: 0.3, ohm: 0.02 },
    ],
    reversed: [{ kind: 'reversedCoil', coil: 3 }],
    'weak insulation': [{ kind: 'weakInsulation', ohm: 1e4, breakdownV: 400 }],
    dirt: [{ kind: 'dirtyCommutator' }],
    'several at once': [
      { kind: 'openCoil', coil: 2 },
      { kind: 'bridgedBars', bar: 6, ohm: 1e-3, by: 'copper' },
      joint(0, 'bar', 0.05),
      { kind: 'reversedCoil', coil: 4 },
      { kind: 'groundedBar', bar: 7, ohm: 0.1 },
      { kind: 'turnShort', coil: 5, turns: 1, ohm: 5e-3 },
    ],
    'two breaks, one of them both ends': [joint(0, 'bothEnds', 'open'), joint(5, 'oneEnd', 'open')],
  };
}

/** Ammeter reading by dense nodal analysis of the same branches, ammeter and growler included. */
function nodalReading(
  a: ArmatureDesign,
  faults: readonly ArmatureFault[],
  barA: number,
  barB: number,
): number {
  const topology = windingTopology(a, faults);
  const depth = sharedDepth(LINEAR_GROWLER, a.stackLength);
  const { m } = slotPotentials(a, LINEAR_GROWLER, 0);
  const l = newInductances(topology.windingSegments);
  segmentInductances(a, depth, topology, m, 0, l);
  const { turns, ohm20 } = LINEAR_GROWLER.windings['230V50Hz'].high;
  const circuit = {
    nodes: topology.nodes,
    branches: topology.segments,
    inductive: topology.windingSegments,
    l: { mutual: l.mutual, growler: l.growler.map((x) => x * turns) },
    growlerHenry: turns ** 2 * (depth * m[0]! + endLeakageHenry(LINEAR_GROWLER)),
    growlerOhm: ohm20,
  };
  const ohm = 0.008;
  const meter = [{ from: barA, to: barB, ohm }];
  const joined = { ...circuit, branches: [...topology.segments, ...meter] };
  const { island } = new LoopCircuit(joined).forest;
  const v = solveNodal(circuit, 100 * Math.PI, 230, [...new Set(island)], meter);
  return Math.hypot(v.re[barA]! - v.re[barB]!, v.im[barA]! - v.im[barB]!) / ohm;
}

describe.each(WINDINGS.map((a) => [`${a.id}, ${a.bars} bars in ${a.slots} slots`, a] as const))(
  '%s',
  (_name, a) => {
    const solver = createArmatureSolver(a, LINEAR_GROWLER);

    it.each(Object.entries(faultSets(a)))('%s', (_fault, faults) => {
      for (const fault of faults) expect(checkFault(a, fault)).toEqual([]);
      const point = solver.solve(faults, drive());
      for (const [barA, barB] of [
        [3, 4],
        [0, Math.round(a.bars / a.poles)],
      ] as const) {
        const ours = point.reading(barA, barB, 0.008);
        const full = nodalReading(a, faults, barA, barB);
        expect(Math.abs(ours - full)).toBeLessThan(1e-7 * Math.max(1, full));
      }
      expect(Number.isFinite(point.strip(120, 5e-4).meanN)).toBe(true);
    });
  },
);

describe('windings that cannot be', () => {
  it.each([
    [
      '4-pole wave with an even number of bars',
      { ...WAVE_23, slots: 24, bars: 24, commutatorPitch: 12 },
      'bars',
    ],
    [
      '6-pole wave with a multiple of three bars',
      { ...WAVE_23, poles: 6, slots: 24, bars: 24, spanSlots: 4 },
      'bars',
    ],
    ['wave with a pitch of its neighbours', { ...WAVE_23, commutatorPitch: 10 }, 'commutatorPitch'],
    ['lap of pitch two', { ...LAP_28, commutatorPitch: 2 }, 'commutatorPitch'],
    ['more bars than places', { ...LAP_24, bars: 25 }, 'bars'],
    ['odd poles', { ...LAP_28, poles: 3 }, 'poles'],
    ['equalisers on a wave', { ...WAVE_23, equalised: true }, 'equalised'],
    ['equalisers on two poles', { ...LAP_24, equalised: true }, 'equalised'],
    ['dummy coil on a lap', { ...LAP_28, bars: 27, dummyPlace: 2 }, 'dummyPlace'],
    ['a span of half a pole pitch', { ...LAP_28, spanSlots: 3 }, 'spanSlots'],
  ] as const)('%s: refused with one sentence that names the place', (_name, a, path) => {
    const objections = checkWinding(a);
    expect(objections.map((o) => o.path)).toContain(path);
    for (const { sentence } of objections) expect(sentence).toMatch(/^[A-Z].*\.$/);
  });
});

describe('weak insulation', () => {
  it('is a leak below its breakdown voltage and a ground above', () => {
    const weak: ArmatureFault = { kind: 'weakInsulation', ohm: 5e6, breakdownV: 300 };
    const solver = createArmatureSolver(WAVE_23);
    const ohm = (peakV: number) => solver.path([weak], 4, 'core', 50, peakV)!.re;
    expect(ohm(250)).toBeCloseTo(5e6, -1);
    expect(ohm(326)).toBeLessThan(500);
  });
});
