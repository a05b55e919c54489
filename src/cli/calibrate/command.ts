import { fork } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { PartLibrary } from '../../scenario/scenario.ts';
import type { Tried } from './attempt.ts';
import { type Calibration, summed } from './calibrate.ts';
import { calibrationPage } from './page.ts';
import { runsOf, tryRun } from './runs.ts';

/** Attempts in each world unless told otherwise: enough that nearly every bin is judged. */
const ATTEMPTS = 900;
/** Worlds tried side by side, each in a process of its own. */
const AT_ONCE = 2;
const PAGE = new URL('../../../docs/calibration.md', import.meta.url);

export const USAGE = 'Usage: npm run -s calibrate [-- ATTEMPTS] (attempts in each world, 30 to 100000)';

/** @returns null where the words cannot be understood */
export function attemptsFrom(words: readonly string[]): number | null {
  const attempts = words.length === 0 ? ATTEMPTS : Number(words[0]);
  return words.length <= 1 && Number.isInteger(attempts) && attempts >= 30 && attempts <= 1e5
    ? attempts
    : null;
}

/** Tries every world, prints what was found and writes the page. @returns exit code: 1 when a judged bin does not hold */
export async function calibrateAll(
  library: PartLibrary,
  attempts: number,
  print: (line: string) => void,
): Promise<number> {
  const runs = runsOf(library);
  const found: Calibration[] = [];
  let next = 0;
  const takeNext = async (): Promise<void> => {
    const nth = next++;
    const run = runs[nth];
    if (run === undefined) return;
    found[nth] = summed(run.world, await triedInChild(nth, attempts));
    print(`${run.world.name}: ${attempts} attempts, ${found[nth].failed.length} judged bins do not hold`);
    // A run that is broken off leaves what it has found.
    const missing = runs.filter((_, k) => found[k] === undefined).map(({ world }) => world);
    writeFileSync(
      PAGE,
      calibrationPage(
        found.filter((one) => one !== undefined),
        missing,
      ),
    );
    return takeNext();
  };
  await Promise.all(Array.from({ length: AT_ONCE }, takeNext));
  print(calibrationPage(found));
  return found.some(({ failed }) => failed.length > 0) ? 1 : 0;
}

function triedInChild(nth: number, attempts: number): Promise<readonly Tried[]> {
  return new Promise((done, failed) => {
    const entry = fileURLToPath(new URL('../calibrate.ts', import.meta.url));
    const child = fork(entry, ['world', String(nth), String(attempts)]);
    child.once('message', (tried) => done(tried as readonly Tried[]));
    child.once('error', failed);
    child.once('exit', (code) => failed(new Error(`World ${nth} ended with ${code}.`)));
  });
}

/** The child's side: one world, its attempts sent back. */
export function calibrateOne(library: PartLibrary, [nth, attempts]: readonly string[]): void {
  process.send!(tryRun(runsOf(library)[Number(nth)]!, Number(attempts)), () => process.disconnect());
}
