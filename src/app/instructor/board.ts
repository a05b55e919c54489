import type { PartLibrary, Scenario } from '../../scenario/scenario.ts';
import type { Store } from '../../store/store.ts';

/** Jobs an instructor made in this browser, for the apprentices' board, newest first; one that cannot be read stays off. */
export async function boardJobs(store: Pick<Store, 'jobs'>, parts: PartLibrary): Promise<Scenario[]> {
  const kept = [...(await store.jobs.list())].sort((a, b) => b.changedAt.localeCompare(a.changedAt));
  if (kept.length === 0) return [];
  const { parseScenario } = await import('../../scenario/parse.ts');
  const read = await Promise.all(
    kept.map(async ({ id }) => parseScenario((await store.jobs.read(id)).value, parts)),
  );
  return read.flatMap((one) => (one.ok ? [one.value] : []));
}
