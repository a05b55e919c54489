import * as z from 'zod/mini';
import type { Attempt } from '../attempt/entry.ts';
import { parseJsonText } from '../scenario/jsonText.ts';
import type { Parsed } from '../scenario/scenario.ts';
import { issuesFrom, nameValue } from '../scenario/sentences.ts';
import { type AssessorRecord, EVIDENCE_RULES, RECORD_FORMAT, RECORD_VERSION } from './record.ts';
import { SEAL_FORMAT, SEAL_VERSION, type Seal } from './seal.ts';
import { SIGNED_FORMAT, SIGNED_VERSION, type SignedRecord } from './sign.ts';

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

const text = (most: number) => z.string().check(z.maxLength(most));
const moment = text(40);
const id = text(80);
const points = z.number().check(z.minimum(0), z.maximum(10_000));
const hash = z.string().check(z.regex(/^[0-9a-f]{64}$/, '64 hexadecimal digits'));
const tags = z.string().check(z.regex(/^(?:[0-9a-f]{4})*$/, 'groups of four hexadecimal digits'));
const list = <T extends z.core.$ZodType>(of: T, most: number) => z.array(of).check(z.maxLength(most));

const sealSchema = z.strictObject({
  format: z.literal(SEAL_FORMAT),
  version: z.literal(SEAL_VERSION),
  attempt: id,
  head: hash,
  links: list(hash, 100_000),
  end: hash,
  tags: z.strictObject({ head: tags, entries: list(tags, 100_000) }),
});

const markSchema = z.object({
  id,
  group: z.enum(['procedure', 'diagnosis']),
  title: text(400),
  earned: points,
  of: points,
  sentence: text(4000),
  entries: list(z.int().check(z.minimum(0)), 100_000),
});

const marksSchema = z.object({
  marks: list(markSchema, 400),
  earned: points,
  of: points,
  stoppedBy: z.nullable(
    z.object({
      entry: z.int().check(z.minimum(0)),
      breach: z.object({ interlock: text(80), sentence: text(1000), critical: z.boolean() }),
    }),
  ),
});

const evidenceItem = z.strictObject({
  attempt: id,
  seal: hash,
  jobId: id,
  job: text(400),
  startedAt: moment,
  mode: z.enum(['guided', 'practice', 'assessed']),
  marks: marksSchema,
  rubricChanges: list(text(1000), 400),
  replay: z.strictObject({ agreed: z.boolean(), sentence: text(2000) }),
});

const recordSchema = z.strictObject({
  format: z.literal(RECORD_FORMAT),
  version: z.literal(RECORD_VERSION),
  id,
  learner: z.strictObject({
    name: text(400),
    identifiedBy: text(1000),
    declaration: z.nullable(z.strictObject({ text: text(4000), at: moment })),
  }),
  evidence: list(evidenceItem, 200),
  changes: list(
    z.strictObject({ attempt: id, mark: id, from: points, to: points, reason: text(4000), at: moment }),
    2000,
  ),
  remarks: list(
    z.strictObject({
      at: moment,
      text: text(8000),
      about: z.nullable(z.strictObject({ attempt: id, entry: z.int().check(z.minimum(0)) })),
    }),
    2000,
  ),
  adjustments: list(text(2000), 100),
  supervisedBy: text(400),
  criteria: z.strictObject({
    set: text(400),
    judgements: list(
      z.strictObject({
        criterion: id,
        title: text(1000),
        marks: list(id, 400),
        met: z.enum(['met', 'notYet', 'notSeen']),
        note: text(4000),
      }),
      400,
    ),
  }),
  rulesOfEvidence: z.strictObject(
    Object.fromEntries(EVIDENCE_RULES.map((rule) => [rule, z.boolean()])) as Record<
      (typeof EVIDENCE_RULES)[number],
      z.ZodMiniBoolean
    >,
  ),
  outcome: z.enum(['competent', 'notYet']),
  assessor: text(400),
  signedAt: moment,
  signedWith: z.strictObject({ publicKey: text(2000), fingerprint: text(200) }),
  limits: list(text(1000), 40),
});

const signedSchema = z.strictObject({
  format: z.literal(SIGNED_FORMAT),
  version: z.literal(SIGNED_VERSION),
  record: recordSchema,
  tags,
  signature: text(2000),
});

/** The attempts' own content is left to the reader of attempts. */
const fileSchema = z.strictObject({
  format: z.literal(EVIDENCE_FORMAT),
  version: z.literal(EVIDENCE_VERSION),
  attempts: list(z.strictObject({ attempt: z.unknown(), seal: sealSchema }), 200),
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

/** The compiler holds schema and type together. */
type Fits<Read, Promised> = Read extends Promised ? true : never;
export const RECORD_SCHEMAS_FIT: readonly [
  Fits<z.infer<typeof recordSchema>, AssessorRecord>,
  Fits<z.infer<typeof sealSchema>, Seal>,
] = [true, true];
