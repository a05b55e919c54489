import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { potentials, type Resistor, resistanceBetween } from '../../../src/engine/circuit/resistors.ts';

/** Coils of a winding as resistors, coil i from bar i to bar i + pitch; `replace` changes or removes single coils. */
function ring(
  bars: number,
  pitch: number,
  replace: ReadonlyMap<number, number | null> = new Map(),
): Resistor[] {
  return Array.from({ length: bars }, (_, i) => ({ a: `${i}`, b: `${(i + pitch) % bars}`, i })).flatMap(
    (r) => {
      const ohm = replace.has(r.i) ? replace.get(r.i)! : 1;
      return ohm === null ? [] : [{ a: r.a, b: r.b, ohm }];
    },
  );
}

const neighbours = (resistors: readonly Resistor[], bars: number) =>
  Array.from({ length: bars }, (_, i) => resistanceBetween(resistors, `${i}`, `${(i + 1) % bars}`)!);

const HARD_SHORT = 1e-12;

describe('exact bar-to-bar resistances (references B01-B09, solved there by two methods)', () => {
  it('B01: a sound lap winding of 24 coils gives 23/24 everywhere', () => {
    for (const r of neighbours(ring(24, 1), 24)) expect(r).toBeCloseTo(0.958333, 6);
  });

  it('B02: an open coil gives 23 at its own pair and exactly 1 elsewhere', () => {
    const r = neighbours(ring(24, 1, new Map([[0, null]])), 24);
    expect(r[0]).toBeCloseTo(23, 10);
    for (const other of r.slice(1)) expect(other).toBeCloseTo(1, 12);
  });

  it('B03: a dead-shorted coil gives 0 and 22/23', () => {
    const r = neighbours(ring(24, 1, new Map([[0, HARD_SHORT]])), 24);
    expect(r[0]).toBeCloseTo(0, 9);
    for (const other of r.slice(1)) expect(other).toBeCloseTo(0.956522, 6);
  });

  it('B04: a half-shorted coil gives 0.489362 and 0.957447', () => {
    const r = neighbours(ring(24, 1, new Map([[0, 0.5]])), 24);
    expect(r[0]).toBeCloseTo(0.489362, 6);
    for (const other of r.slice(1)) expect(other).toBeCloseTo(0.957447, 6);
  });

  it('B06: a sound wave winding of 25 coils, 4 poles, gives 1.84 everywhere', () => {
    for (const r of neighbours(ring(25, 13), 25)) expect(r).toBeCloseTo(1.84, 10);
  });

  it('B07: with a coil open two pairs give 23, the others 2', () => {
    const r = neighbours(ring(25, 13, new Map([[0, null]])), 25);
    const high = r.flatMap((x, i) => (x > 10 ? [i] : []));
    expect(high).toEqual([0, 12]);
    r.forEach((x, i) => {
      expect(x).toBeCloseTo(high.includes(i) ? 23 : 2, 10);
    });
  });

  it('B09: with bars 0-1 bridged, 0, twice 1.456522 and 22 times 1.826087', () => {
    const r = neighbours([...ring(25, 13), { a: '0', b: '1', ohm: HARD_SHORT }], 25);
    expect(r[0]).toBeCloseTo(0, 9);
    expect(r[12]).toBeCloseTo(1.456522, 6);
    expect(r[13]).toBeCloseTo(1.456522, 6);
    const rest = r.filter((_, i) => ![0, 12, 13].includes(i));
    expect(rest).toHaveLength(22);
    for (const other of rest) expect(other).toBeCloseTo(1.826087, 6);
  });
});

describe('potentials', () => {
  it('B12: fed at opposite bars, an open coil takes the whole feed and its half shows nothing else', () => {
    const at = potentials(ring(24, 1, new Map([[3, null]])), '0', '12', 1)!;
    const drop = (i: number) => Math.abs(at.get(`${i}`)! - at.get(`${(i + 1) % 24}`)!);
    expect(drop(3)).toBeCloseTo(12, 10);
    for (const i of [0, 1, 2, 4, 5, 11]) expect(drop(i)).toBeCloseTo(0, 10);
    for (let i = 12; i < 24; i += 1) expect(drop(i)).toBeCloseTo(1, 10);
  });

  it('obey the current law at every inner node of random networks', () => {
    const network = fc.array(
      fc.record({
        a: fc.integer({ min: 0, max: 8 }).map(String),
        b: fc.integer({ min: 0, max: 8 }).map(String),
        ohm: fc.double({ min: 1e-3, max: 1e8, noNaN: true }),
      }),
      { minLength: 4, maxLength: 25 },
    );
    fc.assert(
      fc.property(network, (resistors) => {
        const at = potentials(resistors, '0', '1', 2);
        const r = resistanceBetween(resistors, '0', '1');
        expect(at === null).toBe(r === null);
        if (at === null || r === null) return;
        expect(at.get('0')! / (2 * r)).toBeCloseTo(1, 9);
        for (let n = 0; n <= 8; n += 1) {
          const here = at.get(`${n}`);
          if (here === undefined) continue;
          const flows = resistors.flatMap(({ a, b, ohm }) =>
            a === b
              ? []
              : a === `${n}`
                ? [(here - at.get(b)!) / ohm]
                : b === `${n}`
                  ? [(here - at.get(a)!) / ohm]
                  : [],
          );
          const expected = n === 0 ? 2 : n === 1 ? -2 : 0;
          const scale = flows.reduce((m, x) => Math.max(m, Math.abs(x)), 1e-12);
          // The current law subtracts potentials that are nearly equal: digits lost in the check, not in the network.
          const rounding = resistors.reduce((m, x) => Math.max(m, (1e-15 * Math.abs(2 * r)) / x.ohm), 0) * 30;
          expect(Math.abs(flows.reduce((sum, x) => sum + x, 0) - expected)).toBeLessThan(
            1e-9 * scale + rounding,
          );
        }
      }),
    );
  });
});

describe('what is not joined', () => {
  it('has no resistance to read and no potential', () => {
    const apart: Resistor[] = [
      { a: 'p', b: 'q', ohm: 1 },
      { a: 'x', b: 'y', ohm: 1 },
    ];
    expect(resistanceBetween(apart, 'p', 'x')).toBeNull();
    expect(resistanceBetween(apart, 'p', 'nowhere')).toBeNull();
    expect(resistanceBetween(apart, 'p', 'p')).toBe(0);
    expect([...potentials(apart, 'p', 'q', 3)!.keys()].sort()).toEqual(['p', 'q']);
  });

  it('costs no digits beside milliohms: 1 mohm in series with nothing, 200 Mohm across it', () => {
    const r = resistanceBetween(
      [
        { a: 'p', b: 'm', ohm: 1e-3 },
        { a: 'm', b: 'q', ohm: 1e-3 },
        { a: 'm', b: 'case', ohm: 2e8 },
        { a: 'q', b: 'case', ohm: 2e8 },
      ],
      'p',
      'q',
    )!;
    expect(r / 2e-3).toBeCloseTo(1, 11);
  });
});
