import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { criterionTitle } from '../../src/assess/procedure/rubricChanges.ts';
import { BUILT_IN_RUBRIC } from '../../src/scenario/public/rubric.ts';

it('the page on marks lists the built-in rubric, row by row', () => {
  const rows = readFileSync('docs/marks.md', 'utf8')
    .split('\n')
    .flatMap((line) => /^\| (.+?) +\| (\d+) +\|$/.exec(line)?.slice(1, 3).join(': ') ?? []);
  const built = BUILT_IN_RUBRIC.criteria.map(
    ({ criterion, weight }) => `${criterionTitle(criterion)}: ${weight}`,
  );
  expect(rows).toEqual(built);
});
