import { describe, expect, it } from 'vitest';
import { alterationOf } from '../../../src/assess/evidence/alterations.ts';
import { createEvidence, type EvidenceModel } from '../../../src/assess/evidence/model.ts';
import { solveSources } from '../../../src/assess/evidence/sources.ts';
import { PULLS } from '../../../src/assess/evidence/strip.ts';
import { faultOf, locate, suspectAt } from '../../../src/assess/evidence/suspects.ts';
import { BarPair, loopCurrent, together } from '../../../src/assess/evidence/thevenin.ts';
import { createArmatureSolver } from '../../../src/engine/armatureBench.ts';
import { MAINS } from '../../../src/engine/drive.ts';
import { LINEAR_GROWLER } from '../../../src/engine/growler.ts';
import { feel } from '../../../src/engine/instruments/stripMotion.ts';
import type { ArmatureDesign } from '../../../src/engine/parts/armature.ts';
import { ALL_TESTS, armature } from './support/parts.ts';

/**
 * What the evidence engine works out by low-rank updates of one solution, against the engine's own full solution of
 * every faulted circuit.
 */
const PARTS = ['wave-23', 'lap-28', 'lap-24'] as const;
const LOOP_OHM = 0.008;

function model(design: ArmatureDesign, growler = LINEAR_GROWLER): EvidenceModel {
  return createEvidence({ design, mains: '230V50Hz', tests: ALL_TESTS, growler });
}

/** Largest difference in amperes over a sample of suspects, at a pair of bars and a rotation beyond the first pitch. */
function worst({ dictionary, suspects, design }: EvidenceModel, excitation: 'high' | 'low'): number {
  const rotationDeg = (360 / design.slots) * (5 + 10 / 64);
  const solver = createArmatureSolver(design, dictionary.growler);
  const drive = { mains: dictionary.mains, excitation, windingC: 45, meter: null };
  const standing = dictionary.standing(rotationDeg);
  let most = 0;
  for (const bars of [
    [7, 8],
    [4, 10],
  ] as const) {
    const [a, b] = bars.map((bar) => dictionary.turnedBack(bar, standing));
    const sources = solveSources(dictionary, [a!, b!], standing.step, excitation);
    const numbers = dictionary.turnedBackSuspects(standing);
    for (let k = 0; k < suspects.count; k += 3) {
      const at = locate(suspects, k);
      const faults = at === null ? [] : [faultOf(design, at.block, at.place, at.severity)];
      const point = solver.solve(faults, { ...drive, rotationRad: (rotationDeg * Math.PI) / 180 });
      const n = numbers[k]!;
      const source = { v2: sources.v2[n]!, r: sources.r[n]!, x: sources.x[n]! };
      most = Math.max(
        most,
        Math.abs(loopCurrent(source, LOOP_OHM) - point.reading(bars[0], bars[1], LOOP_OHM)),
      );
    }
  }
  return most;
}

describe('readings of single faults', () => {
  it.each(PARTS)('agree with the full solution of every fault on linear iron: %s', (id) => {
    // Parted joints let half a milliampere through.
    expect(worst(model(armature(id)), 'high')).toBeLessThan(2e-3);
    expect(worst(model(armature(id)), 'low')).toBeLessThan(2e-3);
  });

  it.each(PARTS)('agree within the model spread when teeth saturate: %s', (id) => {
    const saturating = createEvidence({ design: armature(id), mains: '230V50Hz', tests: ALL_TESTS });
    expect(worst(saturating, 'high')).toBeLessThan(0.05);
  });

  it('agree on windings that break the likeness of slots or join points of it', () => {
    const equalised = { ...armature('lap-28'), equalised: true };
    expect(worst(model(equalised), 'high')).toBeLessThan(2e-3);
    const base = armature('wave-23');
    // A forced wave winding: 24 slots, 23 coils and a dummy.
    const dummy = { ...base, slots: 24, dummyPlace: 7, slotWidth: 0.0032, conductorArea: 1.2e-5 };
    expect(worst(model(dummy), 'high')).toBeLessThan(2e-3);
  });
});

describe('readings of two faults at once', () => {
  it.each(PARTS)('agree with the full solution: %s', (id) => {
    const { dictionary, suspects, design } = model(armature(id));
    const solver = createArmatureSolver(design, dictionary.growler);
    const standing = dictionary.standing(0);
    const supply = dictionary.supply('high', standing.step);
    const solution = dictionary.solveTurned(null, standing.step);
    const blocks = suspects.blocks.filter(({ kind }) => kind !== 'turnShort' && kind !== 'coilShort');
    const source = { v2: 0, r: 0, x: 0 };
    let most = 0;
    for (const one of blocks) {
      for (const other of blocks) {
        for (const [p, q] of [
          [3, 9],
          [3, 5],
        ] as const) {
          const [s, t] = [Math.floor(one.severities.length / 3), Math.floor(other.severities.length / 2)];
          const faults = [faultOf(design, one, p, s), faultOf(design, other, q, t)];
          const both = together(
            alterationOf(design, dictionary.winding, one, p, s),
            alterationOf(design, dictionary.winding, other, q, t),
          );
          const point = solver.solve(faults, {
            mains: MAINS['230V50Hz'],
            excitation: 'high',
            rotationRad: 0,
            windingC: 45,
            meter: null,
          });
          for (const [a, b] of [
            [3, 4],
            [2, 3],
            [10, 4],
          ] as const) {
            new BarPair(solution, a, b).source(both, supply, source);
            most = Math.max(most, Math.abs(loopCurrent(source, LOOP_OHM) - point.reading(a, b, LOOP_OHM)));
          }
        }
      }
    }
    expect(most).toBeLessThan(5e-3);
  });
});

describe('pull on the strip', () => {
  it.each(PARTS)('is the likeliest of those the full solution comes near: %s', (id) => {
    const { dictionary, suspects, design } = createEvidence({
      design: armature(id),
      mains: '230V50Hz',
      tests: ALL_TESTS,
    });
    const held = {
      angleDeg: 130,
      heightMm: 0.5,
      rotationDeg: 0,
      excitation: 'high',
    } as const;
    const table = dictionary.pulls(held, dictionary.standing(0));
    const solver = createArmatureSolver(design);
    const drive = {
      mains: dictionary.mains,
      excitation: 'high',
      rotationRad: 0,
      windingC: 45,
      meter: null,
    } as const;
    for (const block of suspects.blocks) {
      for (let place = 0; place < design.bars; place++) {
        for (let k = 0; k < block.severities.length; k += 4) {
          const point = solver.solve([faultOf(design, block, place, k)], drive);
          const { pull } = feel(point.strip(130, 0.0005), 0.0005, 50);
          expect(table[suspectAt(block, place, k) * PULLS + pull]).toBeGreaterThan(0.3);
        }
      }
    }
  });
});
