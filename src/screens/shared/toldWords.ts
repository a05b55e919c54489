import type { SheetLine } from '../../bench/paper.ts';
import { lineResult, lineScale } from './lineWords.ts';

/** What a test shows beside what it shows on a sound part. */

/** The result of a line of the test sheet, in words. */
export function resultWords(line: SheetLine): string {
  const words = [lineResult(line), line.test === 'megohm' ? lineScale(line) : ''].filter((part) => part);
  return [words.join(' '), line.remark].filter((part) => part).join(', ') || 'nothing';
}

/** Whether a test shows anything a sound part does not; lengths and ohms differ a little from part to part. */
export function differs(sound: Partial<SheetLine>, shown: Partial<SheetLine>): boolean {
  if (shown.megohms === undefined) return unlike(sound, shown);
  return shown.megohms !== 'over' && shown.megohms < LEAST_MEGOHMS;
}
/** The usual least insulation, megohms (references A07). */
const LEAST_MEGOHMS = 1;
/** What differs by less than this share is alike. Ours. */
const ALIKE = 0.05;

/** Whether two results of one test tell something different. */
export function unlike(one: Partial<SheetLine>, other: Partial<SheetLine>): boolean {
  if (one.lamp !== other.lamp || one.remark !== other.remark) return true;
  const [a, b] = [figureOf(one), figureOf(other)];
  if (typeof a !== 'number' || typeof b !== 'number') return a !== b;
  return Math.abs(a - b) > ALIKE * Math.max(Math.abs(a), Math.abs(b));
}

function figureOf({ megohms, millivolts, millimetres }: Partial<SheetLine>): number | 'over' | undefined {
  return megohms ?? millivolts ?? millimetres;
}
