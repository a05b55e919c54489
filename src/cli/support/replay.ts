import { type Attempt, MOST_ATTEMPT_CHARS } from '../../attempt/entry.ts';
import { parseAttempt, parseAttemptText } from '../../attempt/parse.ts';
import { EVIDENCE_FORMAT, MOST_EVIDENCE, parseEvidenceText } from '../../records/evidenceFile.ts';
import { verifyEvidence } from '../../records/verify.ts';
import type { Issue, PartLibrary } from '../../scenario/scenario.ts';
import { type Answer, refused, withOneFileLater } from './command.ts';
import { issueLines, readText } from './files.ts';
import { playedAgain } from './playedAgain.ts';
import { checkLines, recordLines, strayMarks } from './recordLines.ts';

const USAGE =
  'Usage: npm run -s replay -- FILE.json (one attempt file, sealed attempt or assessor’s record with its evidence)';

/** Evidence may be larger than a bare attempt, and says at once what it is. */
function saysEvidence(text: string): boolean {
  return text.slice(0, 4096).includes(EVIDENCE_FORMAT);
}

function isEvidence(text: string): boolean {
  if (saysEvidence(text)) return true;
  if (text.length > MOST_ATTEMPT_CHARS) return false;
  try {
    return (JSON.parse(text) as { format?: unknown } | null)?.format === EVIDENCE_FORMAT;
  } catch {
    return false;
  }
}

/**
 * Plays what a file holds again: prints the marks of each attempt and whether the replay agreed with the record; of
 * evidence also what became of seals and signature, with the first place that is not as it was.
 */
export function replayFile(args: readonly string[]): Promise<Answer> {
  return withOneFileLater(args, USAGE, async (file, library) => {
    const text = readText(file, 'an evidence file', MOST_EVIDENCE);
    if (!text.ok) return refused(issueLines(file, text.issues));
    const wrong = (issues: readonly Issue[]) => refused(issueLines(file, issues));
    if (isEvidence(text.value)) return replayEvidence(text.value, library, wrong);
    const attempt = parseAttemptText(text.value, library);
    return attempt.ok ? playedAgain(attempt.value, library).answer : wrong(attempt.issues);
  });
}

async function replayEvidence(
  text: string,
  library: PartLibrary,
  wrong: (issues: readonly Issue[]) => Answer,
): Promise<Answer> {
  const attempts: Attempt[] = [];
  const evidence = parseEvidenceText(text, (input) => {
    const read = parseAttempt(input, library);
    if (read.ok) attempts.push(read.value);
    return read;
  });
  if (!evidence.ok) return wrong(evidence.issues);
  const { signed } = evidence.value;
  const { checks } = await verifyEvidence(evidence.value, new Map(), crypto.subtle);
  const played = attempts.map((attempt) => ({ attempt, ...playedAgain(attempt, library) }));
  const broken = checkLines(checks.filter(({ verdict }) => verdict === 'broken'));
  const err = [
    ...broken,
    ...played.flatMap(({ answer }) => answer.err),
    ...played.flatMap(({ attempt, marks }) =>
      signed === null ? [] : strayMarks(signed.record, attempt.id, marks),
    ),
  ];
  const out = [
    ...played.flatMap(({ attempt, answer }) => [
      `Attempt ${attempt.id}: ${attempt.learner.trim() || 'no name given'}, ${attempt.scenario.public.card.unit}, ${attempt.startedAt}`,
      ...answer.out,
      '',
    ]),
    ...(signed === null ? [] : [...recordLines(signed.record), '']),
    ...checkLines(checks.filter(({ verdict }) => verdict !== 'broken')),
  ];
  return { out, err, code: err.length > 0 ? 1 : 0 };
}
