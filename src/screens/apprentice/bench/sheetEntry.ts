import { RANGES_A, type RangeA } from '../../../bench/action.ts';
import { barAt, type CommutatorGeometry } from '../../../bench/geometry.ts';
import type { Observation } from '../../../bench/observation.ts';
import type { SheetLine, TestKind } from '../../../bench/paper.ts';
import { barOf, type FieldPlace, type Place, type PlatePlace, partOf } from '../../../bench/places.ts';
import { countFromChalk, spacing, stepsUp } from '../../shared/count.ts';

/** A line of the test sheet while it is being written; numbers are still text. */
export interface EntryDraft {
  readonly test: TestKind;
  /** Bars from the chalk; empty for a line about the whole part. */
  readonly count: string;
  readonly reading: string;
  readonly rangeA: RangeA;
  readonly lamp: 'lit' | 'dim' | 'dark' | '';
  readonly strip: 'still' | 'pulled' | 'buzzing' | '';
  readonly remark: string;
  /** Field brush or holder the line is about; empty: none. */
  readonly at: MatPlace | '';
}

export type MatPlace = FieldPlace | PlatePlace;

/** Where the lamp tests of field frame and brush plate, and the tools' readings, are written down. */
export const PLACES_OF: Readonly<Partial<Record<TestKind, readonly MatPlace[]>>> = {
  fieldContinuity: ['field:brush1', 'field:brush2'],
  fieldInsulation: ['field:brush1', 'field:brush2'],
  plateInsulation: ['plate:insulated1', 'plate:insulated2'],
  plateEarthed: ['plate:earthed1', 'plate:earthed2'],
};

export const EMPTY_DRAFT: EntryDraft = {
  test: 'neighbour',
  count: '',
  reading: '',
  rangeA: RANGES_A[RANGES_A.length - 1]!,
  lamp: '',
  strip: '',
  remark: '',
  at: '',
};

/** Which test is under way, and at which bar counted from the chalk, as far as anyone standing there can tell. */
export interface AtHand {
  readonly test: TestKind;
  readonly count: number | null;
  readonly place?: MatPlace;
}

/**
 * Reads test and bar off what is in sight: the bars under the probes, the bar in line with the strip, what the lens
 * is on. @returns null when nothing is being tested
 */
export function atHand(seen: Observation, geometry: CommutatorGeometry): AtHand | null {
  const count = (bar: number) => countFromChalk(bar, seen.chalkedBar, geometry.bars);
  const meter = barsUnder(seen, 'ammeter.1', 'ammeter.2');
  if (meter) return meterTest(meter, geometry.bars, count);
  const onMat = matTest(seen);
  if (onMat) return onMat;
  const lamp = barUnderLamp(seen);
  if (lamp !== null) return { test: 'ground', count: count(lamp) };
  if (seen.strip.at === 'core' && seen.strip.angleDeg !== null) {
    return { test: 'strip', count: count(barAt(geometry, seen.strip.angleDeg, seen.rotationDeg)) };
  }
  if (!seen.look) return null;
  const looked = barOf(seen.look.place);
  return { test: 'look', count: looked === null ? null : count(looked) };
}

function barsUnder(
  seen: Observation,
  one: 'ammeter.1',
  other: 'ammeter.2',
): readonly [number, number] | null {
  const first = touchedBar(seen.leads[one].touches);
  const second = touchedBar(seen.leads[other].touches);
  return first === null || second === null || first === second ? null : [first, second];
}

function meterTest(
  [first, second]: readonly [number, number],
  bars: number,
  count: (bar: number) => number | null,
): AtHand {
  if (spacing(first, second, bars) > 1) return { test: 'spaced', count: count(first) };
  const lower = stepsUp(first, second, bars) === 1 ? first : second;
  return { test: 'neighbour', count: count(lower) };
}

/** The lamp test whose two places the lamp probes are on. */
function matTest(seen: Observation): AtHand | null {
  const ends = [seen.leads['lamp.1'].touches, seen.leads['lamp.2'].touches];
  for (const [test, places] of Object.entries(PLACES_OF) as [TestKind, readonly MatPlace[]][]) {
    const place = places.find((one) => ends.includes(one));
    if (place && ends.includes(COMMON_PLACE[test]!)) return { test, count: null, place };
  }
  return null;
}

const COMMON_PLACE: Readonly<Partial<Record<TestKind, MatPlace>>> = {
  fieldContinuity: 'field:terminal',
  fieldInsulation: 'field:case',
  plateInsulation: 'plate:metal',
  plateEarthed: 'plate:metal',
};

function barUnderLamp(seen: Observation): number | null {
  const ends = [seen.leads['lamp.1'].touches, seen.leads['lamp.2'].touches];
  const onSteel = ends.some((place) => place === 'shaft' || place === 'core');
  const bar = ends.map(touchedBar).find((found) => found !== null);
  return onSteel && bar !== undefined ? bar : null;
}

function touchedBar(place: Place | null): number | null {
  return place === null ? null : barOf(place);
}

/** Carries what is known at the bench into a draft, keeping what the learner typed. */
export function prefill(draft: EntryDraft, at: AtHand, seen: Observation): EntryDraft {
  return {
    ...draft,
    test: at.test,
    count: at.count === null ? '' : String(at.count),
    rangeA: seen.rangeA,
    at: at.place ?? '',
  };
}

/** A draft as a line of the sheet, or what keeps it from being one. */
export type Written =
  | { readonly ok: true; readonly line: SheetLine }
  | { readonly ok: false; readonly sentence: string };

/** Nothing typed is refused for being unlikely: what is no number is kept as a remark. */
export function toLine(draft: EntryDraft): Written {
  const count = draft.count.trim() === '' ? null : Number(draft.count);
  if (count !== null && !(Number.isInteger(count) && count >= 0)) {
    return {
      ok: false,
      sentence: `The place is counted in whole bars from the chalk, 0 upwards; “${draft.count}” is not.`,
    };
  }
  const results = resultPart(draft);
  const remark = [results.remark, draft.remark.trim()].filter((part) => part).join('; ');
  const places = PLACES_OF[draft.test];
  const place = places?.find((one) => one === draft.at);
  if (places && !place)
    return { ok: false, sentence: 'Say which brush or holder the line is about: none is chosen.' };
  const line: SheetLine = {
    ...{ test: draft.test, count: places ? null : count, ...results.line },
    ...(remark ? { remark } : {}),
    ...(place ? { part: partOf(place)!, at: place } : {}),
  };
  if (Object.keys(results.line).length === 0 && !remark)
    return { ok: false, sentence: 'Write what you saw before writing the line.' };
  return { ok: true, line };
}

type Result = { readonly line: Partial<SheetLine>; readonly remark?: string };

function resultPart(draft: EntryDraft): Result {
  if (draft.test === 'spaced' || draft.test === 'neighbour') return readingPart(draft);
  if (draft.test === 'ground' || PLACES_OF[draft.test])
    return { line: draft.lamp ? { lamp: draft.lamp } : {} };
  if (draft.test === 'strip') return { line: draft.strip ? { strip: draft.strip } : {} };
  return figurePart(draft);
}

const FIGURES: Readonly<Partial<Record<TestKind, 'megohms' | 'millivolts' | 'millimetres'>>> = {
  megohm: 'megohms',
  millivolt: 'millivolts',
  gauges: 'millimetres',
};

/** A figure read on a tool of the rail; “over” stands for a tester beyond its scale. */
function figurePart({ test, reading }: EntryDraft): Result {
  const typed = reading.trim();
  const field = FIGURES[test];
  if (!field || typed === '') return { line: {} };
  if (field === 'megohms' && typed.toLowerCase() === 'over') return { line: { megohms: 'over' } };
  const figure = Number(typed.replace(',', '.'));
  return Number.isFinite(figure)
    ? { line: { [field]: figure } }
    : { line: {}, remark: `reading written as “${typed}”` };
}

function readingPart(draft: EntryDraft): Result {
  const typed = draft.reading.trim();
  if (typed === '') return { line: {} };
  const readingA = Number(typed.replace(',', '.'));
  if (!Number.isFinite(readingA)) return { line: {}, remark: `reading written as “${typed}”` };
  return { line: { readingA, rangeA: draft.rangeA } };
}

/** Why a line looks odd on its face, in one short phrase, or null. It is kept all the same. */
export function doubt(line: SheetLine, bars: number): string | null {
  if (line.count !== null && line.count >= bars) return `only ${bars} bars to count: 0 to ${bars - 1}`;
  if (line.readingA === undefined) return null;
  if (line.readingA < 0) return 'an alternating current has no sign';
  if (line.rangeA !== undefined && line.readingA > line.rangeA)
    return `more than the ${line.rangeA} A scale shows`;
  return null;
}

/** The line that stands for each count in one test: the last one written. */
export function standing(lines: readonly SheetLine[], test: TestKind): ReadonlyMap<number | null, SheetLine> {
  const latest = new Map<number | null, SheetLine>();
  for (const line of lines) if (line.test === test) latest.set(line.count, line);
  return latest;
}
