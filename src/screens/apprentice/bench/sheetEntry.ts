import {
  BRUSHES,
  type BrushIndex,
  type GaugeKind,
  type PartKind,
  RANGES_A,
  type RangeA,
} from '../../../bench/action.ts';
import { isMatTest } from '../../../bench/matTests.ts';
import type { Observation } from '../../../bench/observation.ts';
import { DEFAULT_TEST_VOLT, type SheetLine, type TestKind, type TestVolt } from '../../../bench/paper.ts';
import { partOf } from '../../../bench/places.ts';
import { partOfBrush } from '../../../bench/touched.ts';
import type { AtHand } from './atHand.ts';
import {
  asksPart,
  FIGURES,
  isCounted,
  isFigureTest,
  isLampTest,
  type MatPlace,
  placesOf,
} from './entryKinds.ts';

/** A line of the test sheet while it is being written; numbers are still text. */
export interface EntryDraft {
  readonly test: TestKind;
  /** Part the line is about, where the test serves several. */
  readonly part: PartKind;
  /** Bars from the chalk; empty for a line about the whole part. */
  readonly count: string;
  /** Field brush or holder the line is about; empty: none. */
  readonly at: MatPlace | '';
  readonly reading: string;
  readonly rangeA: RangeA;
  readonly testVolt: TestVolt;
  readonly gauge: GaugeKind | '';
  /** Number of the brush measured, as text; empty: none. */
  readonly brush: `${BrushIndex}` | '';
  readonly lamp: 'lit' | 'dim' | 'dark' | '';
  readonly strip: 'still' | 'pulled' | 'buzzing' | '';
  readonly remark: string;
}

export const EMPTY_DRAFT: EntryDraft = {
  test: 'neighbour',
  part: 'armature',
  count: '',
  at: '',
  reading: '',
  rangeA: RANGES_A[RANGES_A.length - 1]!,
  testVolt: DEFAULT_TEST_VOLT,
  gauge: '',
  brush: '',
  lamp: '',
  strip: '',
  remark: '',
};

/** The draft for another test, part or gauge: what no longer fits is emptied. */
export function changed(draft: EntryDraft, part: Partial<EntryDraft>): EntryDraft {
  const next = { ...draft, ...part };
  const places = placesOf(next);
  const kept = places.find((place) => place === next.at);
  return { ...next, at: kept ?? '', brush: next.gauge === 'brushLength' ? next.brush : '' };
}

/** The draft once its line is written: the same test, ready for the next place. */
export function cleared(draft: EntryDraft): EntryDraft {
  return { ...draft, reading: '', lamp: '', strip: '', remark: '' };
}

/** Carries what is known at the bench into a draft, keeping what the learner typed. */
export function prefill(draft: EntryDraft, at: AtHand, seen: Observation): EntryDraft {
  return {
    ...draft,
    test: at.test,
    part: at.part ?? 'armature',
    count: at.count === null ? '' : String(at.count),
    rangeA: seen.rangeA,
    at: at.place ?? '',
    testVolt: at.testVolt ?? draft.testVolt,
    gauge: at.gauge ?? '',
    brush: at.brush === undefined ? '' : `${at.brush}`,
  };
}

/** A draft as a line of the sheet, or what keeps it from being one. */
export type Written =
  | { readonly ok: true; readonly line: SheetLine }
  | { readonly ok: false; readonly sentence: string };

/** Nothing typed is refused for being unlikely: what is no number is kept as a remark. */
export function toLine(draft: EntryDraft): Written {
  const sentence = placeProblem(draft);
  if (sentence !== null) return { ok: false, sentence };
  const results = resultPart(draft);
  const remark = [results.remark, draft.remark.trim()].filter((part) => part).join('; ');
  if (Object.keys(results.line).length === 0 && !remark)
    return { ok: false, sentence: 'Write what you saw before writing the line.' };
  const line: SheetLine = {
    ...{ test: draft.test, count: countOf(draft) },
    ...aboutPart(draft),
    ...results.line,
    ...(remark ? { remark } : {}),
  };
  return { ok: true, line };
}

function countOf(draft: EntryDraft): number | null {
  return isCounted(draft) && draft.count.trim() !== '' ? Number(draft.count) : null;
}

/** What is missing for the line to have a place, in one sentence, or null. */
function placeProblem(draft: EntryDraft): string | null {
  const count = countOf(draft);
  if (count !== null && !(Number.isInteger(count) && count >= 0)) {
    return `The place is counted in whole bars from the chalk, 0 upwards; “${draft.count}” is not.`;
  }
  if (placesOf(draft).length > 0 && draft.at === '')
    return 'Say which brush or holder the line is about: none is chosen.';
  if (draft.test !== 'gauges') return null;
  if (draft.gauge === '') return 'Say which gauge was read: none is chosen.';
  return draft.gauge === 'brushLength' && draft.brush === ''
    ? 'Say which brush was measured: none is chosen.'
    : null;
}

/** Part, brush or holder, gauge and test voltage of a line; an armature goes without saying. */
function aboutPart(draft: EntryDraft): Partial<SheetLine> {
  if (draft.test === 'gauges') return gaugePart(draft);
  const at = placesOf(draft).find((place) => place === draft.at);
  const part = isMatTest(draft.test) && at ? partOf(at)! : asksPart(draft.test) ? draft.part : 'armature';
  return {
    ...(part === 'armature' ? {} : { part }),
    ...(at ? { at } : {}),
    ...(draft.test === 'megohm' ? { testVolt: draft.testVolt } : {}),
  };
}

function gaugePart({ gauge, brush }: EntryDraft): Partial<SheetLine> {
  if (gauge === '') return {};
  const measured = BRUSHES.find((one) => `${one}` === brush);
  return measured === undefined ? { gauge } : { part: partOfBrush(measured), gauge, brush: measured };
}

type Result = { readonly line: Partial<SheetLine>; readonly remark?: string };

function resultPart(draft: EntryDraft): Result {
  if (draft.test === 'spaced' || draft.test === 'neighbour') return readingPart(draft);
  if (isLampTest(draft.test)) return { line: draft.lamp ? { lamp: draft.lamp } : {} };
  if (draft.test === 'strip') return { line: draft.strip ? { strip: draft.strip } : {} };
  return figurePart(draft);
}

/** A figure read on a tool of the rail; “over” stands for a tester beyond its scale. */
function figurePart({ test, reading }: EntryDraft): Result {
  const typed = reading.trim();
  if (!isFigureTest(test) || typed === '') return { line: {} };
  const { field } = FIGURES[test];
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

/** The line that stands for each count in one test: the last one written. */
export function standing(lines: readonly SheetLine[], test: TestKind): ReadonlyMap<number | null, SheetLine> {
  const latest = new Map<number | null, SheetLine>();
  for (const line of lines) if (line.test === test) latest.set(line.count, line);
  return latest;
}
