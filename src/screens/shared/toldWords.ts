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
  if (sound.lamp !== shown.lamp || sound.remark !== shown.remark) return true;
  if (typeof sound.megohms === 'number' || sound.megohms === 'over')
    return typeof shown.megohms === 'number' && shown.megohms < LEAST_MEGOHMS;
  const [one, other] = [sound.millivolts ?? sound.millimetres, shown.millivolts ?? shown.millimetres];
  return one !== undefined && other !== undefined && Math.abs(one - other) > ALIKE * Math.abs(one);
}
/** The usual least insulation, megohms (references A07). */
const LEAST_MEGOHMS = 1;
/** What differs by less than this share is alike. Ours. */
const ALIKE = 0.05;
