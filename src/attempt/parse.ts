import { parseJsonText } from '../scenario/jsonText.ts';
import { parseScenario } from '../scenario/parse.ts';
import type { Issue, Parsed, PartLibrary } from '../scenario/scenario.ts';
import { issuesFrom, nameValue } from '../scenario/sentences.ts';
import { ATTEMPT_FORMAT, ATTEMPT_VERSION, type Attempt, MOST_ATTEMPT_CHARS } from './entry.ts';
import { attemptSchema } from './schema.ts';

type Stored = Readonly<Record<string, unknown>>;

/**
 * How a file of an older version becomes one of the next: the step from version n stands under n. Old files outlive
 * the code that wrote them.
 */
const MIGRATIONS: Readonly<Record<number, (old: Stored) => Stored>> = {};

/** Reads the text of an attempt file; every problem is named with its place and one sentence. */
export function parseAttemptText(text: string, library: PartLibrary): Parsed<Attempt> {
  const json = parseJsonText(text, 'an attempt file', MOST_ATTEMPT_CHARS);
  return json.ok ? parseAttempt(json.value, library) : json;
}

/**
 * Reads an attempt already taken from JSON.
 * @param library part types the scenario inside may use
 */
export function parseAttempt(input: unknown, library: PartLibrary): Parsed<Attempt> {
  const current = bringUpToDate(input);
  if (!current.ok) return current;
  const read = attemptSchema.safeParse(current.value);
  if (!read.success) return { ok: false, issues: issuesFrom(read.error, current.value) };
  const scenario = parseScenario(read.data.scenario, library);
  if (!scenario.ok) return { ok: false, issues: scenario.issues.map(insideScenario) };
  const attempt: Attempt = { ...read.data, scenario: scenario.value };
  const issues = checkOrder(attempt);
  return issues.length > 0 ? { ok: false, issues } : { ok: true, value: attempt };
}

function bringUpToDate(input: unknown): Parsed<Stored> {
  if (input === null || typeof input !== 'object' || Array.isArray(input)) {
    return refuse('', `Expected an object with format "${ATTEMPT_FORMAT}", but ${nameValue(input)} came.`);
  }
  let stored = input as Stored;
  if (stored.format !== ATTEMPT_FORMAT) {
    return refuse('format', `Expected "${ATTEMPT_FORMAT}", but ${nameValue(stored.format)} came.`);
  }
  while (stored.version !== ATTEMPT_VERSION) {
    const step = typeof stored.version === 'number' ? MIGRATIONS[stored.version] : undefined;
    if (step === undefined) return refuse('version', unknownVersion(stored.version));
    stored = step(stored);
  }
  return { ok: true, value: stored };
}

function unknownVersion(version: unknown): string {
  return `Expected version ${ATTEMPT_VERSION} or one this program can still read, but ${nameValue(version)} came.`;
}

function refuse(path: string, sentence: string): Parsed<never> {
  return { ok: false, issues: [{ path, sentence }] };
}

function insideScenario({ path, sentence }: Issue): Issue {
  return { path: path === '' ? 'scenario' : `scenario.${path}`, sentence };
}

/** Entries are numbered from 0 without a gap and simulated time never runs backwards. */
function checkOrder({ entries, endMs }: Attempt): Issue[] {
  const issues: Issue[] = [];
  let lastMs = 0;
  entries.forEach(({ n, atMs }, nth) => {
    if (n !== nth) issues.push({ path: `entries[${nth}].n`, sentence: `Expected ${nth}, but ${n} came.` });
    if (atMs < lastMs) {
      const sentence = `Expected a time of at least ${lastMs} ms, as of the entry before, but ${atMs} came.`;
      issues.push({ path: `entries[${nth}].atMs`, sentence });
    }
    lastMs = Math.max(lastMs, atMs);
  });
  if (endMs < lastMs) {
    const sentence = `Expected a time of at least ${lastMs} ms, as of the last entry, but ${endMs} came.`;
    issues.push({ path: 'endMs', sentence });
  }
  return issues.slice(0, 20);
}
