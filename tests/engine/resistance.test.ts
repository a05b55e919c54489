import { describe, expect, it } from 'vitest';
import { newInductances } from '../../src/engine/circuit/inductance.ts';
import { LoopCircuit } from '../../src/engine/circuit/loopSolution.ts';
import { windingTopology } from '../../src/engine/circuit/topology.ts';
import type { ArmatureDesign } from '../../src/engine/parts/armature.ts';
import type { ArmatureFault } from '../../src/engine/parts/armatureFault.ts';
import { checkWinding } from '../../src/engine/parts/windingRules.ts';
import { LAP_24, WAVE_23 } from './support/parts.ts';

/**
 * Resistances between bars with every coil 1 ohm, joints none and no brushes: exact values of ring networks
 * (references B01-B12, worked out by two methods outside this program).
 */
const WAVE_25: ArmatureDesign = {
  ...WAVE_23,
  bars: 25,
  slots: 25,
  commutatorPitch: 13,
  slotWidth: 0.003,
  conductorArea: 12e-6,
};
const dead = { ohm: 0 } as const;

function unitRing(a: ArmatureDesign, faults: readonly ArmatureFault[]): (from: number, to: number) => number {
  expect(checkWinding(a)).toEqual([]);
  const topology = windingTopology(a, faults);
  const branches = topology.segments.map((s) =>
    s.coil < 0 ? s : { ...s, ohm: (s.top - s.bottom) / (2 * a.turns) },
  );
  const circuit = new LoopCircuit({ nodes: topology.nodes, branches, inductive: topology.windingSegments });
  const { zRe } = circuit.solve(newInductances(topology.windingSegments), 0, 0);
  const n = topology.nodes;
  return (i, j) => zRe[i * n + i]! + zRe[j * n + j]! - 2 * zRe[i * n + j]!;
}

/** Neighbouring resistances, bar b to b + 1, rounded to twelve places and counted. */
function neighbours(a: ArmatureDesign, faults: readonly ArmatureFault[]): number[] {
  const ohm = unitRing(a, faults);
  return Array.from({ length: a.bars }, (_, b) => ohm(b, (b + 1) % a.bars));
}

function expectPairs(values: readonly number[], odd: Readonly<Record<number, number>>, rest: number): void {
  values.forEach((value, bar) => {
    expect(value, `bars ${bar} and the next`).toBeCloseTo(odd[bar] ?? rest, 6);
  });
}

describe('bar-to-bar resistance, every coil 1 ohm', () => {
  it('B01 lap, sound: (C-1)/C', () => {
    expectPairs(neighbours(LAP_24, []), {}, 23 / 24);
  });

  it('B02 lap, one coil open: 23 at its pair, exactly 1 at all others', () => {
    expectPairs(neighbours(LAP_24, [{ kind: 'openCoil', coil: 0 }]), { 0: 23 }, 1);
  });

  it('B03 lap, one coil dead short: 0, others 22/23', () => {
    const short: ArmatureFault = { kind: 'turnShort', coil: 0, turns: LAP_24.turns, ...dead };
    expectPairs(neighbours(LAP_24, [short]), { 0: 0 }, 22 / 23);
  });

  it('B04 lap, half the turns of one coil shorted: 0.489362, others 0.957447', () => {
    const half: ArmatureFault = { kind: 'turnShort', coil: 0, turns: LAP_24.turns / 2, ...dead };
    expectPairs(neighbours(LAP_24, [half]), { 0: 0.489362 }, 0.957447);
  });

  it('B06 wave, sound: p(C-p)/C', () => {
    expectPairs(neighbours(WAVE_25, []), {}, (2 * 23) / 25);
  });

  it('B07 wave, one coil open: 23 on two pairs half a turn apart, 2 elsewhere', () => {
    expectPairs(neighbours(WAVE_25, [{ kind: 'openCoil', coil: 0 }]), { 0: 23, 12: 23 }, 2);
  });

  it('B09 wave, neighbouring bars bridged', () => {
    const bridge: ArmatureFault = { kind: 'bridgedBars', bar: 0, by: 'copper', ...dead };
    expectPairs(neighbours(WAVE_25, [bridge]), { 0: 0, 12: 1.456522, 13: 1.456522 }, 1.826087);
  });

  it('B11 one faulty coil marks one pair on a lap winding, p pairs about C/p apart on a wave winding', () => {
    const marked = (a: ArmatureDesign, coil: number) => {
      const sound = neighbours(a, [])[0]!;
      const values = neighbours(a, [{ kind: 'turnShort', coil, turns: a.turns, ...dead }]);
      return values.flatMap((v, bar) => (v < 0.9 * sound ? [bar] : []));
    };
    expect(marked(LAP_24, 7)).toEqual([7]);
    expect(marked(WAVE_25, 7)).toEqual([7, 19]);
  });

  it('B12 fed at opposite bars: an open empties its half, and shows the whole feed voltage', () => {
    const drops = (faults: readonly ArmatureFault[]) => {
      const ohm = unitRing(LAP_24, faults);
      // Volts of bar b over bar 12 with unit current from bar 0 to bar 12.
      const volts = Array.from({ length: 24 }, (_, b) => (ohm(b, 12) + ohm(0, 12) - ohm(0, b)) / 2);
      return volts.map((v, b) => (v - volts[(b + 1) % 24]!) / ohm(0, 12));
    };
    const open = drops([{ kind: 'openCoil', coil: 4 }]);
    open.forEach((drop, b) => {
      expect(drop).toBeCloseTo(b === 4 ? 1 : b < 12 ? 0 : -1 / 12, 9);
    });
    drops([]).forEach((drop, b) => {
      expect(drop).toBeCloseTo(b < 12 ? 1 / 12 : -1 / 12, 9);
    });
  });
});
