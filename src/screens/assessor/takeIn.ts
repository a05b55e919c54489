import type { Issue, Parsed } from '../../scenario/scenario.ts';
import type { AssessorDesk, CheckedFile } from './desk.ts';

/**
 * Takes learners' files in, one after the other; one that is refused does not keep the others out.
 * @returns a sentence saying what was kept, or what was wrong with those that were not
 */
export async function takeIn(
  files: readonly File[],
  desk: Pick<AssessorDesk, 'check'>,
): Promise<Parsed<string>> {
  const said: string[] = [];
  const issues: Issue[] = [];
  for (const file of files) {
    const answer = await takeInOne(file, desk);
    if (answer.ok) said.push(`${file.name}: ${answer.value}`);
    else issues.push(...answer.issues.map((issue) => named(issue, file, files.length)));
  }
  if (issues.length === 0) return { ok: true, value: said.join(' ') };
  return {
    ok: false,
    issues: said.length === 0 ? issues : [...issues, { path: '', sentence: said.join(' ') }],
  };
}

async function takeInOne(file: File, desk: Pick<AssessorDesk, 'check'>): Promise<Parsed<string>> {
  const checked = await desk.check(file);
  if (!checked.ok) return checked;
  const issues = alterations(checked.value);
  return issues.length > 0 ? { ok: false, issues } : checked.value.keep();
}

/** A file that was altered is not taken in as if nothing were: it can be looked into under “Check a file”. */
const alterations = ({ verification }: CheckedFile): Issue[] =>
  verification.checks
    .filter(({ verdict }) => verdict === 'broken')
    .map(({ where, sentence }) => ({ path: where, sentence }));

const named = (issue: Issue, file: File, files: number): Issue =>
  files === 1 ? issue : { ...issue, path: issue.path ? `${file.name}: ${issue.path}` : file.name };
