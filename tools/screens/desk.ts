import type { Issue } from '../../src/scenario/scenario.ts';
import type { AttemptSummary, Desk, JobSummary } from '../../src/screens/shell.ts';
import { handMadeBench } from './bench.ts';
import { handMadeDebrief } from './debrief.ts';
import { JOBS } from './jobs.ts';

const FINISHED: AttemptSummary = {
  id: 'done',
  state: 'handedIn',
  startedAt: '2026-03-02T08:40:00Z',
  endMs: 1_260_000,
  earned: 31.5,
  of: 40,
};
const STOPPED: AttemptSummary = { ...FINISHED, id: 'stopped', state: 'stopped', endMs: 300_000 };
const RUNNING: AttemptSummary = {
  ...FINISHED,
  id: 'run-0',
  state: 'running',
  endMs: 754_000,
  earned: null,
  of: null,
};

/** A desk over hand-made data: everything answers, nothing is kept. */
export function handMadeDesk(): Desk {
  const attempts = [[RUNNING], [FINISHED, STOPPED], [], []];
  const summaries: readonly JobSummary[] = JOBS.map((job, at) => ({ job, attempts: attempts[at] ?? [] }));
  return {
    assessor: () => Promise.reject(new Error('The harness shows the apprentice’s side only.')),
    instructor: () => Promise.reject(new Error('The harness shows the apprentice’s side only.')),
    jobs: async () => summaries,
    begin: async (jobId) => ({ ok: true, value: `run-${JOBS.findIndex((job) => job.id === jobId)}` }),
    bench: async (id) => {
      const job = JOBS[Number(id.split('-')[1])];
      return job
        ? { ok: true, value: handMadeBench(job) }
        : no(id, 'An attempt kept on this machine was expected.');
    },
    debrief: async (id) => ({ ok: true, value: handMadeDebrief(id === 'stopped') }),
    evidence: async () => ({ ok: true, value: [] }),
    importFile: async (file) =>
      no('', `A file that begins like an attempt was expected; ${file.name} does not.`),
    exportAttempt: async (id) => ({ ok: true, value: { name: `${id}.json`, text: '{}' } }),
    setOut: () => {},
    saveSettings: () => {},
  };
}

function no(path: string, sentence: string): { readonly ok: false; readonly issues: readonly Issue[] } {
  return { ok: false, issues: [{ path, sentence }] };
}
