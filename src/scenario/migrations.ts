import type { Issue } from './scenario.ts';
import { SCENARIO_FORMAT, SCENARIO_VERSION } from './scenario.ts';
import { nameValue } from './sentences.ts';

type Stored = Readonly<Record<string, unknown>>;

/**
 * How a file of an older version becomes one of the next: the step from version n stands under n. A field that is
 * not as it should be is handed on as it is, for the schema to name.
 */
const MIGRATIONS: Readonly<Record<number, (old: Stored) => Stored>> = {
  // A job was about one part; since version 2 it is about one or more.
  1: (old) => ({ ...old, version: 2, public: partsOf(old.public) }),
  // Every job was marked by the built-in rubric, which is what a job without one is still marked by.
  2: (old) => ({ ...old, version: 3 }),
};

function partsOf(half: unknown): unknown {
  if (half === null || typeof half !== 'object' || !('part' in half)) return half;
  const { part, ...rest } = half;
  return { ...rest, parts: [part] };
}

export type UpToDate =
  | { readonly ok: true; readonly file: Stored }
  | { readonly ok: false; readonly issue: Issue };

/** Refuses what is not a scenario file at all, and takes one of an older version to the present one. */
export function bringUpToDate(input: unknown): UpToDate {
  if (input === null || typeof input !== 'object' || Array.isArray(input)) {
    return refuse('', `Expected an object with format "${SCENARIO_FORMAT}", but ${nameValue(input)} came.`);
  }
  let file = input as Stored;
  if (file.format !== SCENARIO_FORMAT) {
    return refuse('format', `Expected "${SCENARIO_FORMAT}", but ${nameValue(file.format)} came.`);
  }
  while (file.version !== SCENARIO_VERSION) {
    const step = typeof file.version === 'number' ? MIGRATIONS[file.version] : undefined;
    if (step === undefined) return refuse('version', unknownVersion(file.version));
    file = step(file);
  }
  return { ok: true, file };
}

function unknownVersion(version: unknown): string {
  return `Expected version ${SCENARIO_VERSION} or an older one, but ${nameValue(version)} came.`;
}

function refuse(path: string, sentence: string): UpToDate {
  return { ok: false, issue: { path, sentence } };
}
