import * as z from 'zod/mini';
import { type AssessorRecord, EVIDENCE_RULES, RECORD_FORMAT, RECORD_VERSION } from './record.ts';
import { SEAL_FORMAT, SEAL_VERSION, type Seal } from './seal.ts';
import { SIGNED_FORMAT, SIGNED_VERSION } from './sign.ts';

/** What a seal, a record and a signed record look like, field by field. */
const text = (most: number) => z.string().check(z.maxLength(most));
const moment = text(40);
const id = text(80);
const points = z.number().check(z.minimum(0), z.maximum(10_000));
const hash = z.string().check(z.regex(/^[0-9a-f]{64}$/, '64 hexadecimal digits'));
const tags = z.string().check(z.regex(/^(?:[0-9a-f]{4})*$/, 'groups of four hexadecimal digits'));
const list = <T extends z.core.$ZodType>(of: T, most: number) => z.array(of).check(z.maxLength(most));

export const sealSchema = z.strictObject({
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
  supervision: z.exactOptional(text(1000)),
});

/** The assessor's own part of a record; a draft has the same. */
export const recordParts = {
  id,
  name: text(400),
  learner: z.strictObject({
    name: text(400),
    identifiedBy: text(1000),
    declaration: z.nullable(z.strictObject({ text: text(4000), at: moment })),
  }),
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
};

const { name, ...parts } = recordParts;
const recordSchema = z.strictObject({
  ...parts,
  format: z.literal(RECORD_FORMAT),
  version: z.literal(RECORD_VERSION),
  evidence: list(evidenceItem, 200),
  supervisedBy: name,
  assessor: name,
  signedAt: moment,
  signedWith: z.strictObject({ publicKey: text(2000), fingerprint: text(200) }),
  limits: list(text(1000), 40),
});

export const signedSchema = z.strictObject({
  format: z.literal(SIGNED_FORMAT),
  version: z.literal(SIGNED_VERSION),
  record: recordSchema,
  tags,
  signature: text(2000),
});

/** The compiler holds schema and type together. */
type Fits<Read, Promised> = Read extends Promised ? true : never;
export const RECORD_SCHEMAS_FIT: readonly [
  Fits<z.infer<typeof recordSchema>, AssessorRecord>,
  Fits<z.infer<typeof sealSchema>, Seal>,
] = [true, true];
