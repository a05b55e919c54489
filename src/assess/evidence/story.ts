import { barAt } from '../../bench/geometry.ts';
import { scaleCurrent } from '../../engine/instruments/ammeter.ts';
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
  /** Possibilities before anything was read. */
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
  /** Places at which it is possible, before anything was read and in the end; null for kinds without places. */
  readonly places: readonly [before: number, after: number] | null;
}

export interface StoryStep {
  readonly reading: Reading;
  /** Current of an ammeter reading, A; null for other readings and beyond the scale. */
  readonly ampere: number | null;
  readonly ruledOut: readonly Moved[];
  readonly raised: readonly Moved[];
  /** Possibilities left. */
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
/** Ruled out: below a tenth of what it was before anything was read, and below a hundredth. */
const FALLEN = 0.1;
const SLIGHT = 0.01;
/** A reading that would settle less than this is not worth the walk to the bench, bits. */
const WORTH_READING = 0.03;
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
  const fields: Field[] = [];
  const followed = followReadings(model, readings, (field) => fields.push(field));
  const judged = rested === null ? null : judgedStory(judgeRested(film, rested));
  const doubt = followed.steps.at(-1)?.bits ?? followed.bitsBefore;
  return {
    from,
    bars: film.design.bars,
    chalkedBar: film.stretches.at(-1)?.seen.chalkedBar ?? null,
    judged,
    kinds: kindsOf(fields),
    steps: stepsOf(followed, fields),
    openBefore: fields[0]!.length,
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

type Field = readonly Possibility[];

/** Possibilities not ruled out, by id. */
function openIn(field: Field, first: ReadonlyMap<string, number>): Set<string> {
  const open = field.filter(({ id, chance }) => chance >= SLIGHT || chance >= FALLEN * first.get(id)!);
  return new Set(open.map(({ id }) => id));
}

const chancesOf = (field: Field) => new Map(field.map(({ id, chance }) => [id, chance]));

function stepsOf({ steps, bitsBefore }: Followed, fields: readonly Field[]): StoryStep[] {
  const first = chancesOf(fields[0]!);
  let open = openIn(fields[0]!, first);
  return steps.map(({ reading, moved, bits }, n) => {
    const before = open;
    const from = chancesOf(fields[n]!);
    const field = fields[n + 1]!;
    open = openIn(field, first);
    const gone = field.filter(({ id }) => before.has(id) && !open.has(id));
    return {
      reading,
      ampere: ampereOf(reading),
      ruledOut: gone.map(({ chance, ...possibility }) => ({
        possibility,
        from: from.get(possibility.id)!,
        to: chance,
      })),
      raised: moved.filter((one) => one.to - one.from >= RAISED),
      open: open.size,
      settled: (steps[n - 1]?.bits ?? bitsBefore) - bits,
    };
  });
}

function ampereOf(reading: Reading): number | null {
  if (reading.kind !== 'meter' || reading.pegged) return null;
  return scaleCurrent(reading.deflection, reading.rangeA);
}

function kindsOf(fields: readonly Field[]): KindStory[] {
  const first = fields[0]!;
  const last = fields[fields.length - 1]!;
  const open = openIn(last, chancesOf(first));
  const kinds = [...new Set(first.map(({ what }) => what))];
  const of = (field: Field, kind: Possibility['what']) => field.filter(({ what }) => what === kind);
  const chance = (field: Field, kind: Possibility['what']) =>
    Math.min(
      1,
      of(field, kind).reduce((sum, one) => sum + one.chance, 0),
    );
  return kinds
    .map((what): KindStory => {
      const own = of(first, what);
      const left = own.filter(({ id }) => open.has(id)).length;
      return {
        what,
        chances: fields.map((field) => chance(field, what)),
        places: own.some(({ place }) => place !== null) ? [own.length, left] : null,
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
