import type { BrushIndex, GaugeKind } from '../../bench/action.ts';
import type { SheetLine } from '../../bench/paper.ts';
import type { FieldPlace, PlatePlace } from '../../bench/places.ts';
import { BRUSH_WORDS } from '../../bench/toolWords.ts';
import { capital, countWords, partWords, spoken, type Vocabulary } from './words.ts';

/** A line of the test sheet in words: where it was read, and what. */

const MAT_PLACES: Readonly<Record<FieldPlace | PlatePlace, string>> = {
  'field:terminal': 'motor terminal',
  'field:brush1': 'field brush 1',
  'field:brush2': 'field brush 2',
  'field:case': 'case',
  'plate:metal': 'bare plate',
  'plate:insulated1': 'insulated holder 1',
  'plate:insulated2': 'insulated holder 2',
  'plate:earthed1': 'grounded holder 1',
  'plate:earthed2': 'grounded holder 2',
};

export function matPlaceWords(place: FieldPlace | PlatePlace, vocabulary: Vocabulary): string {
  return spoken(MAT_PLACES[place], vocabulary);
}

const GAUGES: Readonly<Record<GaugeKind, string>> = {
  diameter: 'commutator diameter',
  runOut: 'commutator run-out',
  undercut: 'depth of the mica',
  brushLength: 'brush length',
};

export function gaugeName(gauge: GaugeKind): string {
  return GAUGES[gauge];
}

/** A brush in a choice or a table. */
export function brushName(brush: BrushIndex, vocabulary: Vocabulary): string {
  return spoken(BRUSH_WORDS[brush]!.replace(/^the /, ''), vocabulary);
}

/** Where a line was read, short enough for the first column of a table. */
export function lineWhere(line: SheetLine, vocabulary: Vocabulary): string {
  if (line.gauge !== undefined) {
    const what = line.brush === undefined ? gaugeName(line.gauge) : brushName(line.brush, vocabulary);
    return capital(what);
  }
  if (line.at !== undefined) return capital(matPlaceWords(line.at, vocabulary));
  if (line.count !== null) return countWords(line.count);
  return line.part === undefined && line.test !== 'megohm'
    ? 'whole part'
    : partWords(line.part ?? 'armature');
}

/** What a line says was read, with its unit; empty where there is only a remark. */
export function lineResult(line: SheetLine): string {
  if (line.readingA !== undefined) return `${line.readingA} A`;
  if (line.megohms !== undefined) return line.megohms === 'over' ? 'beyond the scale' : `${line.megohms} MΩ`;
  if (line.millivolts !== undefined) return `${line.millivolts} mV`;
  if (line.millimetres !== undefined) return `${line.millimetres} mm`;
  return line.lamp ?? line.strip ?? '';
}

/** The range or voltage a figure was read on, or nothing. */
export function lineScale(line: SheetLine): string {
  if (line.rangeA !== undefined) return `on ${line.rangeA} A`;
  return line.testVolt === undefined ? '' : `at ${line.testVolt} V`;
}
