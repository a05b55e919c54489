import { describe, expect, it } from 'vitest';
import {
  clueChance,
  insulationSigns,
  surfaceSigns,
  windingSigns,
} from '../../../src/assess/evidence/clues.ts';
import { faultOf, suspectAt } from '../../../src/assess/evidence/suspects.ts';
import type { Clue } from '../../../src/bench/observation.ts';
import { CLUES } from '../../../src/bench/observation.ts';
import type { Place } from '../../../src/bench/places.ts';
import type { ArmatureFault } from '../../../src/engine/parts/armatureFault.ts';
import { cluesAt } from '../../../src/scenario/hidden/looks.ts';
import { armature } from './support/parts.ts';
import { modelOf } from './support/readings.ts';

/** The chances the evidence engine believes in, against how often the lens really shows a clue. */
const SEEDS = 1500;
const design = armature('wave-23');

function seen(faults: readonly ArmatureFault[], place: Place): Record<Clue, number> {
  const counts = Object.fromEntries(CLUES.map((clue) => [clue, 0])) as Record<Clue, number>;
  for (let seed = 0; seed < SEEDS; seed++) {
    const hidden = { armature: { faults }, startRotationDeg: 0, seed, supplyReference: 'floating' as const };
    for (const clue of cluesAt(hidden, design, place)) counts[clue] += 1 / SEEDS;
  }
  return counts;
}

function expectAlike(
  faults: readonly ArmatureFault[],
  place: Place,
  signs: Readonly<Partial<Record<Clue, number>>> | null,
): void {
  const shown = seen(faults, place);
  for (const clue of CLUES) {
    const believed = clueChance(place, clue, signs?.[clue] ?? 0);
    // Four standard deviations of the count, and the two in a hundred kept for clues laid on purpose.
    const sd = Math.sqrt((believed * (1 - believed)) / SEEDS);
    expect(Math.abs(believed - shown[clue]), `${clue} at ${place}`).toBeLessThan(4 * sd + 0.025);
  }
}

describe('chances of clues', () => {
  const places: Place[] = ['bar:7', 'bar:8', 'riser:6', 'riser:7', 'riser:8', 'bar:18', 'core', 'shaft'];

  it('are those of the lens for every kind of winding fault', () => {
    const { suspects } = modelOf('wave-23');
    for (const block of suspects.blocks) {
      for (const severity of [0, block.severities.length - 1]) {
        expect(suspectAt(block, 7, severity)).toBeGreaterThan(0);
        const fault = faultOf(design, block, 7, severity);
        for (const place of places)
          expectAlike([fault], place, windingSigns(design, block, 7, severity, place));
      }
    }
  });

  it('are those of the lens for insulation, dirt and a part without fault', () => {
    const sound = { kind: 'sound', bar: null } as const;
    for (const place of places) {
      expectAlike([], place, insulationSigns(sound, place));
      expectAlike([{ kind: 'dirtyCommutator' }], place, surfaceSigns('dirty', place));
      expectAlike(
        [{ kind: 'groundedBar', bar: 7, ohm: 1 }],
        place,
        insulationSigns({ ...sound, kind: 'groundedBar', bar: 7 }, place),
      );
      expectAlike(
        [{ kind: 'groundedCoil', coil: 7, fraction: 0.5, ohm: 1 }],
        place,
        insulationSigns({ ...sound, kind: 'groundedCoil' }, place),
      );
      expectAlike(
        [{ kind: 'weakInsulation', ohm: 1e5, breakdownV: null }],
        place,
        insulationSigns({ ...sound, kind: 'weak' }, place),
      );
    }
  });
});
