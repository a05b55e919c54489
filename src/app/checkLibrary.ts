import type { ArmatureDesign } from '../engine/parts/armature.ts';
import { parsePart, parseScenario } from '../scenario/parse.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { StoredProblem } from '../screens/shell.ts';
import type { CheckedLibrary } from './library.ts';

/** Files of scenarios/ by name, as they came from JSON. */
export interface LibraryFiles {
  readonly parts: Readonly<Record<string, unknown>>;
  readonly scenarios: Readonly<Record<string, unknown>>;
}

/** Reads every file of the library; one that cannot be read is left out, and its problem named. */
export function checkLibrary(files: LibraryFiles): CheckedLibrary {
  const problems: StoredProblem[] = [];
  const parts = new Map<string, ArmatureDesign>();
  for (const [file, content] of Object.entries(files.parts)) {
    const part = parsePart(content);
    if (part.ok) parts.set(part.value.id, part.value);
    else problems.push({ where: file, issues: part.issues, text: null });
  }
  const scenarios: Scenario[] = [];
  for (const [file, content] of Object.entries(files.scenarios)) {
    const scenario = parseScenario(content, parts);
    if (scenario.ok) scenarios.push(scenario.value);
    else problems.push({ where: file, issues: scenario.issues, text: null });
  }
  return { parts: [...parts.values()], scenarios, problems };
}
