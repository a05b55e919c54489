import { fromHex, grouped, hex, utf8 } from './bytes.ts';
import { canonicalText } from './canonical.ts';
import { type Bytes, ECDSA_SHA256, type KeyHandle, P256, type Subtle } from './crypto.ts';
import { firstChange, tagsOf } from './leaves.ts';
import { type AssessorRecord, LIMITS } from './record.ts';
import { recordIssues, type UnsignedRecord } from './recordRules.ts';
import type { Alteration } from './seal.ts';

/** An assessor's key. The private half can sign and cannot be read out, not even by this program. */
export interface Signer {
  readonly privateKey: KeyHandle;
  /** SubjectPublicKeyInfo (RFC 5280), hexadecimal. */
  readonly publicKey: string;
  /** SHA-256 of the public key in groups of four digits. */
  readonly fingerprint: string;
}

export const SIGNED_FORMAT = 'slot-and-riser/signed-record';
export const SIGNED_VERSION = 1;

export interface SignedRecord {
  readonly format: typeof SIGNED_FORMAT;
  readonly version: typeof SIGNED_VERSION;
  readonly record: AssessorRecord;
  /** Short tags of the record's values; they are signed too, and tell which value was changed. */
  readonly tags: string;
  /** ECDSA over P-256 with SHA-256 (FIPS 186-4), r and s one after the other, hexadecimal. */
  readonly signature: string;
}

export async function makeSigner(subtle: Subtle): Promise<Signer> {
  const pair = await subtle.generateKey(P256, false, ['sign', 'verify']);
  const spki = await subtle.exportKey('spki', pair.publicKey);
  return {
    privateKey: pair.privateKey,
    publicKey: hex(spki),
    fingerprint: await fingerprintOf(new Uint8Array(spki), subtle),
  };
}

/** @param spki  public key as SubjectPublicKeyInfo */
export async function fingerprintOf(spki: Bytes, subtle: Subtle): Promise<string> {
  return grouped(hex(await subtle.digest('SHA-256', spki)));
}

/**
 * Signs a record. One that breaks a rule of recordRules.ts must not come here: ask `recordIssues` first.
 * @param signedAt  wall clock, ISO 8601
 */
export async function signRecord(
  unsigned: UnsignedRecord,
  signer: Signer,
  signedAt: string,
  subtle: Subtle,
): Promise<SignedRecord> {
  const [issue] = recordIssues(unsigned);
  if (issue !== undefined) throw new Error(`${issue.path}: ${issue.sentence}`);
  const { publicKey, fingerprint } = signer;
  const record: AssessorRecord = {
    ...unsigned,
    signedAt,
    signedWith: { publicKey, fingerprint },
    limits: LIMITS,
  };
  const tags = tagsOf(record);
  const signature = hex(await subtle.sign(ECDSA_SHA256, signer.privateKey, signedBytes(record, tags)));
  return { format: SIGNED_FORMAT, version: SIGNED_VERSION, record, tags, signature };
}

function signedBytes(record: AssessorRecord, tags: string): Bytes {
  return utf8(`${SIGNED_FORMAT} ${SIGNED_VERSION}\n${canonicalText({ record, tags })}`);
}

/** @returns the first place at which the record is not as it was signed, or null when the signature holds */
export async function verifySignature(signed: SignedRecord, subtle: Subtle): Promise<Alteration | null> {
  const { record, tags, signature } = signed;
  const spki = fromHex(record.signedWith.publicKey);
  const value = fromHex(signature);
  const key = spki === null ? null : await readKey(spki, subtle);
  if (spki === null || key === null)
    return altered('signedWith.publicKey', 'its public key is no key of this kind');
  if (value !== null && (await subtle.verify(ECDSA_SHA256, key, value, signedBytes(record, tags)))) {
    if ((await fingerprintOf(spki, subtle)) === record.signedWith.fingerprint) return null;
    return altered('signedWith.fingerprint', 'its fingerprint is not that of the key it was signed with');
  }
  const path = firstChange(record, tags);
  if (path === null) return altered('', 'the signature is not one this key made over this record');
  return altered(path, `${path === '' ? 'something at its end' : path} is not as it was signed`);
}

const altered = (path: string, what: string): Alteration => ({
  path,
  entry: null,
  sentence: `This record was altered after it was signed: ${what}.`,
});

async function readKey(spki: Bytes, subtle: Subtle): Promise<KeyHandle | null> {
  try {
    return await subtle.importKey('spki', spki, P256, false, ['verify']);
  } catch {
    return null;
  }
}
