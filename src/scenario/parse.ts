import type { ArmatureDesign } from '../engine/parts/armature.ts';
import { checkFault } from '../engine/parts/faultRules.ts';
import { checkWinding } from '../engine/parts/windingRules.ts';
import { contradictions } from './contradictions.ts';
import { parseJsonText } from './jsonText.ts';
import {
  type Issue,
  type Parsed,
  type PartLibrary,
  SCENARIO_FORMAT,
  SCENARIO_VERSION,
  type Scenario,
} from './scenario.ts';
import { partSchema, scenarioSchema } from './schema.ts';
import { issuesFrom, nameValue } from './sentences.ts';

/** Largest scenario or part file accepted, bytes or characters; those in the library have about two thousand. */
export const MOST_SCENARIO_BYTES = 1_000_000;

const refuse = (...issues: Issue[]): { readonly ok: false; readonly issues: readonly Issue[] } => ({
  ok: false,
  issues,
});

/** Refuses what is not this kind of file at all, before its fields are gone through one by one. */
function checkEnvelope(input: unknown, format: string, version: number): Issue | null {
  if (input === null || typeof input !== 'object' || Array.isArray(input))
    return {
      path: '',
      sentence: `Expected an object with format "${format}", but ${nameValue(input)} came.`,
    };
  const head = input as { format?: unknown; version?: unknown };
  if (head.format !== format)
    return { path: 'format', sentence: `Expected "${format}", but ${nameValue(head.format)} came.` };
  if (head.version !== version)
    return { path: 'version', sentence: `Expected version ${version}, but ${nameValue(head.version)} came.` };
  return null;
}

/** What the public half says that its fields, one by one, cannot show to be wrong. */
function checkTests(tests: readonly string[]): Issue[] {
  return tests.flatMap((test, nth) =>
    tests.indexOf(test) === nth
      ? []
      : [
          {
            path: `public.tests[${nth}]`,
            sentence: `Expected each test once, but ${nameValue(test)} came again.`,
          },
        ],
  );
}

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
    const bar = Number(place.split(':')[1] ?? 0);
    if (bar < design.bars) return [];
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
 * Reads a scenario already taken from JSON. Every problem is named with its path and one sentence.
 * @param library  part types a scenario may use
 */
export function parseScenario(input: unknown, library: PartLibrary): Parsed<Scenario> {
  const envelope = checkEnvelope(input, SCENARIO_FORMAT, SCENARIO_VERSION);
  if (envelope !== null) return refuse(envelope);
  const read = scenarioSchema.safeParse(input);
  if (!read.success) return refuse(...issuesFrom(read.error, input));
  const scenario: Scenario = read.data;
  const design = library.get(scenario.public.armature);
  const tests = checkTests(scenario.public.tests);
  if (design === undefined) return refuse(...tests, checkPartType(scenario.public.armature, library));
  const issues = [...tests, ...checkFaults(scenario, design), ...checkFalseLeads(scenario, design)];
  return issues.length > 0 ? refuse(...issues) : { ok: true, value: scenario };
}

/** Reads the text of a scenario file. */
export function parseScenarioText(text: string, library: PartLibrary): Parsed<Scenario> {
  const json = parseJsonText(text, 'a scenario file', MOST_SCENARIO_BYTES);
  return json.ok ? parseScenario(json.value, library) : json;
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
