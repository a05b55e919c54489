import { assess } from '../../assess/assess.ts';
import type { Mark, Marks } from '../../assess/mark.ts';
import type { Attempt } from '../../attempt/entry.ts';
import { MOST_ATTEMPT_CHARS, parseAttemptText } from '../../attempt/parse.ts';
import { type Divergence, replay } from '../../attempt/replay.ts';
import type { Parsed, PartLibrary } from '../../scenario/scenario.ts';
import { type Answer, refused, withOneFile } from './command.ts';
import { issueLines, readText } from './files.ts';

const USAGE = 'Usage: npm run -s replay -- ATTEMPT.json (one attempt file)';

function readAttempt(file: string, library: PartLibrary): Parsed<Attempt> {
  const text = readText(file, 'an attempt file', MOST_ATTEMPT_CHARS);
  return text.ok ? parseAttemptText(text.value, library) : text;
}

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

/** Plays one attempt again and prints its marks and whether the replay agreed with the record. */
export function replayAttempt(args: readonly string[]): Answer {
  return withOneFile(args, USAGE, (file, library) => {
    const attempt = readAttempt(file, library);
    if (!attempt.ok) return refused(issueLines(file, attempt.issues));
    const again = replay(attempt.value, library);
    const out = marksLines(assess(attempt.value, library));
    if (!again.agreed) return { out, err: [divergenceLine(again.firstDivergence)], code: 1 };
    return { out: [...out, 'The replay agreed with the record.'], err: [], code: 0 };
  });
}
