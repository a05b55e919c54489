import * as z from 'zod/mini';
import type { Attempt } from '../attempt/entry.ts';
import { parseJsonText } from '../scenario/jsonText.ts';
import type { Parsed } from '../scenario/scenario.ts';
import { issuesFrom, nameValue } from '../scenario/sentences.ts';
import { sealSchema, signedSchema } from './recordSchema.ts';
import type { Seal } from './seal.ts';
import type { SignedRecord } from './sign.ts';

export const EVIDENCE_FORMAT = 'slot-and-riser/evidence';
export const EVIDENCE_VERSION = 1;

export interface SealedAttempt {
  readonly attempt: Attempt;
  readonly seal: Seal;
}

/** One file that can be handed over and checked by itself: attempts with their seals, and the record if one is signed. */
export interface EvidenceFile {
  readonly format: typeof EVIDENCE_FORMAT;
  readonly version: typeof EVIDENCE_VERSION;
  readonly attempts: readonly SealedAttempt[];
  readonly signed: SignedRecord | null;
}

/** Largest evidence file accepted, characters: some twenty long attempts. */
export const MOST_EVIDENCE = 60_000_000;

/** The attempts' own content is left to the reader of attempts. */
const fileSchema = z.strictObject({
  format: z.literal(EVIDENCE_FORMAT),
  version: z.literal(EVIDENCE_VERSION),
  attempts: z.array(z.strictObject({ attempt: z.unknown(), seal: sealSchema })).check(z.maxLength(200)),
  signed: z.nullable(signedSchema),
});

/**
 * Reads a signed record already taken from JSON; whether it is as it was signed is for `verifySignature` to say.
 * What comes back is the input itself, fields this version does not know included: they were signed as well.
 */
export function parseSigned(input: unknown): Parsed<SignedRecord> {
  const read = signedSchema.safeParse(input);
  if (!read.success) return { ok: false, issues: issuesFrom(read.error, input) };
  return { ok: true, value: input as SignedRecord };
}

/**
 * Reads an evidence file already taken from JSON.
 * @param readAttempt  parses one attempt; its issues come back with the place inside the file before them
 * @returns the input itself, so that what is verified is what lies in the file
 */
export function parseEvidence(
  input: unknown,
  readAttempt: (input: unknown) => Parsed<Attempt>,
): Parsed<EvidenceFile> {
  const read = fileSchema.safeParse(input);
  if (!read.success) return { ok: false, issues: issuesFrom(read.error, input) };
  const issues = read.data.attempts.flatMap(({ attempt }, nth) => {
    const parsed = readAttempt(attempt);
    return parsed.ok ? [] : parsed.issues.map((issue) => within(nth, issue));
  });
  return issues.length > 0 ? { ok: false, issues } : { ok: true, value: input as EvidenceFile };
}

function within(nth: number, issue: { readonly path: string; readonly sentence: string }) {
  const inner = issue.path === '' ? '' : `.${issue.path}`;
  return { path: `attempts[${nth}].attempt${inner}`, sentence: issue.sentence };
}

/** Reads the text of an evidence file. */
export function parseEvidenceText(
  input: string,
  readAttempt: (input: unknown) => Parsed<Attempt>,
): Parsed<EvidenceFile> {
  const json = parseJsonText(input, 'an evidence file', MOST_EVIDENCE);
  if (!json.ok) return json;
  if (!isEvidence(json.value)) {
    const came = (json.value as { format?: unknown } | null)?.format;
    const sentence = `Expected "${EVIDENCE_FORMAT}", but ${nameValue(came)} came.`;
    return { ok: false, issues: [{ path: 'format', sentence }] };
  }
  return parseEvidence(json.value, readAttempt);
}

/** Whether a value read from JSON calls itself an evidence file. */
export function isEvidence(input: unknown): boolean {
  return (
    input !== null && typeof input === 'object' && (input as { format?: unknown }).format === EVIDENCE_FORMAT
  );
}

export function evidenceFile(attempts: readonly SealedAttempt[], signed: SignedRecord | null): EvidenceFile {
  return { format: EVIDENCE_FORMAT, version: EVIDENCE_VERSION, attempts, signed };
}
