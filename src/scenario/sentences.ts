import type { core } from 'zod/mini';
import type { Issue } from './scenario.ts';

/** More issues than a person reads at once are counted, not listed. */
const MOST_ISSUES = 40;

/** Path in the form `hidden.armature.faults[0].bar`. */
export function pathText(path: readonly PropertyKey[]): string {
  return path.reduce<string>((text, step) => {
    if (typeof step === 'number') return `${text}[${step}]`;
    return text === '' ? String(step) : `${text}.${String(step)}`;
  }, '');
}

/** A value found in a file, named so that a person recognises it, never longer than a line. */
export function nameValue(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (Array.isArray(value)) return `a list of ${value.length}`;
  if (value !== null && typeof value === 'object') return 'an object';
  if (Number.isNaN(value)) return 'something else';
  if (typeof value !== 'string') return String(value);
  return value.length > 40 ? `"${value.slice(0, 37)}..."` : `"${value}"`;
}

/** What stands at a path inside the input; undefined where there is nothing. */
function valueAt(input: unknown, path: readonly PropertyKey[]): unknown {
  let here: unknown = input;
  for (const step of path) {
    if (here === null || typeof here !== 'object') return undefined;
    here = (here as Record<PropertyKey, unknown>)[step];
  }
  return here;
}

const TYPE_WORDS: Readonly<Record<string, string>> = {
  string: 'text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  array: 'a list',
  object: 'an object',
  null: 'null',
};

/** What a size limit was about: the units of the thing measured. */
function limitWords(issue: core.$ZodIssueTooBig | core.$ZodIssueTooSmall, limit: string): string {
  const one = limit.endsWith(' 1');
  if (issue.origin === 'string') return `text of ${limit} character${one ? '' : 's'}`;
  if (issue.origin === 'array') return `a list of ${limit} ${one ? 'entry' : 'entries'}`;
  return `a number of ${limit}`;
}

/** "at most 5", "more than 0" and so on. */
function bound(issue: core.$ZodIssueTooBig | core.$ZodIssueTooSmall): string {
  if (issue.code === 'too_big')
    return issue.inclusive === false ? `less than ${issue.maximum}` : `at most ${issue.maximum}`;
  return issue.inclusive === false ? `more than ${issue.minimum}` : `at least ${issue.minimum}`;
}

function listed(values: readonly unknown[]): string {
  const words = values.map((value) => nameValue(value));
  return words.length === 1 ? words[0]! : `${words.slice(0, -1).join(', ')} or ${words.at(-1)}`;
}

/** What the schema wanted, as a noun phrase. */
function expected(issue: core.$ZodIssue): string {
  switch (issue.code) {
    case 'invalid_type':
      return TYPE_WORDS[issue.expected] ?? issue.expected;
    case 'invalid_value':
      return listed(issue.values);
    case 'too_big':
    case 'too_small':
      return limitWords(issue, bound(issue));
    case 'invalid_union':
      if (issue.errors.length === 0) return listed((issue as { options?: unknown[] }).options ?? []);
      return issue.errors.map((branch) => expected(branch[0]!)).join(' or ');
    default:
      return issue.message;
  }
}

/** Which field of a tagged union decides, so that the path names it. */
function unionPath(issue: core.$ZodIssue): PropertyKey[] {
  const tag = issue.code === 'invalid_union' ? issue.discriminator : undefined;
  return issue.path.at(-1) === tag || tag === undefined ? [...issue.path] : [...issue.path, tag];
}

function toIssues(issue: core.$ZodIssue, input: unknown): Issue[] {
  if (issue.code === 'unrecognized_keys')
    return issue.keys.map((key) => ({
      path: pathText([...issue.path, key]),
      sentence: 'No field of this name is known here: expected it left out.',
    }));
  const path = unionPath(issue);
  const came = valueAt(input, path);
  const sentence =
    came === undefined
      ? `This is missing: expected ${expected(issue)}, nothing came.`
      : `Expected ${expected(issue)}, but ${nameValue(came)} came.`;
  return [{ path: pathText(path), sentence }];
}

/** Turns what a schema found wrong into path and sentence, in the order found. */
export function issuesFrom(error: core.$ZodError, input: unknown): Issue[] {
  const all = error.issues.flatMap((issue) => toIssues(issue, input));
  if (all.length <= MOST_ISSUES) return all;
  const more = all.length - MOST_ISSUES;
  return [
    ...all.slice(0, MOST_ISSUES),
    { path: '', sentence: `Expected a sound file, but ${more} more problems came after these.` },
  ];
}
