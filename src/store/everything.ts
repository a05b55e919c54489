import * as z from 'zod/mini';
import { parseJsonText } from '../scenario/jsonText.ts';
import type { Parsed } from '../scenario/scenario.ts';
import { issuesFrom, nameValue } from '../scenario/sentences.ts';

export const EVERYTHING_FORMAT = 'slot-and-riser/everything';
export const EVERYTHING_VERSION = 1;

/** Largest file of everything accepted, characters: some two hundred long attempts. */
export const MOST_EVERYTHING = 400_000_000;

const text = z.string().check(z.maxLength(400));
const thing = z.strictObject({ id: text, title: text, changedAt: text, value: z.unknown() });
const points = z.number().check(z.minimum(0));

/** What stands around the things; their own content is left to whoever knows them. */
const schema = z.strictObject({
  format: z.literal(EVERYTHING_FORMAT),
  version: z.literal(EVERYTHING_VERSION),
  takenAt: text,
  attempts: z.array(
    z.strictObject({
      attempt: z.unknown(),
      result: z.nullable(
        z.strictObject({ state: z.enum(['handedIn', 'stopped']), earned: points, of: points }),
      ),
    }),
  ),
  jobs: z.array(thing),
  records: z.array(thing),
  drafts: z.array(thing),
  keys: z.array(z.strictObject({ fingerprint: text, owner: text, publicKey: text, madeAt: text })),
});

export type Everything = z.infer<typeof schema>;

export function parseEverything(input: string): Parsed<Everything> {
  const json = parseJsonText(input, 'a file of everything kept', MOST_EVERYTHING);
  if (!json.ok) return json;
  const format = (json.value as { format?: unknown } | null)?.format;
  if (format !== EVERYTHING_FORMAT) {
    const sentence = `Expected a file of everything kept ("${EVERYTHING_FORMAT}"), but ${nameValue(format)} came.`;
    return { ok: false, issues: [{ path: 'format', sentence }] };
  }
  const read = schema.safeParse(json.value);
  return read.success
    ? { ok: true, value: read.data }
    : { ok: false, issues: issuesFrom(read.error, json.value) };
}

/** Whether two values are the same once written as JSON; the order of names does not count. */
export function sameJson(one: unknown, other: unknown): boolean {
  if (one === other) return true;
  if (one === null || other === null || typeof one !== 'object' || typeof other !== 'object') return false;
  if (Array.isArray(one) !== Array.isArray(other)) return false;
  const [first, second] = [definedOf(one), definedOf(other)];
  return first.size === second.size && [...first].every(([key, inner]) => sameJson(inner, second.get(key)));
}

const definedOf = (value: object) =>
  new Map(Object.entries(value).filter(([, inner]) => inner !== undefined));
