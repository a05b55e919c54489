import { barAt } from '../../bench/geometry.ts';
import { barZeroDeg } from '../../engine/parts/winding.ts';
import { acts, type Film } from '../film.ts';
import { followReadings, type Moved } from './follow.ts';
import { gatherReadings, readingsFrom } from './gather.ts';
import type { JudgedVerdict } from './judge.ts';
import { type NextReading, nextReadings } from './nextBest.ts';
import { groundOf, judgeRested, restedOf, sourceOf } from './ofAttempt.ts';
import type { Possibility } from './possibilities.ts';
import type { Reading, Source } from './reading.ts';

/** What the readings of an attempt had to say of the armature, as plain data to draw and to tell. */
export interface EvidenceStory {
  readonly from: Source;
  readonly bars: number;
  /** Bar that carried the chalk in the end, or null. */
  readonly chalkedBar: number | null;
  /** The last verdict on the armature, weighed; null when none was written. */
  readonly judged: (Pick<JudgedVerdict, 'judgement' | 'findings'> & { readonly missed: number }) | null;
  /** Kinds of fault, those likeliest in the end first. */
  readonly kinds: readonly KindStory[];
  readonly steps: readonly StoryStep[];
  /** Possibilities at a hundredth or more before anything was read. */
  readonly openBefore: number;
  /** The reading that would tell most after all these, with the share of the doubt it is expected to settle; null: no reading would. */
  readonly next: NextStory | null;
  /** Entries of sheet lines that say something else than the instruments showed. */
  readonly differing: readonly number[];
  /** A remedy was done: readings after it are of another part and left out. */
  readonly endedByRemedy: boolean;
}

/** One kind of fault, from before the first reading to after the last. */
export interface KindStory {
  readonly what: Possibility['what'];
  /** Chance that the part has it somewhere: before anything was read, then after each reading. */
  readonly chances: readonly number[];
  /** Places at which it is possible at a hundredth or more, before and in the end; null for kinds without places. */
  readonly places: readonly [before: number, after: number] | null;
}

export interface StoryStep {
  readonly reading: Reading;
  readonly ruledOut: readonly Moved[];
  readonly raised: readonly Moved[];
  readonly open: number;
  /** By how much it lessened the doubt, bits; below zero where it raised some. */
  readonly settled: number;
}

export interface NextStory extends Pick<NextReading, 'test' | 'angleDeg'> {
  /** Ammeter: the two bars. Strip: the bar in line with it, twice. Lamp: null. */
  readonly bars: readonly [number, number] | null;
  /** 0..1 */
  readonly share: number;
}

/** Kinds that never came to this are left out. */
const WORTH_TELLING = 0.02;
const OPEN = 0.01;
/** A reading that would settle less than this is not worth the walk to the bench, bits. */
const WORTH_READING = 0.03;
/** Of what one reading moved, no more than this is told. */
const MOST_TOLD = 12;
/** A possibility that gained this much was raised by the reading. */
const RAISED = 0.1;

/** Takes about a hundredth of a second a reading: not for the page's own thread. */
export function evidenceStory(film: Film): EvidenceStory {
  const { model } = groundOf(film);
  const rested = restedOf(film);
  const from = sourceOf(film);
  const first = rested?.spells[0];
  const gathered = first?.gathered ?? gatherReadings(film);
  const readings = first?.readings ?? readingsFrom(gathered, from);
  const fields: (readonly Possibility[])[] = [];
  const followed = followReadings(model, readings, (field) => fields.push(field));
  const judged = rested === null ? null : judgedStory(judgeRested(film, rested));
  const doubt = followed.steps.at(-1)?.bits ?? followed.bitsBefore;
  return {
    from,
    bars: film.design.bars,
    chalkedBar: film.stretches.at(-1)?.seen.chalkedBar ?? null,
    judged,
    kinds: kindsOf(fields),
    steps: followed.steps.map((step, n) =>
      storyStep(step, followed.steps[n - 1]?.bits ?? followed.bitsBefore),
    ),
    openBefore: fields[0]!.filter(({ chance }) => chance >= OPEN).length,
    next: nextOf(film, nextReadings(followed.after)[0], doubt),
    differing: gathered.written.flatMap(({ entry, off, differs }) =>
      differs || (off ?? 0) > OFF ? [entry] : [],
    ),
    endedByRemedy: acts(film, 'remedy.do').length > 0,
  };
}
/** A current written further than this from the needle is another reading, share of the range. */
const OFF = 0.03;

function judgedStory({ judgement, findings, missed }: JudgedVerdict): EvidenceStory['judged'] {
  return { judgement, findings, missed: missed.length };
}

type Followed = ReturnType<typeof followReadings>;

function storyStep(
  { reading, moved, ruledOut, open, bits }: Followed['steps'][number],
  bitsBefore: number,
): StoryStep {
  const raised = moved.filter(({ from, to }) => to - from >= RAISED);
  return {
    reading,
    ruledOut: ruledOut.slice(0, MOST_TOLD),
    raised: raised.slice(0, MOST_TOLD),
    open,
    settled: bitsBefore - bits,
  };
}

function kindsOf(fields: readonly (readonly Possibility[])[]): KindStory[] {
  const first = fields[0]!;
  const last = fields[fields.length - 1]!;
  const kinds = [...new Set(first.map(({ what }) => what))];
  const chanceIn = (field: readonly Possibility[], kind: Possibility['what']) =>
    Math.min(
      1,
      field.reduce((sum, { what, chance }) => sum + (what === kind ? chance : 0), 0),
    );
  const openIn = (field: readonly Possibility[], kind: Possibility['what']) =>
    field.filter(({ what, chance }) => what === kind && chance >= OPEN).length;
  return kinds
    .map((what): KindStory => {
      const placed = first.some((one) => one.what === what && one.place !== null);
      return {
        what,
        chances: fields.map((field) => chanceIn(field, what)),
        places: placed ? [openIn(first, what), openIn(last, what)] : null,
      };
    })
    .filter(({ chances }) => Math.max(...chances) >= WORTH_TELLING)
    .sort((a, b) => b.chances.at(-1)! - a.chances.at(-1)!);
}

function nextOf({ design }: Film, best: NextReading | undefined, doubt: number): NextStory | null {
  if (best === undefined || best.bits < WORTH_READING) return null;
  const { test, angleDeg, slot } = best;
  const share = Math.min(1, best.bits / doubt);
  if (angleDeg === null || slot === null) return { test, angleDeg, bars: best.bars, share };
  const geometry = { bars: design.bars, barZeroDeg: barZeroDeg(design) };
  const bar = barAt(geometry, angleDeg, angleDeg - (360 * slot) / design.slots);
  return { test, angleDeg, bars: [bar, bar], share };
}
