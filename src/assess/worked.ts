import type { Condition } from '../attempt/condition.ts';
import type { Entry } from '../attempt/entry.ts';
import type { PartKind } from '../bench/action.ts';
import type { SheetLine, TestKind, Verdict } from '../bench/paper.ts';
import { partOf } from '../bench/places.ts';
import { partOfBrush } from '../bench/touched.ts';
import { PART_OF_TEST } from '../scenario/checkParts.ts';
import { conditionsOf, type Remedied, remediesOf } from './conditions.ts';
import { acts, type Film } from './film.ts';
import { groundPass, neighbourPass, type Pass, spacedPass, stripPass } from './passes.ts';
import { type LampReading, type Readings, readingsOf, within } from './readings.ts';

/** A line of the test sheet with the entry that wrote it, and the part it is about. */
export interface WrittenLine {
  readonly entry: number;
  readonly line: SheetLine;
  readonly part: PartKind;
}

export interface WrittenVerdict {
  readonly entry: number;
  readonly verdict: Verdict;
}

/** A whole attempt taken apart into what marks are about. */
export interface Worked {
  readonly film: Film;
  readonly parts: readonly PartKind[];
  readonly tests: readonly TestKind[];
  readonly readings: Readings;
  /** Fullest passes over the armature between one remedy and the next: after a remedy it is another part. */
  readonly neighbour: Pass;
  readonly spaced: Pass;
  readonly ground: ReadonlyMap<number, LampReading>;
  /** Slots felt in each zone of the arc. */
  readonly strip: readonly ReadonlySet<number>[];
  readonly sheet: readonly WrittenLine[];
  /** The last verdict written on each part. */
  readonly verdicts: ReadonlyMap<PartKind, WrittenVerdict>;
  readonly remedies: readonly Remedied[];
  /** What was the matter before the first act, then after each entry. */
  readonly conditions: readonly Condition[];
  /** First entry that put power on the bench, or null. */
  readonly firstPower: Entry | null;
}

function lastVerdicts(film: Film): Worked['verdicts'] {
  return new Map(
    acts(film, 'verdict.write').map(({ n, action }) => [
      action.verdict.part,
      { entry: n, verdict: action.verdict },
    ]),
  );
}

/** The part a line is about: as it says, or by what it names, or the only one it can be about. */
function lineAbout(line: SheetLine, parts: readonly PartKind[]): PartKind {
  const named = line.part ?? (line.at === undefined ? undefined : (partOf(line.at) ?? undefined));
  const gauged = line.brush === undefined ? undefined : partOfBrush(line.brush);
  return named ?? gauged ?? PART_OF_TEST[line.test] ?? (parts.length === 1 ? parts[0]! : 'armature');
}

/** Spells of the armature with no remedy in them, as entries: from the first, and before the second. */
function spells(remedies: readonly Remedied[]): (readonly [from: number, before: number])[] {
  const cuts = remedies.filter(({ part }) => part === 'armature').map(({ entry }) => entry);
  const ends = [...cuts, Number.POSITIVE_INFINITY];
  return ends.map((before, nth) => [cuts[nth - 1] ?? -1, before]);
}

function fullest<T>(list: readonly T[], size: (one: T) => number): T {
  return list.reduce((best, one) => (size(one) > size(best) ? one : best));
}

export function workedOf(film: Film): Worked {
  const readings = readingsOf(film);
  const { design } = film;
  const { tests, parts } = film.scenario.public;
  const remedies = remediesOf(film);
  const spell = spells(remedies).map(([from, before]) => within(readings, from, before));
  const pass = (of: (readings: Readings) => Pass) => fullest(spell.map(of), (one) => one.readings.length);
  return {
    film,
    parts,
    tests,
    readings,
    neighbour: pass(({ ammeter }) => neighbourPass(ammeter, design)),
    spaced: pass(({ ammeter }) => spacedPass(ammeter, design)),
    ground: fullest(
      spell.map(({ lamp }) => groundPass(lamp)),
      (tested) => tested.size,
    ),
    strip: fullest(
      spell.map(({ strip }) => stripPass(strip, design)),
      (zones) => zones.reduce((sum, zone) => sum + zone.size, 0),
    ),
    sheet: acts(film, 'sheet.write').map(({ n, action: { line } }) => ({
      entry: n,
      line,
      part: lineAbout(line, parts),
    })),
    verdicts: lastVerdicts(film),
    remedies,
    conditions: conditionsOf(film),
    firstPower: acts(film, 'selector.turn').find(({ action }) => action.to !== 'off') ?? null,
  };
}
