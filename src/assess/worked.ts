import type { Entry } from '../attempt/entry.ts';
import type { SheetLine, TestKind, Verdict } from '../bench/paper.ts';
import { acts, type Film } from './film.ts';
import { groundPass, neighbourPass, type Pass, spacedPass, stripPass } from './passes.ts';
import { type LampReading, type Readings, readingsOf } from './readings.ts';

/** A line of the test sheet with the entry that wrote it. */
export interface WrittenLine {
  readonly entry: number;
  readonly line: SheetLine;
}

/** A whole attempt taken apart into what marks are about. */
export interface Worked {
  readonly film: Film;
  readonly tests: readonly TestKind[];
  readonly readings: Readings;
  readonly neighbour: Pass;
  readonly spaced: Pass;
  readonly ground: ReadonlyMap<number, LampReading>;
  /** Slots felt in each zone of the arc. */
  readonly strip: readonly ReadonlySet<number>[];
  readonly sheet: readonly WrittenLine[];
  /** The last verdict written, with its entry. */
  readonly verdict: { readonly entry: number; readonly verdict: Verdict } | null;
  /** First entry that put power on the bench, or null. */
  readonly firstPower: Entry | null;
}

function lastVerdict(film: Film): Worked['verdict'] {
  const written = acts(film, 'verdict.write').at(-1);
  return written === undefined ? null : { entry: written.n, verdict: written.action.verdict };
}

export function workedOf(film: Film): Worked {
  const readings = readingsOf(film);
  const { design } = film;
  return {
    film,
    tests: film.scenario.public.tests,
    readings,
    neighbour: neighbourPass(readings.ammeter, design),
    spaced: spacedPass(readings.ammeter, design),
    ground: groundPass(readings.lamp),
    strip: stripPass(readings.strip, design),
    sheet: acts(film, 'sheet.write').map(({ n, action }) => ({ entry: n, line: action.line })),
    verdict: lastVerdict(film),
    firstPower: acts(film, 'selector.turn').find(({ action }) => action.to !== 'off') ?? null,
  };
}
