import { USUAL_STRIP_MM } from '../../../../bench/touchables.ts';
import { atHand } from '../atHand.ts';
import { standing } from '../sheetEntry.ts';
import { doing, powered, type Situation, type Step, writing } from './step.ts';

/** Places along the upper arc, clear of the jaws: top, far side, near side; degrees from the bottom. */
const STATIONS = [
  [180, 'over the top'],
  [120, 'over the far side'],
  [240, 'over your side'],
] as const;

/** The short-circuit test: the strip at three places, a full turn under each. */
export function stripStep(at: Situation): Step | null {
  const written = at.lines.some(({ test }) => test === 'strip');
  const station = STATIONS.find(([angle]) => turnsLeft(angle, at));
  if (!station)
    return written
      ? null
      : writing('strip', 'Write down what the strip did.', 'A still strip all round is a result too.');
  const why = 'On LOW a still strip would prove nothing: the pull is weaker.';
  return powered('high', at, why) ?? holdStep(station, at) ?? feelStep(station[0], at);
}

/** Whether the armature has still to turn under this place. */
function turnsLeft(angle: number, { known, job }: Situation): boolean {
  return (known.strip.get(angle)?.length ?? 0) < job.armature.slots;
}

function holdStep([angleDeg, where]: (typeof STATIONS)[number], { seen }: Situation): Step | null {
  const { strip } = seen;
  if (strip.at === 'rail') {
    return doing(
      { type: 'strip.take' },
      'Take the steel strip.',
      'A slot with a current going round in it pulls the strip and makes it buzz: a short.',
    );
  }
  if (strip.at === 'core' && strip.angleDeg === angleDeg) return null;
  const why =
    'Near a jaw every armature pulls. In between, where a short can be felt depends on the winding: so all of the arc.';
  return doing(
    { type: 'strip.hold', angleDeg, heightMm: USUAL_STRIP_MM },
    `Hold the strip just above the core, ${where}.`,
    why,
  );
}

function feelStep(angle: number, { seen, job, lines }: Situation): Step {
  const felt = seen.strip.pull > 0 || seen.strip.buzz > 0;
  const count = atHand(seen, job.armature)?.count ?? null;
  if (felt && count !== null && !standing(lines, 'strip').has(count)) {
    return writing(
      'strip',
      'It pulls here: write the line.',
      'The place tells which slots carry the current.',
    );
  }
  const why = `A full turn, slot by slot, at ${angle === 180 ? 'the top' : 'this side'}: a short passes the strip only now and then.`;
  return doing(
    { type: 'armature.turn', byDeg: 360 / job.armature.slots },
    'Turn the armature on by one slot.',
    why,
  );
}

/** The strip back on its rail once it is not wanted. */
export function hangStrip({ seen }: Situation): Step | null {
  if (seen.strip.at === 'rail') return null;
  return doing({ type: 'strip.hang' }, 'Hang the strip up.', 'You will want both hands.');
}
