import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { assess } from '../../src/assess/assess.ts';
import { replayFile } from '../../src/cli/support/replay.ts';
import { type EvidenceFile, evidenceFile } from '../../src/records/evidenceFile.ts';
import { sealAttempt } from '../../src/records/seal.ts';
import { makeSigner, type SignedRecord, signRecord } from '../../src/records/sign.ts';
import { expertAttempt, library, scenarioWith } from '../assess/attempts.ts';
import { altered } from '../records/support/alter.ts';
import { recordOver } from '../records/support/attempt.ts';

const { subtle } = crypto;
const attempt = {
  ...expertAttempt(scenarioWith([{ kind: 'openCoil', coil: 9 }])).attempt,
  learner: 'T. Okafor',
};
const marks = assess(attempt, library);

let folder: string;
let signed: SignedRecord;
let file: EvidenceFile;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'slot-and-riser-'));
  const seal = await sealAttempt(attempt, subtle);
  const record = recordOver([{ attempt: attempt.id, seal: seal.end, marks }]);
  const at = marks.marks.find(({ id }) => id === 'groundPass')!;
  const changes = [{ ...record.changes[0]!, from: at.earned, to: at.earned - 2 }];
  signed = await signRecord({ ...record, changes }, await makeSigner(subtle), '2026-03-02T11:00:00Z', subtle);
  file = evidenceFile([{ attempt, seal }], signed);
});
afterAll(() => rmSync(folder, { recursive: true }));

function replayed(content: unknown) {
  const path = join(folder, 'evidence.json');
  writeFileSync(path, JSON.stringify(content, null, 1));
  return replayFile([path]);
}
const resealed = async (forged: EvidenceFile): Promise<EvidenceFile> =>
  altered(forged, 'attempts[0].seal', await sealAttempt(forged.attempts[0]!.attempt, subtle));

describe('replay of a signed record with its evidence', () => {
  it('finds seal, signature and replay in order, and prints marks, changes and the key to compare', async () => {
    const { out, err, code } = await replayed(file);
    expect({ err, code }).toEqual({ err: [], code: 0 });
    expect(out[0]).toMatch(/^Attempt a-0001: T\. Okafor, Starter, 2025/);
    expect(out).toContainEqual(
      expect.stringMatching(new RegExp(`^Marks: ${marks.earned} of ${marks.of}\\.`)),
    );
    expect(out).toContain('The replay agreed with the record.');
    expect(out).toContainEqual(expect.stringMatching(/: 10 became 8 of 10\. The other nine bars/));
    expect(out).toContain(`Key: ${signed.record.signedWith.fingerprint}`);
    for (const what of ['seal', 'signature', 'belongs'])
      expect(out).toContainEqual(expect.stringMatching(new RegExp(`^Holds, ${what}: `)));
  });

  it('names the changed place of an attempt', async () => {
    const forged = altered(file, 'attempts[0].attempt.entries[40].atMs', attempt.entries[40]!.atMs + 1);
    const { err, code } = await replayed(forged);
    expect(code).toBe(1);
    expect(err[0]).toMatch(/^Altered, seal \(attempts\[0\]\.entries\[40\]\.atMs\): This attempt was altered/);
  });

  it('finds an attempt that was altered and sealed anew', async () => {
    const glow = altered(file, 'attempts[0].attempt.entries[200].before.lamp.glow', 5);
    const { err, code } = await replayed(await resealed(glow));
    expect(code).toBe(1);
    expect(err[0]).toMatch(/^Altered, belongs \(attempts\[0\]\): .* was altered and sealed anew\.$/);
    expect(err[1]).toMatch(
      /^The replay does not agree with the record: at entry 200, before\.lamp\.glow is 5/,
    );
  });

  it('finds a record that was altered, with the place', async () => {
    const { err } = await replayed(altered(file, 'signed.record.outcome', 'notYet'));
    expect(err).toEqual([expect.stringMatching(/^Altered, signature \(signed\.record\.outcome\): /)]);
  });

  it('finds marks that do not follow from the attempt, though they were signed', async () => {
    const generous = marks.marks.map((mark) => (mark.id === 'stripPass' ? { ...mark, earned: 3 } : mark));
    const record = recordOver([
      { attempt: attempt.id, seal: file.attempts[0]!.seal.end, marks: { ...marks, marks: generous } },
    ]);
    const again = await signRecord(record, await makeSigner(subtle), '2026-03-02T11:00:00Z', subtle);
    const { err, code } = await replayed(evidenceFile(file.attempts, again));
    expect(code).toBe(1);
    expect(err).toEqual([
      expect.stringMatching(/^The record’s marks are not .* is 3 in the record, and 10 /),
    ]);
  });

  it('names the place of what is no record at all', async () => {
    const { out, err, code } = await replayed(altered(file, 'attempts[0].attempt.entries[3].n', 7));
    expect({ out, code }).toEqual({ out: [], code: 1 });
    expect(err[0]).toMatch(
      /^evidence\.json: attempts\[0\]\.attempt\.entries\[3\]\.n: Expected 3, but 7 came\.$/,
    );
  });
});

it('a record signed when marks had tenths still comes to what was signed', async () => {
  const path = fileURLToPath(new URL('old/signed-in-tenths.json', import.meta.url));
  const { out, err, code } = await replayFile([path]);
  expect({ err, code }).toEqual({ err: [], code: 0 });
  expect(out).toContainEqual(expect.stringMatching(/^Marks: 37\.6 of 202\.7\./));
  expect(out).toContainEqual(expect.stringMatching(/^Holds, signature: /));
});

it('a sealed attempt nobody signed is played, and what cannot be told is said', async () => {
  const { out, err, code } = await replayed({ ...file, signed: null });
  expect({ err, code }).toEqual({ err: [], code: 0 });
  expect(out).toContainEqual(
    expect.stringMatching(/^Cannot be told, signature: Nobody has signed this file/),
  );
});
