import { describe, expect, it } from 'vitest';
import type { Attempt } from '../../src/attempt/entry.ts';
import {
  type EvidenceFile,
  evidenceFile,
  parseEvidence,
  parseEvidenceText,
  parseSigned,
} from '../../src/records/evidenceFile.ts';
import { pointsAfter, totalAfter } from '../../src/records/record.ts';
import { recordIssues } from '../../src/records/recordRules.ts';
import { sealAttempt } from '../../src/records/seal.ts';
import { makeSigner, type Signer, signRecord, verifySignature } from '../../src/records/sign.ts';
import { verifyEvidence } from '../../src/records/verify.ts';
import { altered } from './support/alter.ts';
import { attemptOf, MARKS, recordOver, STOPPED } from './support/attempt.ts';

const { subtle } = globalThis.crypto;
const AT = '2026-03-02T11:00:00.000Z';
const readAttempt = (input: unknown) => ({ ok: true, value: input as Attempt }) as const;

async function signedFile(signer?: Signer): Promise<{ file: EvidenceFile; signer: Signer }> {
  const key = signer ?? (await makeSigner(subtle));
  const attempts = await Promise.all(
    [attemptOf('a-1'), attemptOf('a-2', 7)].map(async (attempt) => ({
      attempt,
      seal: await sealAttempt(attempt, subtle),
    })),
  );
  const record = recordOver(attempts.map(({ attempt, seal }) => ({ attempt: attempt.id, seal: seal.end })));
  return { file: evidenceFile(attempts, await signRecord(record, key, AT, subtle)), signer: key };
}

/** The file as it comes back from a disk. */
function reread(file: EvidenceFile): EvidenceFile {
  const parsed = parseEvidenceText(JSON.stringify(file, null, 1), readAttempt);
  if (!parsed.ok) throw new Error(parsed.issues[0]?.sentence);
  return parsed.value;
}

describe('an assessor’s key', () => {
  it('cannot be read out', async () => {
    const { privateKey } = await makeSigner(subtle);
    expect(privateKey.extractable).toBe(false);
    for (const format of ['pkcs8', 'jwk'] as const)
      await expect(subtle.exportKey(format, privateKey as CryptoKey)).rejects.toThrow();
  });

  it('has a fingerprint of sixteen groups of four digits', async () => {
    expect((await makeSigner(subtle)).fingerprint).toMatch(/^(?:[0-9a-f]{4} ){15}[0-9a-f]{4}$/);
  });
});

describe('a signed record', () => {
  it('holds as it was signed, in memory and out of a file', async () => {
    const { file, signer } = await signedFile();
    expect(await verifySignature(file.signed!, subtle)).toBeNull();
    const known = new Map([[signer.fingerprint, 'R. Lindqvist']]);
    const found = await verifyEvidence(reread(file), known, subtle);
    expect(found.verdict).toBe('intact');
    expect(found.checks.map((check) => check.verdict)).toEqual(Array(found.checks.length).fill('holds'));
  });

  it.each([
    ['the outcome', 'outcome', 'notYet'],
    ['a mark', 'evidence[1].marks.marks[0].earned', 10],
    ['a reason', 'changes[0].reason', 'Because.'],
    ['the name', 'learner.name', 'Someone else'],
    ['the time of signing', 'signedAt', '2026-03-01T11:00:00.000Z'],
    ['a seal', 'evidence[0].seal', '0'.repeat(64)],
  ])('names what was altered: %s', async (_, path, to) => {
    const { file } = await signedFile();
    const found = await verifySignature(altered(file.signed!, `record.${path}`, to), subtle);
    expect(found?.path).toBe(path);
    expect(found?.sentence).toContain(path);
  });

  it('is found altered also when the tags that tell the place were made anew', async () => {
    const { file, signer } = await signedFile();
    const forged = altered(file.signed!, 'record.outcome', 'notYet');
    const other = await signRecord({ ...forged.record }, signer, AT, subtle);
    const found = await verifySignature({ ...forged, tags: other.tags }, subtle);
    expect(found).toMatchObject({ path: '', sentence: expect.stringContaining('not one this key made') });
  });

  it('is found altered when key, fingerprint or signature are no such thing', async () => {
    const { file } = await signedFile();
    const broken = [
      altered(file.signed!, 'record.signedWith.publicKey', 'abcd'),
      altered(file.signed!, 'record.signedWith.publicKey', 'not a key'),
      altered(file.signed!, 'signature', 'abcd'),
      altered(file.signed!, 'signature', ''),
      altered(file.signed!, 'record.signedWith.fingerprint', '0000'),
    ];
    for (const signed of broken) expect(await verifySignature(signed, subtle)).not.toBeNull();
  });

  it('cannot be signed while it breaks a rule', async () => {
    const signer = await makeSigner(subtle);
    await expect(signRecord(recordOver([]), signer, AT, subtle)).rejects.toThrow(/at least one attempt/);
  });
});

describe('verifying a file', () => {
  it('finds an altered attempt by its seal', async () => {
    const { file, signer } = await signedFile();
    const path = 'attempts[0].attempt.entries[5].action.byDeg';
    const found = await verifyEvidence(
      altered(file, path, 15.5),
      new Map([[signer.fingerprint, 'R. L.']]),
      subtle,
    );
    expect(found.verdict).toBe('altered');
    expect(found.checks.filter((check) => check.verdict === 'broken')).toEqual([
      expect.objectContaining({ what: 'seal', where: 'attempts[0].entries[5].action.byDeg' }),
    ]);
  });

  it('finds an altered attempt also when its chain was recomputed', async () => {
    const { file } = await signedFile();
    const forged = altered(file, 'attempts[1].attempt.entries[2].action.bar', 7);
    const { attempt } = forged.attempts[1]!;
    const resealed = altered(forged, 'attempts[1].seal', await sealAttempt(attempt, subtle));
    const found = await verifyEvidence(reread(resealed), new Map(), subtle);
    expect(found.verdict).toBe('altered');
    expect(found.checks).toContainEqual(
      expect.objectContaining({
        what: 'belongs',
        verdict: 'broken',
        where: 'attempts[1]',
        sentence: expect.stringContaining('sealed anew'),
      }),
    );
  });

  it('finds it also when the record was pointed at the new seal', async () => {
    const { file } = await signedFile();
    const forged = altered(file, 'attempts[1].attempt.entries[2].action.bar', 7);
    const seal = await sealAttempt(forged.attempts[1]!.attempt, subtle);
    const pointed = altered(
      altered(forged, 'attempts[1].seal', seal),
      'signed.record.evidence[1].seal',
      seal.end,
    );
    const found = await verifyEvidence(reread(pointed), new Map(), subtle);
    expect(found.checks).toContainEqual(
      expect.objectContaining({
        what: 'signature',
        verdict: 'broken',
        where: 'signed.record.evidence[1].seal',
      }),
    );
  });

  it('says that a forger’s own key is not one this desk knows', async () => {
    const { signer } = await signedFile();
    const { file } = await signedFile(await makeSigner(subtle));
    const found = await verifyEvidence(file, new Map([[signer.fingerprint, 'R. Lindqvist']]), subtle);
    expect(found.verdict).toBe('intact');
    expect(found.checks).toContainEqual(
      expect.objectContaining({
        what: 'key',
        verdict: 'unknown',
        sentence: expect.stringContaining('does not know'),
      }),
    );
  });

  it('never calls a file intact that nobody signed', async () => {
    const attempt = attemptOf('a-1');
    const file = evidenceFile([{ attempt, seal: await sealAttempt(attempt, subtle) }], null);
    expect((await verifyEvidence(file, new Map(), subtle)).verdict).toBe('unsigned');
  });

  it('tells of an attempt that was swapped for another, and of one left out', async () => {
    const { file } = await signedFile();
    const stranger = attemptOf('a-9');
    const swapped = {
      ...file,
      attempts: [file.attempts[0]!, { attempt: stranger, seal: await sealAttempt(stranger, subtle) }],
    };
    const { checks } = await verifyEvidence(swapped, new Map(), subtle);
    expect(checks).toContainEqual(
      expect.objectContaining({ verdict: 'broken', sentence: expect.stringContaining('a-9') }),
    );
    expect(checks).toContainEqual(
      expect.objectContaining({ verdict: 'unknown', sentence: expect.stringContaining('a-2') }),
    );
  });
});

describe('what may be signed', () => {
  const sound = recordOver([{ attempt: 'a-1', seal: '0'.repeat(64) }]);
  it('is a record with names, evidence and reasons', () => expect(recordIssues(sound)).toEqual([]));

  it.each([
    ['no assessor', 'assessor', ' ', 'assessor'],
    ['no reason', 'changes[0].reason', '  ', 'changes[0].reason'],
    ['more points than there are', 'changes[0].to', 10.5, 'changes[0].to'],
    ['points that are no number', 'changes[0].to', 'x', 'changes[0].to'],
    ['a mark that is not there', 'changes[0].mark', 'nothing', 'changes[0].mark'],
    ['no declaration', 'learner.declaration', null, 'learner.declaration'],
    ['evidence nobody weighed', 'rulesOfEvidence.currency', false, 'rulesOfEvidence.currency'],
    ['only a stopped attempt', 'evidence[0].marks', STOPPED, 'outcome'],
  ])('is not one with %s', (_, path, to, place) => {
    expect(recordIssues(altered(sound, path, to))).toEqual([expect.objectContaining({ path: place })]);
  });

  it('may be “not yet” without declaration, and over a stopped attempt', () => {
    const notYet = altered(altered(sound, 'outcome', 'notYet'), 'learner.declaration', null);
    expect(recordIssues(altered(notYet, 'evidence[0].marks', STOPPED))).toEqual([]);
  });

  it('counts the last change of a mark and keeps the first', () => {
    const first = { attempt: 'a-1', mark: 'groundPass', from: 6.5, to: 9, reason: 'x', at: AT };
    const changes = [first, { ...first, from: 9, to: 7 }];
    expect(pointsAfter({ changes }, 'a-1', MARKS.marks[0]!)).toBe(7);
    expect(pointsAfter({ changes }, 'a-2', MARKS.marks[0]!)).toBe(6.5);
    expect(totalAfter({ changes }, { attempt: 'a-1', marks: MARKS })).toBe(27);
  });
});

describe('an evidence file that is not one', () => {
  it('is refused with the place', async () => {
    const { file } = await signedFile();
    const cases: [string, unknown, string][] = [
      ['signed.record.outcome', 'perhaps', 'signed.record.outcome'],
      ['attempts[0].seal.links[3]', 'xyz', 'attempts[0].seal.links[3]'],
      ['version', 2, 'version'],
      ['extra', 1, 'extra'],
    ];
    for (const [path, to, place] of cases) {
      const parsed = parseEvidence(altered(file, path, to), readAttempt);
      expect(parsed).toMatchObject({ ok: false, issues: [{ path: place }] });
    }
  });

  it('gives the place of a bad attempt inside the file', async () => {
    const { file } = await signedFile();
    const parsed = parseEvidence(file, () => ({ ok: false, issues: [{ path: 'endMs', sentence: 'No.' }] }));
    expect(parsed).toMatchObject({ ok: false, issues: [{ path: 'attempts[0].attempt.endMs' }, {}] });
  });

  it('is told from other files and from no JSON at all', () => {
    expect(parseEvidenceText('{"format":"slot-and-riser/attempt"}', readAttempt)).toMatchObject({
      issues: [{ path: 'format', sentence: expect.stringContaining('slot-and-riser/attempt') }],
    });
    expect(parseEvidenceText('[1,', readAttempt).ok).toBe(false);
    expect(parseEvidenceText('null', readAttempt).ok).toBe(false);
  });

  it('keeps fields it does not know, so that their signature still holds', async () => {
    const { file } = await signedFile();
    const signer = await makeSigner(subtle);
    const { signedAt: _1, signedWith: _2, limits: _3, ...unsigned } = file.signed!.record;
    const later = altered(unsigned, 'evidence[0].marks.marks[0].witness', 'two people');
    const signed = await signRecord(later, signer, AT, subtle);
    const parsed = parseSigned(JSON.parse(JSON.stringify(signed)));
    expect(parsed.ok && (await verifySignature(parsed.value, subtle))).toBeNull();
  });
});
