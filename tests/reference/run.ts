import { mkdirSync, writeFileSync } from 'node:fs';
import { judge } from './case.ts';
import { WITNESS_GROUPS } from './groups.ts';
import { failures, type Judged, lines, page, WITNESS_PAGE } from './report.ts';

/** Runs every objective test, prints a row each, writes the table as a page, and fails when one does not pass. */
const all: Judged[] = [];
for (const group of WITNESS_GROUPS) {
  const outcomes = [];
  for (const one of group.cases) outcomes.push(await judge(one));
  all.push({ group, outcomes });
  for (const line of lines({ group, outcomes })) console.log(line);
}
mkdirSync(new URL('.', WITNESS_PAGE), { recursive: true });
writeFileSync(WITNESS_PAGE, page(all));
const wrong = failures(all);
const rows = all.reduce((sum, { outcomes }) => sum + outcomes.length, 0);
console.log(`${rows - wrong.length} of ${rows} rows pass. The table is in docs/witness.md.`);
for (const sentence of wrong) console.error(sentence);
process.exitCode = wrong.length > 0 ? 1 : 0;
