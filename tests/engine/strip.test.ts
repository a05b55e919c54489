import { describe, expect, it } from 'vitest';
import { createArmatureSolver } from '../../src/engine/armatureBench.ts';
import type { ArmatureFault } from '../../src/engine/parts/armatureFault.ts';
import { drive, LAP_24, WAVE_23 } from './support/parts.ts';

const BRIDGE: readonly ArmatureFault[] = [{ kind: 'bridgedBars', bar: 5, ohm: 0.0002, by: 'copper' }];

/** Against finite elements and the trade: tests/reference. */
describe('steel strip over a shorted slot', () => {
  it('pulls less the higher it is held, and never without bound', () => {
    const point = createArmatureSolver(WAVE_23).solve(BRIDGE, drive({ rotationRad: Math.PI }));
    const heights = [0, 1e-5, 1e-4, 3e-4, 5e-4, 8e-4, 1.5e-3, 3e-3, 6e-3, 0.02, 0.1];
    const pulls = heights.map((h) => point.strip(180, h).meanN);
    for (let k = 1; k < pulls.length; k++) expect(pulls[k]!).toBeLessThanOrEqual(pulls[k - 1]!);
    expect(pulls[0]).toBeLessThan(20);
    expect(pulls.at(-1)).toBeLessThan(1e-4);
  });

  it('shakes at twice mains frequency about as hard as it is pulled, with one current in phase', () => {
    const f = createArmatureSolver(LAP_24)
      .solve(BRIDGE, drive({ rotationRad: Math.PI - 2 * (Math.PI / 6) }))
      .strip(180, 5e-4);
    expect(f.meanN).toBeGreaterThan(1);
    expect(f.alternatingN / f.meanN).toBeGreaterThan(0.9);
    expect(f.alternatingN / f.meanN).toBeLessThanOrEqual(1);
  });
});
