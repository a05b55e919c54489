import { basename } from 'node:path';
import { type Answer, refused } from './command.ts';
import { issueLines, readLibrary, readScenario } from './files.ts';

const USAGE = 'Usage: npm run -s validate -- FILES (scenario files in JSON)';

/** A line per file that is in order; for any other a line per problem, with its place. */
export function validate(files: readonly string[]): Answer {
  if (files.length === 0) return refused([USAGE], 2);
  const library = readLibrary();
  if (!library.ok) return refused(issueLines('scenarios', library.issues));
  const read = files.map((file) => ({ file, read: readScenario(file, library.value) }));
  const lines = read.flatMap(({ file, read: scenario }) =>
    scenario.ok ? [`${basename(file)}: in order`] : issueLines(file, scenario.issues),
  );
  return { out: lines, err: [], code: read.every(({ read: scenario }) => scenario.ok) ? 0 : 1 };
}
