import type { Attempt } from '../../attempt/entry.ts';
import { type EvidenceFile, isEvidence, parseEvidence } from '../../records/evidenceFile.ts';
import type { SignedRecord } from '../../records/sign.ts';
import { type KnownKeys, type Verification, verifyEvidence } from '../../records/verify.ts';
import { parseJsonText } from '../../scenario/jsonText.ts';
import type { Parsed, PartLibrary } from '../../scenario/scenario.ts';
import type { CheckedFile } from '../../screens/assessor/desk.ts';
import type { Store } from '../../store/store.ts';
import { askOf } from '../assessing/assessing.ts';
import { guarded, right } from './answers.ts';
import type { KeptAttempt } from './kept.ts';
import { replayedAgain } from './runs.ts';

/** Largest file looked into at the assessor's desk, characters. */
const MOST_OPENED = 60_000_000;

interface Inspected {
  readonly file: Pick<EvidenceFile, 'attempts' | 'signed'> | null;
  /** The bare attempts, sealed or not, each as it came and as it is read today. */
  readonly attempts: readonly KeptAttempt[];
  readonly verification: Verification;
}

/** Looks into a file somebody handed over: an evidence file, or one attempt without a seal. */
async function inspect(
  text: string,
  readAttempt: (input: unknown) => Parsed<Attempt>,
  known: KnownKeys,
): Promise<Parsed<Inspected>> {
  const json = parseJsonText(text, 'an evidence or attempt file', MOST_OPENED);
  if (!json.ok) return json;
  if (!isEvidence(json.value)) {
    const attempt = readAttempt(json.value);
    if (!attempt.ok) return attempt;
    return { ok: true, value: { file: null, attempts: [attempt.value].map(alike), verification: UNSEALED } };
  }
  const evidence = parseEvidence(json.value, readAttempt);
  if (!evidence.ok) return evidence;
  const verification = await verifyEvidence(evidence.value, known, crypto.subtle);
  const attempts = evidence.value.attempts.flatMap(({ attempt: asKept }) => {
    const read = readAttempt(asKept);
    return read.ok ? [{ attempt: read.value, asKept }] : [];
  });
  return { ok: true, value: { file: evidence.value, attempts, verification } };
}

const alike = (attempt: Attempt): KeptAttempt => ({ attempt, asKept: attempt });

const UNSEALED: Verification = {
  verdict: 'unsigned',
  checks: [
    {
      what: 'seal',
      verdict: 'unknown',
      where: '',
      sentence:
        'This attempt carries no seal: whether it was altered cannot be seen, except where doing it again gives something else.',
    },
  ],
};

export interface Checking {
  readonly parts: PartLibrary;
  readonly store: Store;
  readonly readAttempt: (input: unknown) => Parsed<Attempt>;
}

export async function check(file: File, around: Checking): Promise<Parsed<CheckedFile>> {
  const known = new Map(
    (await around.store.keys.list()).map(({ fingerprint, owner }) => [fingerprint, owner]),
  );
  const looked = await inspect(await file.text(), around.readAttempt, known);
  if (!looked.ok) return looked;
  const { attempts, verification } = looked.value;
  const signed = looked.value.file?.signed ?? null;
  return right({
    name: file.name,
    verification,
    replays: await Promise.all(
      attempts.map(async ({ attempt }) => ({
        attempt: attempt.id,
        ...(await replayedAgain(attempt, around.parts)),
      })),
    ),
    signed,
    attempts: attempts.map(({ attempt: { id, learner, scenario } }) => ({
      id,
      learner,
      job: scenario.public.card.unit,
    })),
    keep: () => guarded(() => keep(attempts, signed, around)),
  });
}

/** What is here already stays as it is; the rest is added. */
async function keep(
  attempts: readonly KeptAttempt[],
  signed: SignedRecord | null,
  { parts, store }: Checking,
): Promise<Parsed<string>> {
  const here = new Set((await store.list()).map(({ id }) => id));
  const fresh = attempts.filter(({ attempt: { id } }) => !here.has(id));
  for (const { attempt, asKept } of fresh) await store.add(asKept, await askOf('result', attempt, parts));
  const records = new Set((await store.records.list()).map(({ id }) => id));
  const isNew = signed !== null && !records.has(signed.record.id);
  if (isNew) {
    const { id, learner, outcome, signedAt } = signed.record;
    const thing = { id, title: `${learner.name}: ${outcome}`, changedAt: signedAt, value: signed };
    await store.records.put(thing, 0);
  }
  const already = attempts.length - fresh.length;
  const kept = [`${fresh.length} attempt${fresh.length === 1 ? '' : 's'} kept`];
  if (already > 0) kept.push(`${already} already here and left as before`);
  if (signed !== null) kept.push(isNew ? 'the record kept' : 'the record was already here');
  return right(`${kept.join(', ')}.`);
}
