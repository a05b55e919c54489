import { type Attempt, MOST_ATTEMPT_CHARS, NEW_ATTEMPT } from '../attempt/entry.ts';
import type { RemedyDone } from '../bench/guide/guide.ts';
import type { SheetLine } from '../bench/paper.ts';
import { type LocalBench, openLocalBench, resumeLocalBench } from '../link/localBench.ts';
import { jobOf } from '../scenario/public/view.ts';
import type { Issue, Parsed, Scenario } from '../scenario/scenario.ts';
import type { AttemptSummary, DebriefData, Desk, JobSummary, OpenBench } from '../screens/shell.ts';
import {
  type AttemptResult,
  type AttemptStore,
  type AttemptSummary as Kept,
  StoreRefused,
} from '../store/attemptStore.ts';
import { type Journal, makeGood } from '../store/journal.ts';
import type { Store } from '../store/store.ts';
import { holdAttempt } from '../store/windows.ts';
import { askOf } from './assessing/assessing.ts';
import { browserClock } from './clock.ts';
import { boardJobs } from './instructor/board.ts';
import { type KeptBench, keepBench } from './keptBench.ts';
import type { Library } from './library.ts';
import { setOutPicture } from './picture.ts';
import { saveSettings } from './settings.ts';
import { mountReplay, surround } from './surround.ts';

export interface DeskInput {
  readonly library: Library;
  readonly store: Store;
  readonly journal: Journal;
  /** Told when an act could not be kept. */
  readonly onTrouble: (sentence: string) => void;
}

/** Everything the screens ask for, answered from this browser. */
export function createDesk({ library, store, journal, onTrouble }: DeskInput): Desk {
  const running = new Map<string, KeptBench>();

  /** Begun here and not yet worked on: known without being read and checked again. */
  const fresh = new Map<string, Attempt>();

  const readAttempt = async (id: string): Promise<Parsed<Attempt>> => {
    const stored = await store.read(id);
    const begun = fresh.get(id);
    fresh.delete(id);
    if (begun && hasNoEntries(stored)) return right(begun);
    const { parseAttempt } = await import('../attempt/parse.ts');
    return parseAttempt(stored, library.parts);
  };

  const open = (bench: LocalBench, alreadyKept: number, letGo: () => void): OpenBench => {
    const attempt = bench.attempt();
    const kept = keepBench(bench, alreadyKept, {
      store,
      journal,
      resultOf: (closed) => resultOf(closed, library),
      onTrouble: (error) => onTrouble(sentenceOf(error)),
    });
    running.set(attempt.id, kept);
    const job = jobOf(attempt.scenario, library.parts);
    const around = surround(job);
    return {
      job,
      port: kept.port,
      written: linesOf(attempt),
      verdicts: lastVerdicts(attempt),
      remedies: remediesOf(attempt),
      mountScene: around.mountScene,
      setMuted: around.setMuted,
      captions: around.captions,
      overhear: (listener) => bench.overhear(listener),
      close() {
        around.close();
        kept.close();
        void kept.settled().then(letGo);
      },
    };
  };

  const openOrResume = async (id: string): Promise<Parsed<{ bench: LocalBench; kept: number }>> => {
    const read = await readAttempt(id);
    if (!read.ok) return read;
    const { parts } = library;
    const kept = read.value.entries.length;
    if (kept === 0) return right({ bench: openLocalBench(read.value, parts, browserClock), kept });
    const resumed = resumeLocalBench(read.value, parts, browserClock);
    if (resumed.ok) return right({ bench: resumed.bench, kept });
    return wrong(`entries[${resumed.firstDivergence.n}]`, divergenceSentence(resumed.firstDivergence));
  };

  return {
    jobs: () => board(library, store),
    begin: (jobId, learner) =>
      guarded(async () => {
        const begun = await begin(jobId, learner, library, store);
        if (!begun.ok) return begun;
        fresh.set(begun.value.id, begun.value);
        return right(begun.value.id);
      }),
    setOut: setOutPicture,
    bench: (id) =>
      guarded(async () => {
        await running.get(id)?.settled();
        const letGo = await holdAttempt(id);
        if (letGo === null) return wrong('', 'This attempt is at the bench in another window: go on there.');
        await makeGood(id, journal, store);
        const opened = await openOrResume(id);
        if (!opened.ok) letGo();
        return opened.ok ? right(open(opened.value.bench, opened.value.kept, letGo)) : opened;
      }),
    debrief: (id) =>
      guarded(async () => {
        await running.get(id)?.settled();
        const read = await readAttempt(id);
        return read.ok ? right(await debriefOf(read.value, library)) : read;
      }),
    evidence: (id) =>
      guarded(async () => {
        const read = await readAttempt(id);
        return read.ok ? right(await askOf('evidence', read.value, library.parts)) : read;
      }),
    importFile: (file) => guarded(() => importFile(file, library, store)),
    exportAttempt: (id) =>
      guarded(async () => {
        await running.get(id)?.settled();
        const read = await readAttempt(id);
        if (!read.ok) return read;
        return right({
          name: `attempt-${id.slice(0, 8)}.json`,
          text: `${JSON.stringify(read.value, null, 1)}\n`,
        });
      }),
    assessor: async () => {
      const { createAssessorDesk } = await import('./assessor/desk.ts');
      return createAssessorDesk({ library, store, mountReplay });
    },
    instructor: async () => {
      const { createInstructorDesk } = await import('./instructor/desk.ts');
      return createInstructorDesk({ library, store });
    },
    saveSettings,
  };
}

function right<T>(value: T): Parsed<T> {
  return { ok: true, value };
}

function wrong<T>(path: string, sentence: string): Parsed<T> {
  const issues: readonly Issue[] = [{ path, sentence }];
  return { ok: false, issues };
}

function sentenceOf(error: unknown): string {
  return error instanceof StoreRefused
    ? error.message
    : `Something went wrong that should not have: ${String(error)}.`;
}

/** What the store refuses reaches the screen as an issue; our own mistakes still go to the console. */
async function guarded<T>(work: () => Promise<Parsed<T>>): Promise<Parsed<T>> {
  try {
    return await work();
  } catch (error) {
    if (!(error instanceof StoreRefused)) console.error(error);
    return wrong('', sentenceOf(error));
  }
}

async function board(library: Library, store: Store): Promise<readonly JobSummary[]> {
  const kept = [...(await store.list())].sort((a, b) => b.startedAt.localeCompare(a.startedAt));
  const made = await boardJobs(store, library.parts);
  return boardOf(library, made, kept);
}

/**
 * The board: every job with its attempts.
 * @param made jobs of this browser's instructor, which hang first
 * @param kept attempts of this browser, newest first
 */
export function boardOf(
  library: Library,
  made: readonly Scenario[] = [],
  kept: readonly Kept[] = [],
): readonly JobSummary[] {
  return [...made, ...library.scenarios.values()].map((scenario) => ({
    job: jobOf(scenario, library.parts),
    attempts: kept.filter((one) => one.scenarioId === scenario.public.id).map(summaryOf),
  }));
}

function summaryOf({ id, startedAt, endMs, result }: Kept): AttemptSummary {
  return {
    id,
    startedAt,
    endMs,
    state: result?.state ?? 'running',
    earned: result?.earned ?? null,
    of: result?.of ?? null,
  };
}

async function begin(
  jobId: string,
  learner: string,
  library: Library,
  store: Store,
): Promise<Parsed<Attempt>> {
  const made = await boardJobs(store, library.parts);
  const scenario: Scenario | undefined =
    made.find((one) => one.public.id === jobId) ?? library.scenarios.get(jobId);
  if (!scenario) return wrong('', `There is no job ${jobId} on the board.`);
  const id = crypto.randomUUID();
  const start = { id, learner, mode: scenario.public.mode, startedAt: new Date().toISOString(), scenario };
  const header = { ...NEW_ATTEMPT, ...start, endMs: 0 } as const;
  await store.begin(header);
  return right({ ...header, entries: [] });
}

function hasNoEntries(stored: unknown): boolean {
  const { entries } = (stored ?? {}) as { readonly entries?: unknown };
  return Array.isArray(entries) && entries.length === 0;
}

async function importFile(
  file: File,
  library: Library,
  store: AttemptStore,
): Promise<Parsed<AttemptSummary>> {
  if (file.size > MOST_ATTEMPT_CHARS) {
    return wrong(
      '',
      `Expected an attempt file of at most ${MOST_ATTEMPT_CHARS / 1e6} MB, but one of ${(file.size / 1e6).toFixed(1)} MB came.`,
    );
  }
  const { parseAttemptText } = await import('../attempt/parse.ts');
  const read = parseAttemptText(await file.text(), library.parts);
  if (!read.ok) return read;
  const result = await askOf('result', read.value, library.parts);
  await store.add(read.value, result);
  const { id, startedAt, endMs } = read.value;
  return right(
    summaryOf({ id, startedAt, endMs, result, scenarioId: '', mode: read.value.mode, learner: '' }),
  );
}

/** Of an attempt that is over. */
async function resultOf(attempt: Attempt, { parts }: Library): Promise<AttemptResult> {
  const result = await askOf('result', attempt, parts);
  if (result === null) throw new Error('An attempt that was neither handed in nor stopped was closed.');
  return result;
}

async function debriefOf(attempt: Attempt, library: Library): Promise<DebriefData> {
  const [judged, { isAbout, toldByTests }] = await Promise.all([
    askOf('debrief', attempt, library.parts),
    import('../assess/toldByTests.ts'),
  ]);
  return {
    job: jobOf(attempt.scenario, library.parts),
    attempt,
    ...judged,
    told: toldByTests(attempt, library.parts).map((one) => ({
      ...one,
      own: linesOf(attempt).filter((line) => isAbout(line, one.about)),
    })),
  };
}

function linesOf(attempt: Attempt): SheetLine[] {
  return attempt.entries.flatMap(({ action, outcome }) =>
    action.type === 'sheet.write' && outcome.kind === 'done' ? [action.line] : [],
  );
}

/** Remedies that were done, each with the number of lines that stood on the sheet by then. */
function remediesOf(attempt: Attempt): RemedyDone[] {
  let linesBefore = 0;
  return attempt.entries.flatMap(({ action, outcome }) => {
    if (outcome.kind !== 'done') return [];
    if (action.type === 'sheet.write') linesBefore += 1;
    return action.type === 'remedy.do'
      ? [{ remedy: action.remedy, bar: action.bar ?? null, linesBefore }]
      : [];
  });
}

/** The last verdict on each part, in the order the parts were first judged. */
function lastVerdicts(attempt: Attempt): OpenBench['verdicts'] {
  const verdicts = attempt.entries.flatMap(({ action, outcome }) =>
    action.type === 'verdict.write' && outcome.kind === 'done' ? [action.verdict] : [],
  );
  return [...new Map(verdicts.map((verdict) => [verdict.part, verdict])).values()];
}

function divergenceSentence(found: { n: number; what: string; expected: unknown; got: unknown }): string {
  return `The record says ${found.what} was ${JSON.stringify(found.expected)}, but doing it again gives ${JSON.stringify(found.got)}: the record was changed or made by another version, so it cannot be carried on.`;
}
