import type { ArmatureDesign } from '../engine/parts/armature.ts';
import type { PartLibrary, Scenario } from '../scenario/scenario.ts';
import type { StoredProblem } from '../screens/shell.ts';

/** Everything of scenarios/ that came with the app, read once. */
export interface Library {
  readonly parts: PartLibrary;
  readonly scenarios: ReadonlyMap<string, Scenario>;
  readonly problems: readonly StoredProblem[];
}

/** The library as it travels from the build, which has checked it: a page need not do so again at every start. */
export interface CheckedLibrary {
  readonly parts: readonly ArmatureDesign[];
  readonly scenarios: readonly Scenario[];
  readonly problems: readonly StoredProblem[];
}

/** Fetches the library as the build has it; see tools/library. */
export async function fetchLibrary(): Promise<Library> {
  const answer = await fetch('./library.json');
  if (!answer.ok) throw new Error(`The library of jobs did not come (${answer.status}).`);
  return libraryOf((await answer.json()) as CheckedLibrary);
}

export function libraryOf({ parts, scenarios, problems }: CheckedLibrary): Library {
  return {
    parts: new Map(parts.map((part) => [part.id, part])),
    scenarios: new Map(scenarios.map((scenario) => [scenario.public.id, scenario])),
    problems,
  };
}
