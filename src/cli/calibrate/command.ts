import { fork } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { PartLibrary } from '../../scenario/scenario.ts';
import type { Tried } from './attempt.ts';
import { type Calibration, summed } from './calibrate.ts';
import { calibrationPage } from './page.ts';
import { runsOf, SUBJECTS, type Subject, tryRun } from './runs.ts';

/** Attempts in each world unless told otherwise: enough that nearly every bin is judged. */
const ATTEMPTS = 900;
/** Worlds tried side by side, each in a process of its own. */
const AT_ONCE = 2;
const PAGES: Readonly<Record<Subject, URL>> = {
  armature: new URL('../../../docs/calibration.md', import.meta.url),
  mat: new URL('../../../docs/calibration-mat.md', import.meta.url),
};

export const USAGE =
  'Usage: npm run -s calibrate [-- SUBJECT [ATTEMPTS]] (armature or mat; attempts in each world, 30 to 100000)';

export interface Asked {
  readonly subjects: readonly Subject[];
  readonly attempts: number;
}

/** @returns null where the words cannot be understood */
export function askedBy([subject, number, ...more]: readonly string[]): Asked | null {
  const subjects = subject === undefined ? SUBJECTS : SUBJECTS.filter((one) => one === subject);
  const attempts = number === undefined ? ATTEMPTS : Number(number);
  const inRange = Number.isInteger(attempts) && attempts >= 30 && attempts <= 1e5;
  return subjects.length > 0 && inRange && more.length === 0 ? { subjects, attempts } : null;
}

/** Tries every world of one subject after another. @returns exit code: 1 when a judged bin does not hold */
export async function calibrateAll(
  library: PartLibrary,
  { subjects, attempts }: Asked,
  print: (line: string) => void,
): Promise<number> {
  let code = 0;
  for (const subject of subjects)
    code = Math.max(code, await calibrateSubject(subject, library, attempts, print));
  return code;
}

/** Prints what was found and writes the page. */
async function calibrateSubject(
  subject: Subject,
  library: PartLibrary,
  attempts: number,
  print: (line: string) => void,
): Promise<number> {
  const runs = runsOf(subject, library);
  const found: Calibration[] = [];
  let next = 0;
  const takeNext = async (): Promise<void> => {
    const nth = next++;
    const run = runs[nth];
    if (run === undefined) return;
    found[nth] = summed(run.world, await triedInChild(subject, nth, attempts));
    print(`${run.world.name}: ${attempts} attempts, ${found[nth].failed.length} judged bins do not hold`);
    // A run that is broken off leaves what it has found.
    const missing = runs.filter((_, k) => found[k] === undefined).map(({ world }) => world);
    writeFileSync(
      PAGES[subject],
      calibrationPage(
        subject,
        found.filter((one) => one !== undefined),
        missing,
      ),
    );
    return takeNext();
  };
  await Promise.all(Array.from({ length: AT_ONCE }, takeNext));
  print(calibrationPage(subject, found));
  return found.some(({ failed }) => failed.length > 0) ? 1 : 0;
}

function triedInChild(subject: Subject, nth: number, attempts: number): Promise<readonly Tried[]> {
  return new Promise((done, failed) => {
    const entry = fileURLToPath(new URL('../calibrate.ts', import.meta.url));
    const child = fork(entry, ['world', subject, String(nth), String(attempts)]);
    child.once('message', (tried) => done(tried as readonly Tried[]));
    child.once('error', failed);
    child.once('exit', (code) => failed(new Error(`World ${nth} ended with ${code}.`)));
  });
}

/** The child's side: one world, its attempts sent back. */
export function calibrateOne(library: PartLibrary, [subject, nth, attempts]: readonly string[]): void {
  const run = runsOf(subject as Subject, library)[Number(nth)]!;
  process.send!(tryRun(run, Number(attempts)), () => process.disconnect());
}
