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

const PART_FILES = import.meta.glob<unknown>('../../scenarios/parts/*.json', {
  eager: true,
  import: 'default',
});
const SCENARIO_FILES = import.meta.glob<unknown>('../../scenarios/*.json', {
  eager: true,
  import: 'default',
});

export function readLibrary(): Library {
  const problems: StoredProblem[] = [];
  const parts = new Map<string, ArmatureDesign>();
  for (const [file, content] of Object.entries(PART_FILES)) {
    const part = parsePart(content);
    if (part.ok) parts.set(part.value.id, part.value);
    else problems.push({ where: nameOf(file), issues: part.issues, text: null });
  }
  const scenarios = new Map<string, Scenario>();
  for (const [file, content] of Object.entries(SCENARIO_FILES)) {
    const scenario = parseScenario(content, parts);
    if (scenario.ok) scenarios.set(scenario.value.public.id, scenario.value);
    else problems.push({ where: nameOf(file), issues: scenario.issues, text: null });
  }
  return { parts, scenarios, problems };
}

function nameOf(file: string): string {
  return file.slice(file.indexOf('scenarios/'));
}
