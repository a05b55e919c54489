import { RANGES_A, type RangeA } from '../../../bench/action.ts';
import { barAt, type CommutatorGeometry } from '../../../bench/geometry.ts';
import type { Observation } from '../../../bench/observation.ts';
import type { SheetLine, TestKind } from '../../../bench/paper.ts';
import { barOf, type Place } from '../../../bench/places.ts';
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
}

export const EMPTY_DRAFT: EntryDraft = {
  test: 'neighbour',
  count: '',
  reading: '',
  rangeA: RANGES_A[RANGES_A.length - 1]!,
  lamp: '',
  strip: '',
  remark: '',
};

/** Which test is under way, and at which bar counted from the chalk, as far as anyone standing there can tell. */
export interface AtHand {
  readonly test: TestKind;
  readonly count: number | null;
}

/**
 * Reads test and bar off what is in sight: the bars under the probes, the bar in line with the strip, what the lens
 * is on. @returns null when nothing is being tested
 */
export function atHand(seen: Observation, geometry: CommutatorGeometry): AtHand | null {
  const count = (bar: number) => countFromChalk(bar, seen.chalkedBar, geometry.bars);
  const meter = barsUnder(seen, 'ammeter.1', 'ammeter.2');
  if (meter) return meterTest(meter, geometry.bars, count);
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
  const line: SheetLine = { test: draft.test, count, ...results.line, ...(remark ? { remark } : {}) };
  if (Object.keys(line).length === 2)
    return { ok: false, sentence: 'Write what you saw before writing the line.' };
  return { ok: true, line };
}

type Result = { readonly line: Partial<SheetLine>; readonly remark?: string };

function resultPart(draft: EntryDraft): Result {
  if (draft.test === 'spaced' || draft.test === 'neighbour') return readingPart(draft);
  if (draft.test === 'ground') return { line: draft.lamp ? { lamp: draft.lamp } : {} };
  if (draft.test === 'strip') return { line: draft.strip ? { strip: draft.strip } : {} };
  return { line: {} };
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
