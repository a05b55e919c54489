import { checkLibrary } from '../../src/app/checkLibrary.ts';
import { browserClock } from '../../src/app/clock.ts';
import { libraryOf } from '../../src/app/library.ts';
import { openLocalBench } from '../../src/link/localBench.ts';
import { jobOf } from '../../src/scenario/public/view.ts';
import type { Desk } from '../../src/screens/shell.ts';
import { FILES } from '../library/files.ts';
import { handMadeBench } from './bench.ts';
import { handMadeDesk } from './desk.ts';

/** The harness's desk with the real jobs and the real bench behind the same screens; nothing is kept. */
export function realDesk(): Desk {
  const { parts, scenarios } = libraryOf(checkLibrary(FILES));
  const jobs = [...scenarios.values()].map((scenario) => jobOf(scenario, parts));
  return {
    ...handMadeDesk(),
    jobs: async () => jobs.map((job) => ({ job, attempts: [] })),
    begin: async (jobId) => ({ ok: true, value: jobId }),
    bench: async (id) => {
      const scenario = scenarios.get(id);
      if (!scenario)
        return { ok: false, issues: [{ path: id, sentence: 'A job of the library was expected.' }] };
      const { mode } = scenario.public;
      const start = { id, mode, learner: '', startedAt: '2026-03-02T08:40:00Z', scenario };
      const port = openLocalBench(start, parts, browserClock);
      return { ok: true, value: { ...handMadeBench(jobOf(scenario, parts)), port } };
    },
  };
}
