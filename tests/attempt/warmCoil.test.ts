import { describe, expect, it } from 'vitest';
import { printedA } from '../../src/bench/scale.ts';
import { BenchDriver } from '../support/benchDriver.ts';

describe('coils that warm under the ammeter', () => {
  // The invented bench's own physics, no outside figure: copper gains 0.39 % of its resistance per kelvin.
  it('let the reading creep down, and back up once they have cooled under the same contacts', () => {
    const me = new BenchDriver({ part: 'lap-24' }).placesArmature().switches('high').setsRange(30);
    me.setsProbesAt(-90, -60).waits(4000);
    const reading = () => printedA(me.sees.needle, 30);
    const cold = reading();
    const minutes = [1, 2, 3].map(() => {
      me.waits(60_000);
      return reading();
    });
    expect(minutes[0]!).toBeLessThan(0.97 * cold);
    expect(minutes[1]!).toBeLessThan(minutes[0]!);
    expect(minutes[2]!).toBeLessThanOrEqual(minutes[1]!);
    me.switches('off')
      .waits(60 * 60_000)
      .switches('high')
      .waits(4000);
    expect(reading() / cold).toBeGreaterThan(0.99);
    expect(reading() / cold).toBeLessThan(1.01);
  });

  it('leave heavy strip coils at the same reading for as long as a test takes', () => {
    const me = new BenchDriver({ part: 'wave-23' }).placesArmature().switches('high').setsRange(30);
    me.setsProbesAt(-45, -29).waits(4000);
    const cold = printedA(me.sees.needle, 30);
    expect(printedA(me.waits(10_000).sees.needle, 30) / cold).toBeGreaterThan(0.98);
  });
});
