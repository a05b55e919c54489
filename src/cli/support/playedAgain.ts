import { assess } from '../../assess/assess.ts';
import type { Mark, Marks } from '../../assess/mark.ts';
import { rubricChanges } from '../../assess/procedure/rubricChanges.ts';
import type { Attempt } from '../../attempt/entry.ts';
import { type Divergence, replay } from '../../attempt/replay.ts';
import { rubricOf } from '../../scenario/public/rubric.ts';
import type { PartLibrary } from '../../scenario/scenario.ts';
import type { Answer } from './command.ts';

function markLine({ title, earned, of, sentence, entries }: Mark): string {
  const where = entries.length > 0 ? ` [${entries.join(', ')}]` : '';
  return `${`${earned} of ${of}`.padStart(11)}  ${title}: ${sentence}${where}`;
}

function marksLines({ marks, earned, of, stoppedBy }: Marks): string[] {
  const group = (name: Mark['group']) => marks.filter((mark) => mark.group === name).map(markLine);
  const stopped =
    stoppedBy === null
      ? []
      : [`Stopped at entry ${stoppedBy.entry}, so the outcome is not yet: ${stoppedBy.breach.sentence}`];
  return [
    'Procedure',
    ...group('procedure'),
    'Diagnosis',
    ...group('diagnosis'),
    `Marks: ${earned} of ${of}. Marks are not competence: that is for an assessor to decide.`,
    ...stopped,
  ];
}

function divergenceLine({ n, what, expected, got }: Divergence): string {
  const record = JSON.stringify(expected) ?? 'nothing';
  return `The replay does not agree with the record: at entry ${n}, ${what} is ${record} in the record, but the replay came to ${JSON.stringify(got) ?? 'nothing'}.`;
}

/** One attempt done again: its marks, how its rubric was changed, and whether it agreed with its record. */
export function playedAgain(
  attempt: Attempt,
  library: PartLibrary,
): { readonly answer: Answer; readonly marks: Marks } {
  const again = replay(attempt, library);
  const marks = assess(attempt, library);
  const out = [...rubricChanges(rubricOf(attempt.scenario.public)), ...marksLines(marks)];
  if (!again.agreed) return { marks, answer: { out, err: [divergenceLine(again.firstDivergence)], code: 1 } };
  return { marks, answer: { out: [...out, 'The replay agreed with the record.'], err: [], code: 0 } };
}
