import type { MatPart } from '../../../bench/action.ts';
import type { SheetLine } from '../../../bench/paper.ts';
import { type Place, partOf } from '../../../bench/places.ts';
import { acts, type Film } from '../../film.ts';
import { isMatTest, joins, MAT_TESTS } from '../../matPasses.ts';
import { type LampReading, type Readings, readingsOf, within } from '../../readings.ts';
import { looksOf } from '../contacts.ts';
import type { Spell } from '../gather.ts';
import type { Source } from '../reading.ts';
import {
  keyOf,
  type MatDrop,
  type MatLamp,
  type MatLooks,
  type MatMegohms,
  type MatReading,
} from './reading.ts';

/** What an attempt learnt about one part on the mat, taken from the film. */

/** Everything read on a part in a spell that ends before a verdict, each thing once; what was read last stands. */
export function matReadings(
  film: Film,
  part: MatPart,
  { from, before }: Spell,
  source: Source,
): MatReading[] {
  const shown = shownReadings(film, part, within(readingsOf(film), from, before));
  const lines = acts(film, 'sheet.write').filter(({ n }) => n > from && n < before);
  const read = source === 'instrument' ? shown : lines.flatMap(({ n, action }) => written(action.line, n));
  return [...new Map(read.map((reading) => [keyOf(reading), reading])).values()];

  function written(line: SheetLine, entry: number): MatReading[] {
    return readingsWritten(
      line,
      part,
      shown.filter((reading) => reading.entry < entry),
    );
  }
}

function shownReadings(film: Film, part: MatPart, readings: Readings): MatReading[] {
  const apartAt = new Map(film.stretches.map(({ since, seen }) => [since, seen.brushesApart] as const));
  const hands = (entry: number) => ({ brushesApart: apartAt.get(entry) ?? false, leanedOn: null });
  const here = (places: readonly [Place, Place]) => places.every((place) => partOf(place) === part);
  const lamp = readings.lamp.filter(
    (one) => one.settled && here(one.places) && isBelieved(film, readings, one),
  );
  return [
    ...lamp.map(({ entry, places, brushesApart, leanedOn, lit }): MatReading => {
      return { kind: 'lamp', entry, places, brushesApart, leanedOn, lit };
    }),
    ...readings.megohm
      .filter(({ settled, places }) => settled && here(places))
      .map(({ entry, places, volt, megohms, over }): MatReading => {
        return { kind: 'megohm', entry, places, ...hands(entry), volt, megohms: over ? 'over' : megohms };
      }),
    ...readings.drop
      .filter(({ places }) => here(places))
      .map(({ entry, places, feed, millivolts }): MatReading => {
        return { kind: 'drop', entry, places, ...hands(entry), feed, millivolts };
      }),
  ];
}

/** A dark result stands only with a proof before it and one after it, LOW all the while; a lit lamp proves itself. */
function isBelieved({ stretches }: Film, { proofs }: Readings, { entry, lit }: LampReading): boolean {
  if (lit) return true;
  const before = proofs.findLast((proof) => proof.entry < entry);
  const after = proofs.find((proof) => proof.entry > entry);
  if (before === undefined || after === undefined) return false;
  return stretches
    .filter(({ since }) => since >= before.entry && since <= after.entry)
    .every(({ seen }) => seen.supply === 'on' && seen.selector === 'low');
}

/**
 * What was written, put in place of what had been shown where it was read. A line that gives one result where leaning
 * or touching brushes changed it is about the one that agrees; with a remark beside it, about both.
 */
function readingsWritten(line: SheetLine, part: MatPart, shown: readonly MatReading[]): MatReading[] {
  const { test, at } = line;
  if (isMatTest(test) && MAT_TESTS[test].part === part) {
    if (at === undefined || line.lamp === undefined) return [];
    return lampWritten(
      line,
      shown.filter((one) => one.kind === 'lamp' && joins(one.places, MAT_TESTS[test].from, at)),
    );
  }
  const about = line.part ?? (at === undefined ? null : partOf(at));
  if (about !== part) return [];
  const last = shown.findLast(
    ({ kind, places }) =>
      kind === (test === 'millivolt' ? 'drop' : test) && (at === undefined || places.includes(at)),
  );
  if (last?.kind === 'megohm' && line.megohms !== undefined)
    return [{ ...last, megohms: line.megohms, volt: line.testVolt ?? last.volt }];
  if (last?.kind === 'drop' && line.millivolts !== undefined)
    return [{ ...last, millivolts: line.millivolts }];
  return [];
}

function lampWritten({ lamp, remark }: SheetLine, shown: readonly MatReading[]): MatReading[] {
  const lit = lamp !== 'dark';
  const agree = shown.filter((one) => one.kind === 'lamp' && one.lit === lit);
  if (agree.length === 0) return shown.map((one) => ({ ...one, lit }) as MatReading);
  return remark === undefined ? agree : [...shown];
}

/** What the lens showed where it was looked before an entry; at its first look, before any work. */
export function matLooks({ stretches }: Film, part: MatPart, { from, before }: Spell): MatLooks {
  const looks = looksOf(stretches.filter(({ since }) => since >= from && since < before));
  return new Map(looks.filter(({ place }) => partOf(place) === part).map((look) => [look.place, look]));
}

/** Entries of sheet lines in a spell that say something else than was shown where they were read. */
export function matDiffering(film: Film, part: MatPart, { from, before }: Spell): number[] {
  const shown = shownReadings(film, part, within(readingsOf(film), from, before));
  return acts(film, 'sheet.write').flatMap(({ n, action: { line } }) => {
    if (n <= from || n >= before) return [];
    const read = shown.filter(({ entry }) => entry < n);
    const differs = readingsWritten(line, part, read).some(
      (one) => !read.some((other) => agrees(one, other)),
    );
    return differs ? [n] : [];
  });
}

/** Figures written further than this from those shown are other readings, share. */
const OFF = 0.05;

function agrees(one: MatReading, other: MatReading): boolean {
  if (one.entry !== other.entry || one.kind !== other.kind) return false;
  if (one.kind === 'lamp') return one.lit === (other as MatLamp).lit;
  return one.kind === 'megohm'
    ? isNear(one.megohms, (other as MatMegohms).megohms)
    : isNear(one.millivolts, (other as MatDrop).millivolts);
}

function isNear(one: number | 'over', other: number | 'over'): boolean {
  if (one === 'over' || other === 'over') return one === other;
  return Math.abs(one - other) <= OFF * Math.abs(other);
}
