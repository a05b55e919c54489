import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { answer, type Question } from '../../src/app/assessing/answers.ts';
import { createAssessorDesk } from '../../src/app/assessor/desk.ts';
import { assess } from '../../src/assess/assess.ts';
import type { Attempt } from '../../src/attempt/entry.ts';
import type { Draft } from '../../src/records/draft.ts';
import type { EvidenceFile } from '../../src/records/evidenceFile.ts';
import { sealAttempt } from '../../src/records/seal.ts';
import { BUILT_IN_RUBRIC, type Rubric } from '../../src/scenario/public/rubric.ts';
import type { Parsed } from '../../src/scenario/scenario.ts';
import type { AssessorDesk } from '../../src/screens/assessor/desk.ts';
import { openBrowserStore } from '../../src/store/browserStore.ts';
import type { Store } from '../../src/store/store.ts';
import { altered } from '../records/support/alter.ts';
import { expertRun, library as parts } from '../records/support/expertRun.ts';

const attempt = { ...expertRun('q-0a6d'), id: 'a-1', learner: 'T. Okafor' };
const marks = assess(attempt, parts);
const library = { parts, scenarios: new Map(), problems: [] };
const mountReplay: AssessorDesk['mountReplay'] = () => () => undefined;

let store: Store;
let desk: AssessorDesk;

async function freshDesk(): Promise<void> {
  globalThis.indexedDB = new IDBFactory();
  store = await openBrowserStore();
  desk = createAssessorDesk({ library, store, mountReplay });
}

beforeEach(async () => {
  await freshDesk();
  await store.add(attempt, { state: 'handedIn', earned: marks.earned, of: marks.of });
});

async function got<T>(answer: Promise<Parsed<T>>): Promise<T> {
  const found = await answer;
  if (!found.ok) throw new Error(found.issues.map(({ path, sentence }) => `${path}: ${sentence}`).join('\n'));
  return found.value;
}

/** A draft with everything a signature needs, one mark changed. */
async function readyDraft(): Promise<Draft> {
  const id = await got(desk.begin(['a-1']));
  const { draft, revision } = await got(desk.draft(id));
  const ready: Draft = {
    ...draft,
    assessor: 'R. Lindqvist',
    supervisedBy: 'M. Hale',
    learner: {
      ...draft.learner,
      identifiedBy: 'Known',
      declaration: { text: 'Own work.', at: '2026-03-02' },
    },
    changes: [
      { attempt: 'a-1', mark: 'lookedFirst', from: 4, to: 3, reason: 'Hurried.', at: '2026-03-02T10:00:00Z' },
    ],
    rulesOfEvidence: { validity: true, sufficiency: true, authenticity: true, currency: true },
    outcome: 'competent',
  };
  await got(desk.save(ready, revision));
  return ready;
}

async function signedFile(): Promise<EvidenceFile> {
  const { fingerprint } = await got(desk.makeKey('R. Lindqvist'));
  const id = await got(desk.sign(await readyDraft(), fingerprint));
  return JSON.parse((await got(desk.recordFile(id, 'evidence'))).text) as EvidenceFile;
}

const handOver = (file: EvidenceFile) => desk.check(new File([JSON.stringify(file)], 'record.json'));

describe('the assessor’s desk over the real store and bench', () => {
  it('lists a finished attempt, opens it, and has the expert do the same job', async () => {
    const [listed] = await got(desk.attempts());
    expect(listed).toMatchObject({ id: 'a-1', learner: 'T. Okafor', state: 'handedIn', record: null });
    const opened = await got(desk.open('a-1'));
    expect(opened.attempt.entries).toEqual(attempt.entries);
    const found = await got(desk.judge('a-1'));
    expect(found.marks).toEqual(marks);
    expect(found.replay.agreed).toBe(true);
    const expert = await got(desk.expertRun('a-1'));
    expect(expert.attempt.entries).toHaveLength(attempt.entries.length);
    expect(await desk.open('nothing')).toMatchObject({ ok: false });
  });

  it('signs, puts the draft away, and shows the record beside the attempt', async () => {
    const { fingerprint } = await got(desk.makeKey('R. Lindqvist'));
    const id = await got(desk.sign(await readyDraft(), fingerprint));
    expect(await got(desk.drafts())).toEqual([]);
    expect((await got(desk.attempts()))[0]?.record).toMatchObject({ id, outcome: 'competent' });
    const { record } = await got(desk.record(id));
    expect(record.evidence[0]?.marks).toEqual(marks);
    expect(record.changes).toHaveLength(1);
    expect((await got(desk.recordFile(id, 'table'))).text).toContain('4 to 3: Hurried.');
    expect(JSON.parse((await got(desk.recordFile(id, 'statements'))).text).length).toBeGreaterThan(10);
  });

  it('says what a record lacks before it can be signed, and signs nothing', async () => {
    const { fingerprint } = await got(desk.makeKey('R. Lindqvist'));
    const ready = await readyDraft();
    const undecided = await desk.sign({ ...ready, outcome: null }, fingerprint);
    expect(undecided).toMatchObject({ ok: false, issues: [{ path: 'outcome' }] });
    const unnamed = await desk.sign({ ...ready, assessor: ' ' }, fingerprint);
    expect(unnamed).toMatchObject({ ok: false, issues: [{ path: 'assessor' }] });
    expect(await desk.sign(ready, 'no such key')).toMatchObject({
      ok: false,
      issues: [{ path: 'signedWith' }],
    });
    expect(await got(desk.records())).toEqual([]);
  });

  it('does not overwrite a draft changed in another window', async () => {
    const ready = await readyDraft();
    expect(await desk.save(ready, 1)).toMatchObject({
      ok: false,
      issues: [{ sentence: expect.stringContaining('another window') }],
    });
  });

  it('finds a file as it was signed, and at another desk keeps it and comes to know the key', async () => {
    const file = await signedFile();
    expect((await got(handOver(file))).verification.verdict).toBe('intact');
    await freshDesk();
    const checked = await got(handOver(file));
    expect(checked.verification.checks).toContainEqual(
      expect.objectContaining({ what: 'key', verdict: 'unknown' }),
    );
    expect(await got(checked.keep())).toBe('1 attempt kept, the record kept.');
    expect(await got(checked.keep())).toContain('already here');
    await got(desk.trust(checked.signed!, 'R. Lindqvist'));
    const again = await got(handOver(file));
    expect(again.verification.checks.every(({ verdict }) => verdict === 'holds')).toBe(true);
  });

  it('says who supervised while the fault was on the learner’s machine', async () => {
    await freshDesk();
    await store.add({ ...attempt, mode: 'assessed' }, { state: 'handedIn', earned: 1, of: 1 });
    const file = await signedFile();
    const item = file.signed!.record.evidence[0]!;
    expect(item.mode).toBe('assessed');
    expect(item.supervision).toBe('The fault was on the learner’s machine; supervised by M. Hale.');
    const nobody = await desk.sign({ ...(await readyDraft()), supervisedBy: ' ' }, 'any');
    expect(nobody).toMatchObject({ ok: false, issues: [{ path: 'supervisedBy' }] });
  });

  it('prints how the rubric was changed into the record', async () => {
    const criteria = BUILT_IN_RUBRIC.criteria.filter(({ criterion }) => criterion !== 'keptCool');
    const rubric: Rubric = { ...BUILT_IN_RUBRIC, name: 'Evening class', version: 2, criteria };
    const scenario = { ...attempt.scenario, public: { ...attempt.scenario.public, rubric } };
    await freshDesk();
    await store.add({ ...attempt, scenario }, { state: 'handedIn', earned: 1, of: 1 });
    const { signed } = await signedFile();
    expect(signed!.record.evidence[0]!.rubricChanges).toEqual([
      'Marked by “Evening class”, version 2.',
      '“Nothing overheated” is not marked; built in: 2 points.',
    ]);
    expect(signed!.record.evidence[0]!.marks.marks.map(({ id }) => id)).not.toContain('keptCool');
  });

  it('seals an attempt of an older version as it lies in the store', async () => {
    const old = { ...attempt, scenario: { ...attempt.scenario, version: 2 } } as unknown as Attempt;
    await freshDesk();
    await store.add(old, { state: 'handedIn', earned: marks.earned, of: marks.of });
    const file = await signedFile();
    expect(file.attempts[0]!.attempt.scenario).toEqual(old.scenario);
    const checked = await got(handOver(file));
    expect(checked.verification.verdict).toBe('intact');
    expect(checked.replays[0]!.agreed).toBe(true);
  });

  it('names the place of an alteration, also when the chain was recomputed', async () => {
    const file = await signedFile();
    const path = 'attempts[0].attempt.entries[20].atMs';
    const forged = altered(file, path, file.attempts[0]!.attempt.entries[20]!.atMs + 1);
    const plain = await got(handOver(forged));
    expect(plain.verification.checks).toContainEqual(
      expect.objectContaining({ verdict: 'broken', where: 'attempts[0].entries[20].atMs' }),
    );
    const seal = await sealAttempt(forged.attempts[0]!.attempt, crypto.subtle);
    const resealed = await got(handOver(altered(forged, 'attempts[0].seal', seal)));
    expect(resealed.verification.verdict).toBe('altered');
    expect(resealed.verification.checks).toContainEqual(
      expect.objectContaining({ what: 'belongs', verdict: 'broken' }),
    );
  });

  it('takes a bare attempt for what it is, and refuses what is no such file', async () => {
    const bare = await got(desk.check(new File([JSON.stringify(attempt)], 'attempt.json')));
    expect(bare.verification.verdict).toBe('unsigned');
    expect(bare.replays).toEqual([expect.objectContaining({ attempt: 'a-1', agreed: true })]);
    expect(await desk.check(new File(['{}'], 'x.json'))).toMatchObject({ ok: false });
    expect(await desk.check(new File(['{"a":'], 'x.json'))).toMatchObject({ ok: false });
  });

  it('goes on after a page that went away between keeping the record and putting the draft away', async () => {
    const { fingerprint } = await got(desk.makeKey('R. Lindqvist'));
    const ready = await readyDraft();
    const id = await got(desk.sign(ready, fingerprint));
    await store.drafts.put({ id: ready.id, title: 'left over', changedAt: '', value: ready }, 0);
    expect(await got(desk.sign(ready, fingerprint))).toBe(id);
    expect(await got(desk.drafts())).toEqual([]);
    expect(await got(desk.records())).toHaveLength(1);
  });
});

/** Answers as a worker would: question and answer cross over as copies, and the page goes on meanwhile. */
class WorkerInName {
  static asked: string[] = [];
  onmessage: ((event: { data: unknown }) => void) | null = null;

  postMessage(asked: { nth: number; question: Question }): void {
    const { nth, question } = structuredClone(asked);
    WorkerInName.asked.push(question.ask);
    setTimeout(() => this.onmessage?.({ data: structuredClone({ nth, answer: answer(question) }) }));
  }
}

describe('where there are workers', () => {
  afterEach(() => vi.unstubAllGlobals());

  it('everything that plays or judges an attempt is done there, and comes out as on the spot', async () => {
    const alone = await got(desk.judge('a-1'));
    vi.stubGlobal('Worker', WorkerInName);
    await got(desk.open('a-1'));
    expect(WorkerInName.asked).toEqual([]);
    expect(await got(desk.judge('a-1'))).toEqual(alone);
    expect(WorkerInName.asked.sort()).toEqual(['debrief', 'replay']);
    const run = await got(desk.expertRun('a-1'));
    expect(WorkerInName.asked.at(-1)).toBe('expert');
    expect(run.attempt.entries.length).toBeGreaterThan(50);
    await got(desk.attemptFile('a-1', 'marks'));
    expect(WorkerInName.asked.at(-1)).toBe('debrief');
  });
});
