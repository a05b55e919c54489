import type { Attempt } from '../../attempt/entry.ts';
import { parseAttempt } from '../../attempt/parse.ts';
import { WORKSHOP_CRITERIA } from '../../records/criteria.ts';
import { parseDraft } from '../../records/draft.ts';
import { parseSigned } from '../../records/evidenceFile.ts';
import type { Parsed } from '../../scenario/scenario.ts';
import type { AssessorDesk } from '../../screens/assessor/desk.ts';
import type { KeptKey, Store } from '../../store/store.ts';
import type { Library } from '../library.ts';
import { createSafe } from '../safe.ts';
import { guarded, now, right } from './answers.ts';
import { check } from './checking.ts';
import { attemptFile, listFile, recordFile } from './files.ts';
import type { Kept } from './kept.ts';
import { finished, signedRecords } from './lists.ts';
import { expertRun, findingsOf, openedOf } from './runs.ts';
import { begin, keepDraft, knownOf, makeKey, sign } from './signing.ts';

export interface AssessorDeskInput {
  readonly library: Library;
  readonly store: Store;
  readonly mountReplay: AssessorDesk['mountReplay'];
}

/** Everything the assessor's screens ask for, answered from this browser. */
export function createAssessorDesk({ library, store, mountReplay }: AssessorDeskInput): AssessorDesk {
  const { parts } = library;
  const readAttempt = (input: unknown) => parseAttempt(input, parts);
  const kept: Kept = async (id) => {
    const asKept = await store.read(id);
    const read = readAttempt(asKept);
    return read.ok ? right({ attempt: read.value, asKept: asKept as Attempt }) : read;
  };
  const stored = async (id: string): Promise<Parsed<Attempt>> => readAttempt(await store.read(id));

  return {
    criteria: [WORKSHOP_CRITERIA],
    safe: createSafe(store, parts),
    mountReplay,
    attempts: () => guarded(async () => right(await finished(store))),
    open: (id) =>
      guarded(async () => {
        const read = await stored(id);
        return read.ok ? right(openedOf(read.value, parts)) : read;
      }),
    judge: (id) =>
      guarded(async () => {
        const read = await stored(id);
        return read.ok ? right(await findingsOf(read.value, parts)) : read;
      }),
    expertRun: (id) =>
      guarded(async () => {
        const read = await stored(id);
        return read.ok ? right(await expertRun(read.value, parts)) : read;
      }),

    drafts: () =>
      guarded(async () =>
        right((await store.drafts.list()).map(({ id, title, changedAt }) => ({ id, title, changedAt }))),
      ),
    begin: (ids) => guarded(() => begin(ids, store)),
    draft: (id) =>
      guarded(async () => {
        const { value, revision } = await store.drafts.read(id);
        const draft = parseDraft(value);
        return draft.ok ? right({ draft: draft.value, revision }) : draft;
      }),
    save: (draft, since) => guarded(async () => right(await keepDraft(draft, since, store))),
    discard: (id) =>
      guarded(async () => {
        await store.drafts.remove(id);
        return right(null);
      }),
    sign: (draft, fingerprint) => guarded(() => sign(draft, fingerprint, { parts, store, kept })),

    records: () => guarded(() => signedRecords(store)),
    record: (id) => guarded(async () => parseSigned((await store.records.read(id)).value)),
    recordFile: (id, form) =>
      guarded(async () => {
        const signed = parseSigned((await store.records.read(id)).value);
        return signed.ok ? recordFile(signed.value, form, kept) : signed;
      }),
    attemptFile: (id, form) =>
      guarded(async () => {
        const read = await kept(id);
        return read.ok ? right(await attemptFile(read.value, form, parts)) : read;
      }),
    listFile: (ids) =>
      guarded(async () => {
        const chosen = (await finished(store)).filter(({ id }) => ids.includes(id));
        return right(listFile(chosen));
      }),
    check: (file) => guarded(() => check(file, { parts, store, readAttempt })),

    keys: () => guarded(async () => right((await store.keys.list()).map(knownOf))),
    makeKey: (owner) => guarded(() => makeKey(owner, store)),
    trust: (signed, owner) =>
      guarded(async () => {
        const { publicKey, fingerprint } = signed.record.signedWith;
        const key: KeptKey = { fingerprint, publicKey, owner, madeAt: now(), privateKey: null };
        await store.keys.add(key);
        return right(knownOf(key));
      }),
    forget: (fingerprint) =>
      guarded(async () => {
        await store.keys.remove(fingerprint);
        return right(null);
      }),
  };
}
