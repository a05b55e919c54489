import { barOf } from '../bench/places.ts';
import type { ArmatureDesign } from '../engine/parts/armature.ts';
import { checkFault } from '../engine/parts/faultRules.ts';
import { checkWinding } from '../engine/parts/windingRules.ts';
import { checkParts } from './checkParts.ts';
import { brokenPoints, checkRubric } from './checkRubric.ts';
import { contradictions } from './contradictions.ts';
import { unfindable } from './findable.ts';
import { parseJsonText } from './jsonText.ts';
import { bringUpToDate } from './migrations.ts';
import type { Issue, Parsed, PartLibrary, Scenario } from './scenario.ts';
import { partSchema, scenarioSchema } from './schema.ts';
import { issuesFrom, nameValue } from './sentences.ts';

/** Largest scenario or part file accepted, bytes or characters; those in the library have about two thousand. */
export const MOST_SCENARIO_BYTES = 1_000_000;

const refuse = (...issues: Issue[]): { readonly ok: false; readonly issues: readonly Issue[] } => ({
  ok: false,
  issues,
});

/** Faults this armature cannot have; only when each is possible, pairs that cannot both be true. */
function checkFaults(scenario: Scenario, design: ArmatureDesign): Issue[] {
  const faults = scenario.hidden.armature.faults;
  const impossible = faults.flatMap((fault, nth) =>
    checkFault(design, fault).map(({ path, sentence }) => ({
      path: `hidden.armature.faults[${nth}].${path}`,
      sentence,
    })),
  );
  return impossible.length > 0 ? impossible : contradictions(faults, design);
}

function checkFalseLeads(scenario: Scenario, design: ArmatureDesign): Issue[] {
  return (scenario.hidden.falseLeads ?? []).flatMap(({ place }, nth) => {
    const bar = barOf(place);
    if (bar === null || bar < design.bars) return [];
    const sentence = `Expected a place on an armature of ${design.bars} bars (0 to ${design.bars - 1}), but ${nameValue(place)} came.`;
    return [{ path: `hidden.falseLeads[${nth}].place`, sentence }];
  });
}

function checkPartType(id: string, library: PartLibrary): Issue {
  const known = [...library.keys()].sort().join(', ') || 'none';
  return {
    path: 'public.armature',
    sentence: `Expected a known part type (${known}), but ${nameValue(id)} came.`,
  };
}

/**
 * Reads a scenario already taken from JSON, kept before or inside an attempt. Every problem is named with its path and one sentence.
 * @param library  part types a scenario may use
 */
export function parseScenario(input: unknown, library: PartLibrary): Parsed<Scenario> {
  const current = bringUpToDate(input);
  if (!current.ok) return refuse(current.issue);
  const read = scenarioSchema.safeParse(current.file);
  if (!read.success) return refuse(...issuesFrom(read.error, current.file));
  const scenario: Scenario = read.data;
  const design = library.get(scenario.public.armature);
  const { rubric } = scenario.public;
  const parts = [
    ...checkParts(scenario),
    ...(rubric === undefined ? [] : checkRubric(rubric, 'public.rubric')),
  ];
  if (design === undefined) return refuse(...parts, checkPartType(scenario.public.armature, library));
  const issues = [...parts, ...checkFaults(scenario, design), ...checkFalseLeads(scenario, design)];
  return issues.length > 0 ? refuse(...issues) : { ok: true, value: scenario };
}

/** Reads a scenario that is to become a job: it must not hide what nobody could find, nor be worth broken points. */
export function parseNewJob(input: unknown, library: PartLibrary): Parsed<Scenario> {
  const read = parseScenario(input, library);
  if (!read.ok) return read;
  const { rubric } = read.value.public;
  const issues = [
    ...unfindable(read.value),
    ...(rubric === undefined ? [] : brokenPoints(rubric, 'public.rubric')),
  ];
  return issues.length > 0 ? refuse(...issues) : read;
}

/** Reads the text of a scenario file. */
export function parseScenarioText(text: string, library: PartLibrary): Parsed<Scenario> {
  const json = parseJsonText(text, 'a scenario file', MOST_SCENARIO_BYTES);
  return json.ok ? parseNewJob(json.value, library) : json;
}

/** Reads a part type (a file of scenarios/parts) already taken from JSON. */
export function parsePart(input: unknown): Parsed<ArmatureDesign> {
  const read = partSchema.safeParse(input);
  if (!read.success) return refuse(...issuesFrom(read.error, input));
  const impossible = checkWinding(read.data);
  return impossible.length > 0 ? refuse(...impossible) : { ok: true, value: read.data };
}

/** Reads the text of a part file. */
export function parsePartText(text: string): Parsed<ArmatureDesign> {
  const json = parseJsonText(text, 'a part file', MOST_SCENARIO_BYTES);
  return json.ok ? parsePart(json.value) : json;
}
