import { describe, expect, it } from 'vitest';
import type { ArmatureFault } from '../../src/engine/parts/armatureFault.ts';
import { checkFault } from '../../src/engine/parts/faultRules.ts';
import { LAP_24, WAVE_23 } from './support/parts.ts';

const paths = (fault: unknown, a = WAVE_23) => checkFault(a, fault as ArmatureFault).map((o) => o.path);

describe('faults an armature cannot have', () => {
  it('names a bar or coil that does not exist, with what was expected and what came', () => {
    expect(checkFault(WAVE_23, { kind: 'groundedBar', bar: 23, ohm: 0.5 })).toEqual([
      { path: 'bar', sentence: 'Expected a bar from 0 to 22 (this armature has 23), but 23 came.' },
    ]);
    expect(paths({ kind: 'openCoil', coil: -1 })).toEqual(['coil']);
    expect(paths({ kind: 'reversedCoil', coil: 2.5 })).toEqual(['coil']);
    expect(paths({ kind: 'riserJoint', bar: 40, form: 'bar', ohm: 'open' })).toEqual(['bar']);
  });

  it('wants resistances, forms and fractions in range', () => {
    expect(paths({ kind: 'bridgedBars', bar: 1, ohm: 0, by: 'copper' })).toEqual(['ohm']);
    expect(paths({ kind: 'bridgedBars', bar: 1, ohm: 1, by: 'brass' })).toEqual(['by']);
    expect(paths({ kind: 'riserJoint', bar: 1, form: 'side', ohm: 'broken' })).toEqual(['form', 'ohm']);
    expect(paths({ kind: 'groundedCoil', coil: 1, fraction: 1.2, ohm: 1 })).toEqual(['fraction']);
    expect(paths({ kind: 'weakInsulation', ohm: 1e5, breakdownV: -1 })).toEqual(['breakdownV']);
    expect(paths({ kind: 'groundedBar', bar: 1, ohm: Number.NaN })).toEqual(['ohm']);
    expect(paths({ kind: 'haunted' })).toEqual(['kind']);
  });

  it('shorts no more turns than a coil has', () => {
    expect(paths({ kind: 'turnShort', coil: 0, turns: 2, ohm: 0.001 })).toEqual(['turns']);
    expect(paths({ kind: 'turnShort', coil: 0, turns: 6, ohm: 0.001 }, LAP_24)).toEqual([]);
  });

  it('lets two coils touch only where they lie above one another, and says which do', () => {
    expect(paths({ kind: 'coilShort', topCoil: 12, bottomCoil: 0, ohm: 0.001 }, LAP_24)).toEqual([]);
    const [wrong] = checkFault(LAP_24, { kind: 'coilShort', topCoil: 12, bottomCoil: 4, ohm: 0.001 });
    expect(wrong?.path).toBe('bottomCoil');
    expect(wrong?.sentence).toContain('slot 6 (0 or 1)');
  });
});
