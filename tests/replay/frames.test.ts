import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ATTEMPT_FORMAT, ATTEMPT_VERSION, type Attempt } from '../../src/attempt/entry.ts';
import { parseAttemptText } from '../../src/attempt/parse.ts';
import { replay } from '../../src/attempt/replay.ts';
import { createSession, designOf, type Session } from '../../src/attempt/session.ts';
import { type JobOptions, job, PARTS } from '../support/benchDriver.ts';
import { type Doing, doings, jobs, printedSeed } from './anyone.ts';

const RUNS = Number(process.env.RUNS ?? 40);

function open(options: JobOptions): Session {
  const scenario = job(options);
  return createSession({ scenario, design: designOf(scenario, PARTS) });
}

/** Does it all, looking at the bench in between at the times `looks` gives. */
function work(
  session: Session,
  done: readonly Doing[],
  looks: (fromMs: number, toMs: number) => number[],
): number {
  let atMs = 0;
  for (const { afterMs, action } of done) {
    for (const look of looks(atMs, atMs + afterMs)) session.observe(look);
    atMs += afterMs;
    session.act(action, atMs);
  }
  return atMs;
}

const never = () => [];
const everyMs = (frameMs: number) => (fromMs: number, toMs: number) => {
  const looks: number[] = [];
  // A long wait is looked at for its first and last seconds only, to keep the test short.
  for (let at = fromMs; at <= toMs; at += frameMs) if (at - fromMs < 3000 || toMs - at < 3000) looks.push(at);
  return looks;
};

function attemptOf(session: Session, options: JobOptions, endMs: number): Attempt {
  return {
    format: ATTEMPT_FORMAT,
    version: ATTEMPT_VERSION,
    id: 'a-1',
    mode: session.mode,
    learner: 'A learner',
    startedAt: '2031-05-06T08:30:00Z',
    scenario: job(options),
    entries: session.log,
    endMs,
  };
}

describe('whatever anyone does at the bench', () => {
  it('looking at it, however often, changes neither the log nor what is seen later', () => {
    const seed = printedSeed('frames');
    const property = fc.property(
      jobs,
      doings,
      fc.double({ min: 3, max: 400, noNaN: true }),
      (options, done, frame) => {
        const [blind, film, odd] = [open(options), open(options), open(options)];
        const endMs = work(blind, done, never);
        work(film, done, everyMs(1000 / 60));
        work(odd, done, everyMs(frame));
        expect(film.log).toEqual(blind.log);
        expect(odd.log).toEqual(blind.log);
        const later = endMs + 100_000;
        film.observe(endMs + 1234.5);
        expect(film.observe(later)).toEqual(blind.observe(later));
        expect(film.sinceLastAct(later)).toEqual(blind.sinceLastAct(later));
      },
    );
    fc.assert(property, { seed, numRuns: RUNS });
  });

  it('looking ahead and then acting earlier is the same as not having looked', () => {
    const seed = printedSeed('looking ahead');
    const property = fc.property(jobs, doings, (options, done) => {
      const [plain, hasty] = [open(options), open(options)];
      work(plain, done, never);
      work(hasty, done, (_, toMs) => [toMs + 5000]);
      expect(hasty.log).toEqual(plain.log);
    });
    fc.assert(property, { seed, numRuns: RUNS });
  });

  it('a stored attempt replays to the same log, through a file and back', () => {
    const seed = printedSeed('replay');
    const property = fc.property(jobs, doings, (options, done) => {
      const session = open(options);
      const endMs = work(session, done, never);
      const stored = JSON.stringify(attemptOf(session, options, endMs));
      const parsed = parseAttemptText(stored, PARTS);
      if (!parsed.ok)
        throw new Error(parsed.issues.map(({ path, sentence }) => `${path}: ${sentence}`).join('\n'));
      const again = replay(parsed.value, PARTS);
      if (!again.agreed) throw new Error(JSON.stringify(again.firstDivergence));
      expect(again.session.log).toEqual(session.log);
      expect(again.session.observe(endMs + 777)).toEqual(session.observe(endMs + 777));
    });
    fc.assert(property, { seed, numRuns: RUNS });
  });

  it('an observation has the same keys whatever the fault', () => {
    const seed = printedSeed('keys');
    const property = fc.property(jobs, jobs, doings, (one, other, done) => {
      const [a, b] = [open(one), open({ ...one, faults: other.faults ?? [], seed: other.seed ?? 0 })];
      const endMs = work(a, done, never);
      work(b, done, never);
      expect(keys(b.observe(endMs))).toEqual(keys(a.observe(endMs)));
    });
    fc.assert(property, { seed, numRuns: RUNS });
  });
});

/** Every path of keys in a value; lists count as one key, since what a lens shows may be more or less. */
function keys(value: unknown, path = ''): string[] {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return [path];
  return Object.entries(value).flatMap(([key, inner]) => keys(inner, `${path}.${key}`));
}
