import { describe, expect, it } from 'vitest';
import { checkWinding } from '../../src/engine/armatureBench.ts';
import { S30_C60, S60_C60 } from './designs.ts';
import { median, ONCE, timed } from './measure.ts';
import { speedReport } from './suite.ts';
import { duration, ratioLines, rowLine } from './table.ts';

/** That the measurement runs and says what it measured. How fast anything is, only `npm run speed` tells. */
describe('speed measurement', () => {
  it('runs through and has a row of every kind, at the same operating point as the witness', async () => {
    const told: string[] = [];
    const report = await speedReport({
      effort: ONCE,
      sweeps: { few: 1, many: 3 },
      acts: 60,
      told: (row) => told.push(row.id),
    });
    expect(report.rows.map((row) => row.id)).toEqual(told);
    const kinds = new Set(told.map((id) => id.split('-')[0]));
    expect([...kinds].sort()).toEqual(
      [
        'dictionary',
        'drop',
        'evidence',
        'next',
        'pair',
        'pairs',
        'point',
        'replay',
        'strip',
        'witness',
      ].sort(),
    );
    expect(report.ratios).toHaveLength(5);
    for (const { apart } of report.ratios) expect(apart).toBeLessThan(1e-6);
    for (const row of report.rows) expect(rowLine(row)).toContain(row.what);
    expect(ratioLines(report.ratios).join('\n')).toContain('lap-28');
  });

  it('takes medians, and as many runs a sample as it takes to be long enough', async () => {
    expect(median([3, 1, 2])).toBe(2);
    expect(median([4, 1, 2, 3])).toBe(2.5);
    let runs = 0;
    const timing = await timed({ warmUpMs: 5, forMs: 0, samples: 3, sampleMs: 1 }, () => {
      runs++;
    });
    expect(timing.samples).toBe(3);
    expect(timing.runsEach).toBeGreaterThan(10);
    expect(runs).toBeGreaterThan(3 * timing.runsEach);
  });

  it('measures armatures of 60 bars that can be wound, and writes times in units that fit', () => {
    for (const a of [S30_C60, S60_C60]) expect(checkWinding(a)).toEqual([]);
    expect([2000, 12.34, 0.0123].map(duration)).toEqual(['2.00 s', '12.3 ms', '12.3 µs']);
  });
});
