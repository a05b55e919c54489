import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { benchLamp, glow, steadyFilament } from '../../../src/engine/instruments/lamp.ts';
import {
  type FieldFrameFault,
  type FieldNode,
  fieldCoilDrops,
  fieldFrameResistance,
} from '../../../src/engine/parts/fieldFrame.ts';
import {
  ALL_IN_SERIES,
  FIELD_FRAMES,
  SERIES_AND_SHUNT,
  SHUNT_STILL_EARTHED,
  TWO_BRANCHES,
} from '../../../src/engine/parts/fieldFrameDesigns.ts';

const APART = { brushesTouching: false, peakV: 325 };
const TOUCHING = { brushesTouching: true, peakV: 325 };

/** What the lamp of the bench shows between two places of a frame: all through the computed filament. */
function lamp(
  faults: readonly FieldFrameFault[],
  a: FieldNode,
  b: FieldNode,
  how = APART,
  design = TWO_BRANCHES,
): number {
  const ohm = fieldFrameResistance(design, faults, a, b, how);
  const path = ohm === null ? null : { re: ohm, im: 0 };
  return glow(steadyFilament(benchLamp(230), { volt: 230, path }));
}

const continuity = (faults: readonly FieldFrameFault[], how = APART) => [
  lamp(faults, 'field:terminal', 'field:brush1', how),
  lamp(faults, 'field:terminal', 'field:brush2', how),
];
const insulation = (faults: readonly FieldFrameFault[]) => [
  lamp(faults, 'field:case', 'field:brush1'),
  lamp(faults, 'field:case', 'field:brush2'),
];

describe('a sound frame of two branches', () => {
  it('lights from the terminal to both brushes and stays dark to the case (common practice, no source)', () => {
    expect(continuity([])).toEqual([8, 8]);
    expect(insulation([])).toEqual([0, 0]);
  });

  it('has the resistance of two coils and a joint in each branch', () => {
    const ohm = fieldFrameResistance(TWO_BRANCHES, [], 'field:terminal', 'field:brush1', APART)!;
    expect(ohm).toBeCloseTo(2 * 1.2e-3 + 0.3e-3, 9);
  });
});

describe('faults of the frame', () => {
  it('an open coil darkens its own branch only', () => {
    for (const coil of [0, 1])
      expect(continuity([{ kind: 'openCoil', coil }]).map((g) => g > 0)).toEqual([false, true]);
    for (const coil of [2, 3])
      expect(continuity([{ kind: 'openCoil', coil }]).map((g) => g > 0)).toEqual([true, false]);
  });

  it('a broken brush joint darkens its brush; a bad one of an ohm shows nothing', () => {
    expect(continuity([{ kind: 'brushJoint', brush: 2, ohm: 'open' }])).toEqual([8, 0]);
    expect(continuity([{ kind: 'brushJoint', brush: 2, ohm: 1 }])).toEqual([8, 8]);
  });

  it('brushes that touch hide an open branch', () => {
    expect(continuity([{ kind: 'openCoil', coil: 1 }], TOUCHING)).toEqual([8, 8]);
  });

  it('a grounded coil lights from the case to both brushes, joined as they are through the terminal', () => {
    const faults: FieldFrameFault[] = [{ kind: 'groundedCoil', coil: 3, fraction: 0.5, ohm: 0.5 }];
    expect(insulation(faults)).toEqual([8, 8]);
    expect(continuity(faults)).toEqual([8, 8]);
  });

  it('a coil both open and grounded lights from the case to one brush only', () => {
    const faults: FieldFrameFault[] = [
      { kind: 'openCoil', coil: 3 },
      { kind: 'groundedCoil', coil: 3, fraction: 0.5, ohm: 0.5 },
    ];
    expect(insulation(faults).map((g) => g > 0)).toEqual([true, false]);
  });

  it('weak insulation of 100 kohm stays dark; above its breakdown voltage it lights', () => {
    const weak = (breakdownV: number | null): FieldFrameFault => ({
      kind: 'weakInsulation',
      coil: 0,
      ohm: 100e3,
      breakdownV,
    });
    expect(insulation([weak(null)])).toEqual([0, 0]);
    expect(insulation([weak(400)])).toEqual([0, 0]);
    expect(insulation([weak(300)]).every((g) => g > 0)).toBe(true);
    const ohm = fieldFrameResistance(TWO_BRANCHES, [weak(null)], 'field:case', 'field:brush1', APART)!;
    expect(ohm / 1e5).toBeCloseTo(1, 2);
  });

  it('shorted turns leave every lamp test as it was, and the millivolt drop finds the coil', () => {
    const faults: FieldFrameFault[] = [{ kind: 'shortedTurns', coil: 2, share: 0.5, ohm: 1e-6 }];
    expect([continuity(faults), insulation(faults)]).toEqual([continuity([]), insulation([])]);
    const drops = fieldCoilDrops(TWO_BRANCHES, faults, 2, 10, APART) as number[];
    expect(drops[3]).toBeCloseTo(12e-3, 6);
    expect(drops[2]! / drops[3]!).toBeCloseTo(0.5, 2);
    expect(drops[0]).toBeCloseTo(0, 6);
  });

  it('has no path and feeds nothing through an open branch', () => {
    const resistance = fieldFrameResistance(
      TWO_BRANCHES,
      [{ kind: 'openCoil', coil: 1 }],
      'field:terminal',
      'field:brush1',
      APART,
    );
    expect(resistance).toBeNull();
    expect(
      fieldCoilDrops(TWO_BRANCHES, [{ kind: 'brushJoint', brush: 1, ohm: 'open' }], 1, 10, APART),
    ).toEqual([]);
  });
});

describe('other connections, as data', () => {
  it('all in series: one open coil darkens both brushes', () => {
    const faults: FieldFrameFault[] = [{ kind: 'openCoil', coil: 2 }];
    const lit = (brush: FieldNode, f: readonly FieldFrameFault[]) =>
      lamp(f, 'field:terminal', brush, APART, ALL_IN_SERIES) > 0;
    expect([lit('field:brush1', []), lit('field:brush2', [])]).toEqual([true, true]);
    expect([lit('field:brush1', faults), lit('field:brush2', faults)]).toEqual([false, false]);
  });

  it('a shunt coil left on its earth lights between case and brush on a sound frame; undone, it does not', () => {
    expect(lamp([], 'field:case', 'field:brush1', APART, SERIES_AND_SHUNT)).toBe(0);
    expect(lamp([], 'field:case', 'field:brush1', APART, SHUNT_STILL_EARTHED)).toBe(8);
  });

  it('every design is sound without faults: all coils fed, no number that is not one', () => {
    for (const design of FIELD_FRAMES) {
      for (const brush of [1, 2] as const) {
        const drops = fieldCoilDrops(design, [], brush, 10, APART);
        expect(drops).toHaveLength(design.coils.length);
        for (const drop of drops) expect(Number.isFinite(drop)).toBe(true);
      }
    }
  });
});

it('gives a finite resistance or none for any faults, the same from either side', () => {
  const coil = fc.integer({ min: 0, max: 3 });
  const ohm = fc.double({ min: 1e-4, max: 5e6, noNaN: true });
  const share = fc.double({ min: 0, max: 1, noNaN: true });
  const fault: fc.Arbitrary<FieldFrameFault> = fc.oneof(
    fc.record({ kind: fc.constant('openCoil' as const), coil }),
    fc.record({
      kind: fc.constant('brushJoint' as const),
      brush: fc.constantFrom<1 | 2>(1, 2),
      ohm: fc.oneof(ohm, fc.constant('open' as const)),
    }),
    fc.record({ kind: fc.constant('groundedCoil' as const), coil, fraction: share, ohm }),
    fc.record({
      kind: fc.constant('weakInsulation' as const),
      coil,
      ohm,
      breakdownV: fc.constantFrom(null, 200),
    }),
    fc.record({ kind: fc.constant('shortedTurns' as const), coil, share, ohm }),
  );
  const nodes: FieldNode[] = ['field:terminal', 'field:brush1', 'field:brush2', 'field:case'];
  fc.assert(
    fc.property(
      fc.array(fault, { maxLength: 4 }),
      fc.constantFrom(...nodes),
      fc.constantFrom(...nodes),
      fc.constantFrom(...FIELD_FRAMES),
      (faults, a, b, design) => {
        const there = fieldFrameResistance(design, faults, a, b, APART);
        const back = fieldFrameResistance(design, faults, b, a, APART);
        expect(there === null).toBe(back === null);
        if (there === null || back === null) return;
        expect(Number.isFinite(there)).toBe(true);
        expect(there).toBeGreaterThanOrEqual(0);
        if (there > 0) expect(back / there).toBeCloseTo(1, 9);
      },
    ),
  );
});
