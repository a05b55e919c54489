import { rubricChanges } from '../../assess/procedure/rubricChanges.ts';
import { WORKSHOP_CRITERIA } from '../../records/criteria.ts';
import { type Draft, recordOf, startDraft } from '../../records/draft.ts';
import type { EvidenceItem } from '../../records/record.ts';
import { recordIssues } from '../../records/recordRules.ts';
import { sealAttempt } from '../../records/seal.ts';
import { makeSigner, signRecord } from '../../records/sign.ts';
import { rubricOf } from '../../scenario/public/rubric.ts';
import type { Parsed, PartLibrary } from '../../scenario/scenario.ts';
import type { KnownKey } from '../../screens/assessor/desk.ts';
import type { KeptKey, Store } from '../../store/store.ts';
import { askOf } from '../assessing/assessing.ts';
import { now, right, wrong } from './answers.ts';
import type { Kept, KeptAttempt } from './kept.ts';
import { finished } from './lists.ts';
import { replayedAgain } from './runs.ts';

export async function begin(ids: readonly string[], store: Store): Promise<Parsed<string>> {
  const chosen = (await finished(store)).filter(({ id }) => ids.includes(id));
  const [first] = chosen;
  if (first === undefined)
    return wrong('', 'Expected at least one finished attempt, but none was found here.');
  const own = (await store.keys.list()).find(({ privateKey }) => privateKey !== null);
  const draft = startDraft({
    id: crypto.randomUUID(),
    attempts: chosen.map(({ id }) => id),
    learner: first.learner.trim(),
    assessor: own?.owner ?? '',
    criteria: WORKSHOP_CRITERIA,
  });
  await keepDraft(draft, 0, store);
  return right(draft.id);
}

export function keepDraft(draft: Draft, since: number, store: Store): Promise<number> {
  const count = draft.attempts.length === 1 ? '1 attempt' : `${draft.attempts.length} attempts`;
  const title = `${draft.learner.name.trim() || 'No name given'}, ${count}`;
  return store.drafts.put({ id: draft.id, title, changedAt: now(), value: draft }, since);
}

export interface Signing {
  readonly parts: PartLibrary;
  readonly store: Store;
  readonly kept: Kept;
}

export async function sign(
  draft: Draft,
  fingerprint: string,
  { parts, store, kept }: Signing,
): Promise<Parsed<string>> {
  if ((await store.records.list()).some(({ id }) => id === draft.id)) return alreadySigned(draft, store);
  const evidence: EvidenceItem[] = [];
  for (const id of draft.attempts) {
    const read = await kept(id);
    if (!read.ok) return read;
    evidence.push(await evidenceItem(read.value, parts));
  }
  const record = recordOf(draft, evidence);
  if (!record.ok) return record;
  const issues = recordIssues(record.value);
  if (issues.length > 0) return { ok: false, issues };
  const key = (await store.keys.list()).find((one) => one.fingerprint === fingerprint);
  if (key === undefined || key.privateKey === null)
    return wrong('signedWith', `Expected a key of this browser, but ${fingerprint} cannot sign here.`);
  const signer = { ...key, privateKey: key.privateKey };
  const signed = await signRecord(record.value, signer, now(), crypto.subtle);
  const title = `${draft.learner.name}: ${signed.record.outcome}`;
  await store.records.put({ id: draft.id, title, changedAt: signed.record.signedAt, value: signed }, 0);
  await store.drafts.remove(draft.id);
  return right(draft.id);
}

/** The page went away between keeping the record and putting the draft away. */
async function alreadySigned(draft: Draft, store: Store): Promise<Parsed<string>> {
  await store.drafts.remove(draft.id);
  return right(draft.id);
}

async function evidenceItem({ attempt, asKept }: KeptAttempt, parts: PartLibrary): Promise<EvidenceItem> {
  const seal = await sealAttempt(asKept, crypto.subtle);
  const { public: job } = attempt.scenario;
  return {
    attempt: attempt.id,
    seal: seal.end,
    jobId: job.id,
    job: job.card.unit,
    startedAt: attempt.startedAt,
    mode: attempt.mode,
    marks: (await askOf('debrief', attempt, parts)).marks,
    rubricChanges: rubricChanges(rubricOf(attempt.scenario.public)),
    replay: await replayedAgain(attempt, parts),
  };
}

export async function makeKey(owner: string, store: Store): Promise<Parsed<KnownKey>> {
  if (owner.trim() === '') return wrong('owner', 'Expected the name of the key’s owner, but nothing came.');
  const { privateKey, publicKey, fingerprint } = await makeSigner(crypto.subtle);
  const key: KeptKey = {
    fingerprint,
    publicKey,
    owner: owner.trim(),
    madeAt: now(),
    privateKey: privateKey as CryptoKey,
  };
  await store.keys.add(key);
  return right(knownOf(key));
}

export const knownOf = ({ fingerprint, owner, madeAt, privateKey }: KeptKey): KnownKey => ({
  fingerprint,
  owner,
  madeAt,
  canSign: privateKey !== null,
});
