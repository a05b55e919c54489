import { readdirSync, readFileSync, statSync } from 'node:fs';
import { basename, resolve } from 'node:path';
import { tooLarge } from '../../scenario/jsonText.ts';
import { MOST_SCENARIO_BYTES, parsePartText, parseScenarioText } from '../../scenario/parse.ts';
import type { Issue, Parsed, PartLibrary, Scenario } from '../../scenario/scenario.ts';

/** The part types that came with the program. */
const PARTS = new URL('../../../scenarios/parts/', import.meta.url);

const CODE_SENTENCES: Readonly<Record<string, string>> = {
  ENOENT: 'Expected a file here, but there is none.',
  EISDIR: 'Expected a file, but this is a folder.',
  EACCES: 'Expected a file that can be read, but reading it is not permitted.',
};

const wrong = (sentence: string): { readonly ok: false; readonly issues: readonly Issue[] } => ({
  ok: false,
  issues: [{ path: '', sentence }],
});

function sentenceOf(error: unknown): string {
  const code = (error as NodeJS.ErrnoException).code ?? '';
  return (
    CODE_SENTENCES[code] ?? `Expected a file that can be read, but reading it failed (${code || error}).`
  );
}

/**
 * Reads a file as text, every failure as a sentence. Its size is asked before it is opened.
 * @param what  what the file should be, as in "a scenario file"
 * @param most  largest size accepted, bytes
 */
export function readText(file: string, what: string, most: number): Parsed<string> {
  // npm runs a script in the package's folder; a person names files from where they stand.
  const path = resolve(process.env.INIT_CWD ?? '.', file);
  try {
    const found = statSync(path);
    if (found.isDirectory()) return wrong(CODE_SENTENCES.EISDIR!);
    const large = tooLarge(found.size, what, most);
    return large === null ? { ok: true, value: readFileSync(path, 'utf8') } : { ok: false, issues: [large] };
  } catch (error) {
    return wrong(sentenceOf(error));
  }
}

/** Every part type of the library; a broken part file is named with its place. */
export function readLibrary(folder: URL = PARTS): Parsed<PartLibrary> {
  const parts = new Map();
  const issues: Issue[] = [];
  for (const name of readdirSync(folder).filter((file) => file.endsWith('.json'))) {
    const part = parsePartText(readFileSync(new URL(name, folder), 'utf8'));
    if (part.ok) parts.set(part.value.id, part.value);
    else
      issues.push(...part.issues.map((issue) => ({ ...issue, path: `parts/${name} ${issue.path}`.trim() })));
  }
  return issues.length > 0 ? { ok: false, issues } : { ok: true, value: parts };
}

/** Reads a scenario file. */
export function readScenario(file: string, library: PartLibrary): Parsed<Scenario> {
  const text = readText(file, 'a scenario file', MOST_SCENARIO_BYTES);
  return text.ok ? parseScenarioText(text.value, library) : text;
}

/** Lines for the screen: file, place, sentence. */
export function issueLines(file: string, issues: readonly Issue[]): string[] {
  return issues.map(
    ({ path, sentence }) => `${basename(file)}: ${path === '' ? '' : `${path}: `}${sentence}`,
  );
}
