import type { Dictionary } from './dictionary.ts';
import { CASES, needleLikelihoods } from './needles.ts';
import type { MeterReading } from './reading.ts';

/** Likelihood of an ammeter reading for every suspect in every case, count × CASES. */
export function meterLikelihoods(dictionary: Dictionary, reading: MeterReading): Float64Array {
  const standing = dictionary.standing(reading.rotationDeg);
  const table = dictionary.needles(reading, standing);
  const there = needleLikelihoods(table, reading);
  const numbers = dictionary.turnedBackSuspects(standing);
  const here = new Float64Array(there.length);
  for (let k = 0; k < numbers.length; k++) {
    const from = numbers[k]! * CASES;
    const to = k * CASES;
    for (let c = 0; c < CASES; c++) here[to + c] = there[from + c]!;
  }
  return here;
}
