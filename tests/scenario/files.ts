import { readdirSync, readFileSync } from 'node:fs';
import { parsePartText } from '../../src/scenario/parse.ts';
import type { PartLibrary } from '../../src/scenario/scenario.ts';

/** The files of the repository, read as the tests need them. */
const SCENARIOS = new URL('../../scenarios/', import.meta.url);
const PARTS = new URL('parts/', SCENARIOS);

const jsonNames = (folder: URL) => readdirSync(folder).filter((name) => name.endsWith('.json'));

export function partLibrary(): PartLibrary {
  const designs = jsonNames(PARTS).map((name) => {
    const part = parsePartText(readFileSync(new URL(name, PARTS), 'utf8'));
    if (!part.ok) throw new Error(`${name}: ${JSON.stringify(part.issues)}`);
    return part.value;
  });
  return new Map(designs.map((design) => [design.id, design]));
}

/** Text of every scenario file, by file name without the ending. */
export function scenarioTexts(): ReadonlyMap<string, string> {
  const names = jsonNames(SCENARIOS);
  return new Map(
    names.map((name) => [name.replace(/\.json$/, ''), readFileSync(new URL(name, SCENARIOS), 'utf8')]),
  );
}
