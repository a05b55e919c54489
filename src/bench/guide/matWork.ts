import { MAT_PARTS, type MatPart, type PartKind } from '../action.ts';
import { ALL_LEADS, FIELD_PLACES, PLATE_PLACES, type Place, partOf } from '../places.ts';
import { placeWords } from '../placeWords.ts';
import { PART_WORDS } from '../toolWords.ts';
import { type Asked, doing, first, type GuideStep, hungUp, powered, writing } from './step.ts';

/** Parts brought forward and out of the cradle, and looked over. */

/** A part in front of the learner, the other one back where it stands. */
export function takenUp(part: MatPart, asked: Asked): GuideStep | null {
  const { mat } = asked.seen;
  if (mat[part] === 'forward') return null;
  const other = MAT_PARTS.find((one) => one !== part && mat[one] === 'forward');
  if (other !== undefined) return putBack(other, asked);
  return doing(
    { type: 'part.takeUp', part },
    `Take up ${PART_WORDS[part]}.`,
    'What is tested lies in front of you, where both probes and both eyes reach it.',
    part,
  );
}

function putBack(part: MatPart, asked: Asked): GuideStep {
  return (
    clearOf(part, asked) ??
    doing(
      { type: 'part.putBack', part },
      `Put ${PART_WORDS[part]} back.`,
      'One part at a time: a probe in the wrong place is easily overlooked.',
      part,
    )
  );
}

function clearOf(part: PartKind, asked: Asked): GuideStep | null {
  const on = ALL_LEADS.filter((lead) => {
    const { touches } = asked.seen.leads[lead];
    return touches !== null && partOf(touches) === part;
  });
  return hungUp(on, asked);
}

/** The armature on the mat, the bench off. */
export function liftedOut(asked: Asked, because: string): GuideStep | null {
  return first(
    () =>
      powered(
        'off',
        asked,
        'Off before a part is placed or taken out, and whenever the bench is not in use.',
      ),
    () => (asked.seen.cradle === 'empty' ? null : clearOf('armature', asked)),
    () =>
      asked.seen.cradle === 'empty'
        ? null
        : doing({ type: 'armature.lift' }, 'Lift the armature out.', because, 'armature'),
  );
}

const LOOKS: Readonly<Record<MatPart, { readonly places: readonly Place[]; readonly because: string }>> = {
  fieldFrame: {
    places: FIELD_PLACES,
    because: 'A scorched wrapping or a burnt pigtail is a clue. A clue is not a verdict.',
  },
  brushPlate: {
    places: PLATE_PLACES,
    because: 'Packed dirt, a loose rivet or a darkened insulator is a clue. A clue is not a verdict.',
  },
};

/** The lens over a part of the mat, and a line about it. */
export function lookWork(part: MatPart, asked: Asked): GuideStep | null {
  if (asked.lines.some((line) => line.test === 'look' && line.part === part)) return null;
  const { places, because } = LOOKS[part];
  const up = takenUp(part, asked);
  if (up !== null) return up;
  const here = asked.seen.look === null ? -1 : places.indexOf(asked.seen.look.place);
  const place = places[here + 1];
  if (place === undefined) {
    return writing(
      'look',
      `Write down what you saw of ${PART_WORDS[part]}.`,
      '“Nothing to see” is a finding too.',
    );
  }
  const words = placeWords(asked.job.armature, asked.seen, place);
  return doing({ type: 'lens.look', place }, `Look at ${words} under the lens.`, because, place);
}
