import { type JobOptions, job } from '../../support/jobs.ts';
import { giveFile, jsonFile } from './files.ts';
import type { Hand } from './hand.ts';
import { type Opened, openApp } from './page.ts';
import { toBench } from './screens.ts';

const ID = 'q-own1';

/** Puts a job of one's own on the board, the way an instructor opens a file, and takes it from there to the bench. */
export async function openOwnJob(
  options: JobOptions & { readonly minutes?: number },
): Promise<Opened & { hand: Hand }> {
  const made = job(options);
  const scenario = {
    ...made,
    public: { ...made.public, id: ID, minutes: options.minutes ?? null },
  };
  const opened = await openApp({}, '#/instructor');
  const { page } = opened;
  await giveFile(page, page.getByRole('button', { name: 'Open a file…' }), jsonFile(scenario, `${ID}.json`));
  await page.waitForFunction((id) => location.hash.includes(id), ID, { timeout: 30_000 });
  await page.getByRole('link', { name: 'Jobs', exact: true }).click();
  return { ...opened, hand: await toBench(page, ID) };
}
