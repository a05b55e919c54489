import type { Subtle } from './crypto.ts';
import type { EvidenceFile } from './evidenceFile.ts';
import type { AssessorRecord } from './record.ts';
import { verifySeal } from './seal.ts';
import { type SignedRecord, verifySignature } from './sign.ts';

/** One thing that was checked. `unknown`: it cannot be told from what is at hand. */
export interface Check {
  readonly what: 'seal' | 'signature' | 'belongs' | 'key';
  readonly verdict: 'holds' | 'broken' | 'unknown';
  /** Place such as `attempts[0].entries[17].action.byDeg`; '' for the whole file. */
  readonly where: string;
  readonly sentence: string;
}

export interface Verification {
  readonly verdict: 'intact' | 'altered' | 'unsigned';
  readonly checks: readonly Check[];
}

/** Fingerprints someone has reason to trust, with whose they are. */
export type KnownKeys = ReadonlyMap<string, string>;

/**
 * Checks a file as far as it can be checked by itself: every seal against its attempt, the signature against the
 * record, the record against the attempts that lie beside it, and the key against those known here.
 * Whether the marks follow from the log is for a replay to say.
 */
export async function verifyEvidence(
  file: EvidenceFile,
  known: KnownKeys,
  subtle: Subtle,
): Promise<Verification> {
  const checks = await sealChecks(file, subtle);
  if (file.signed === null) return verdictOf([...checks, UNSIGNED]);
  const signature = await signatureCheck(file.signed, subtle);
  return verdictOf([
    ...checks,
    signature,
    ...belongingChecks(file, file.signed.record),
    keyCheck(file.signed, known),
  ]);
}

const UNSIGNED: Check = {
  what: 'signature',
  verdict: 'unknown',
  where: '',
  sentence:
    'Nobody has signed this file: someone who altered an attempt could have made its seal anew, and nothing here would show it.',
};

function verdictOf(checks: readonly Check[]): Verification {
  if (checks.some((check) => check.verdict === 'broken')) return { verdict: 'altered', checks };
  return { verdict: checks.includes(UNSIGNED) ? 'unsigned' : 'intact', checks };
}

async function sealChecks(file: EvidenceFile, subtle: Subtle): Promise<Check[]> {
  const checks: Check[] = [];
  for (const [nth, { attempt, seal }] of file.attempts.entries()) {
    const found = await verifySeal(attempt, seal, subtle);
    const inner = found === null || found.path === '' ? '' : `.${found.path}`;
    checks.push({
      what: 'seal',
      verdict: found === null ? 'holds' : 'broken',
      where: `attempts[${nth}]${inner}`,
      sentence:
        found?.sentence ??
        `Attempt ${attempt.id} is as it was sealed, all ${attempt.entries.length} entries.`,
    });
  }
  return checks;
}

async function signatureCheck(signed: SignedRecord, subtle: Subtle): Promise<Check> {
  const found = await verifySignature(signed, subtle);
  const inner = found === null || found.path === '' ? '' : `.${found.path}`;
  const { assessor, signedAt } = signed.record;
  return {
    what: 'signature',
    verdict: found === null ? 'holds' : 'broken',
    where: `signed.record${inner}`,
    sentence: found?.sentence ?? `The record is as it was signed in the name of ${assessor} at ${signedAt}.`,
  };
}

/** A seal that was made anew fits its attempt, and no longer fits the record. */
function belongingChecks(file: EvidenceFile, record: AssessorRecord): Check[] {
  const signed = new Map(record.evidence.map((item) => [item.attempt, item.seal]));
  const beside = file.attempts.map(({ attempt, seal }, nth): Check => {
    const where = `attempts[${nth}]`;
    const expected = signed.get(attempt.id);
    if (expected === undefined)
      return broken(where, `Attempt ${attempt.id} lies in this file, but the record was not signed over it.`);
    if (expected !== seal.end)
      return broken(
        where,
        `Attempt ${attempt.id} is not the one the record was signed over: it was altered and sealed anew.`,
      );
    return {
      what: 'belongs',
      verdict: 'holds',
      where,
      sentence: `The record was signed over attempt ${attempt.id}.`,
    };
  });
  const here = new Set(file.attempts.map(({ attempt }) => attempt.id));
  const absent = record.evidence
    .filter((item) => !here.has(item.attempt))
    .map((item): Check => {
      const sentence = `The record was signed over attempt ${item.attempt} as well, which is not in this file.`;
      return { what: 'belongs', verdict: 'unknown', where: 'attempts', sentence };
    });
  return [...beside, ...absent];
}

const broken = (where: string, sentence: string): Check => ({
  what: 'belongs',
  verdict: 'broken',
  where,
  sentence,
});

function keyCheck(signed: SignedRecord, known: KnownKeys): Check {
  const { fingerprint } = signed.record.signedWith;
  const owner = known.get(fingerprint);
  return {
    what: 'key',
    verdict: owner === undefined ? 'unknown' : 'holds',
    where: 'signed.record.signedWith.fingerprint',
    sentence:
      owner === undefined
        ? `This desk does not know the key ${fingerprint}: compare it with the one ${signed.record.assessor} gave you in another way.`
        : `The key is known here as that of ${owner}.`,
  };
}
