import type { PartLibrary } from '../../scenario/scenario.ts';
import { issueLines, readLibrary } from './files.ts';

/** What a command has to say: lines for standard output, lines for standard error, and how it ended. */
export interface Answer {
  readonly out: readonly string[];
  readonly err: readonly string[];
  /** 0: as wished; 1: the files are not; 2: the command was not understood. */
  readonly code: 0 | 1 | 2;
}

export function refused(err: readonly string[], code: 1 | 2 = 1): Answer {
  return { out: [], err, code };
}

/** Answers with one file, or says how the command is used. */
export function withOneFile(
  args: readonly string[],
  usage: string,
  work: (file: string, library: PartLibrary) => Answer,
): Answer {
  const asked = oneFile(args, usage);
  return 'refusal' in asked ? asked.refusal : work(asked.file, asked.library);
}

/** The same for work that takes its time. */
export async function withOneFileLater(
  args: readonly string[],
  usage: string,
  work: (file: string, library: PartLibrary) => Promise<Answer>,
): Promise<Answer> {
  const asked = oneFile(args, usage);
  return 'refusal' in asked ? asked.refusal : work(asked.file, asked.library);
}

function oneFile(
  [file, ...more]: readonly string[],
  usage: string,
): { readonly file: string; readonly library: PartLibrary } | { readonly refusal: Answer } {
  if (file === undefined || more.length > 0) return { refusal: refused([usage], 2) };
  const library = readLibrary();
  if (!library.ok) return { refusal: refused(issueLines('scenarios', library.issues)) };
  return { file, library: library.value };
}

/** Says the answer and sets the exit code; a mistake of ours is one sentence too, never a stack trace. */
export async function run(work: (args: readonly string[]) => Answer | Promise<Answer>): Promise<void> {
  let answer: Answer;
  try {
    answer = await work(process.argv.slice(2));
  } catch (error) {
    const what = error instanceof Error ? error.message : String(error);
    answer = refused([`The program made a mistake of its own and stopped: ${what}`]);
  }
  for (const line of answer.err) console.error(line);
  for (const line of answer.out) console.log(line);
  process.exitCode = answer.code;
}
