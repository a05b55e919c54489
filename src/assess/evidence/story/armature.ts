import { barAt } from '../../../bench/geometry.ts';
import { scaleCurrent } from '../../../engine/instruments/ammeter.ts';
import { isArmatureRemedy } from '../../../engine/parts/remedies.ts';
import { barZeroDeg } from '../../../engine/parts/winding.ts';
import { acts, type Film } from '../../film.ts';
import { followReadings } from '../follow.ts';
import { gatherReadings, readingsFrom } from '../gather.ts';
import type { JudgedVerdict } from '../judge.ts';
import { type NextReading, nextReadings } from '../nextBest.ts';
import { groundOf, judgeRested, restedOf, sourceOf } from '../ofAttempt.ts';
import type { Possibility } from '../possibilities.ts';
import type { Reading } from '../reading.ts';
import type { ArmatureNext, EvidenceStory, StoryPossibility } from './shape.ts';
import { type Field, toldBy, WORTH_READING } from './told.ts';

/** Takes about a hundredth of a second a reading: not for the page's own thread. */
export function armatureStory(film: Film): EvidenceStory {
  const { model } = groundOf(film);
  const rested = restedOf(film);
  const from = sourceOf(film);
  const first = rested?.spells[0];
  const gathered = first?.gathered ?? gatherReadings(film);
  const readings = first?.readings ?? readingsFrom(gathered, from);
  const fields: Field[] = [];
  const { after } = followReadings(model, readings, (field) => fields.push(field.map(plain)));
  const judged = rested === null ? null : judgedStory(judgeRested(film, rested));
  const { doubt, ...told } = toldBy(
    readings.map((reading) => ({ reading, ampere: ampereOf(reading) })),
    fields,
  );
  return {
    part: 'armature',
    from,
    bars: film.design.bars,
    chalkedBar: film.stretches.at(-1)?.seen.chalkedBar ?? null,
    judged,
    ...told,
    next: nextOf(film, nextReadings(after)[0], doubt),
    differing: gathered.written.flatMap(({ entry, off, differs }) =>
      differs || (off ?? 0) > OFF ? [entry] : [],
    ),
    endedByRemedy: acts(film, 'remedy.do').some(({ action }) => isArmatureRemedy(action.remedy)),
  };
}
/** A current written further than this from the needle is another reading, share of the range. */
const OFF = 0.03;

function judgedStory({ judgement, findings, missed }: JudgedVerdict): EvidenceStory['judged'] {
  return { judgement, findings, missed: missed.length };
}

function ampereOf(reading: Reading): number | null {
  if (reading.kind !== 'meter' || reading.pegged) return null;
  return scaleCurrent(reading.deflection, reading.rangeA);
}

/** What else a fault may be called does not make it another to the tests. */
function plain({ also, ...possibility }: Possibility): StoryPossibility {
  return possibility;
}

function nextOf({ design }: Film, best: NextReading | undefined, doubt: number): ArmatureNext | null {
  if (best === undefined || best.bits < WORTH_READING) return null;
  const { test, angleDeg, slot } = best;
  const share = Math.min(1, best.bits / doubt);
  if (angleDeg === null || slot === null) return { test, angleDeg, bars: best.bars, share };
  const geometry = { bars: design.bars, barZeroDeg: barZeroDeg(design) };
  const bar = barAt(geometry, angleDeg, angleDeg - (360 * slot) / design.slots);
  return { test, angleDeg, bars: [bar, bar], share };
}
