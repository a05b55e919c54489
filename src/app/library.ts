import type { ArmatureDesign } from '../engine/parts/armature.ts';
import { parsePart, parseScenario } from '../scenario/parse.ts';
import type { PartLibrary, Scenario } from '../scenario/scenario.ts';
import type { StoredProblem } from '../screens/shell.ts';

/** Everything of scenarios/ that came with the app, read once. */
export interface Library {
  readonly parts: PartLibrary;
  readonly scenarios: ReadonlyMap<string, Scenario>;
  readonly problems: readonly StoredProblem[];
}

/** Files of scenarios/ by name, as they came from JSON. */
export interface LibraryFiles {
  readonly parts: Readonly<Record<string, unknown>>;
  readonly scenarios: Readonly<Record<string, unknown>>;
}

/** Fetches the library as the build has it; see tools/library. */
export async function fetchLibrary(): Promise<Library> {
  const answer = await fetch('./library.json');
  if (!answer.ok) throw new Error(`The library of jobs did not come (${answer.status}).`);
  return readLibrary((await answer.json()) as LibraryFiles);
}

export function readLibrary(files: LibraryFiles): Library {
  const problems: StoredProblem[] = [];
  const parts = new Map<string, ArmatureDesign>();
  for (const [file, content] of Object.entries(files.parts)) {
    const part = parsePart(content);
    if (part.ok) parts.set(part.value.id, part.value);
    else problems.push({ where: file, issues: part.issues, text: null });
  }
  const scenarios = new Map<string, Scenario>();
  for (const [file, content] of Object.entries(files.scenarios)) {
    const scenario = parseScenario(content, parts);
    if (scenario.ok) scenarios.set(scenario.value.public.id, scenario.value);
    else problems.push({ where: file, issues: scenario.issues, text: null });
  }
  return { parts, scenarios, problems };
}
