import type { PartLibrary } from '../scenario/scenario.ts';
import type { Attempt, Entry, Happened } from './entry.ts';
import { createSession, designOf, type Session } from './session.ts';

/** The first place where a replay parts from the record. */
export interface Divergence {
  /** Number of the entry. */
  readonly n: number;
  /** What differs, as in `before.needle.deflection`. */
  readonly what: string;
  /** The value in the record, and the one the replay came to. */
  readonly expected: unknown;
  readonly got: unknown;
}

export type Replayed =
  | { readonly agreed: true; readonly session: Session }
  | { readonly agreed: false; readonly firstDivergence: Divergence };

/**
 * How far a replay may lie from the record: one step of what an eye or ear tells apart, since a last bit of rounding
 * in another machine's arithmetic may tip a value over the edge of a step. Everything not listed must be equal.
 */
const TOLERANCE: Readonly<Record<string, number>> = {
  'before.needle.deflection': 1 / 400 + 1e-9,
  'before.lamp.glow': 1,
  'before.pull': 1,
  'before.buzz': 1,
  'before.hum.level': 1,
  'before.hum.harshness': 1,
  'before.rotationDeg': 0.1 + 1e-9,
  'before.drop.millivolts': 0.01 + 1e-9,
};

/** The same for a display in three figures, as a share of what stands in the record. */
const SHARE: Readonly<Record<string, number>> = { 'before.tester.megohms': 0.011 };

/** Does everything in the record again on a fresh bench and compares what was shown; stops at the first difference. */
export function replay(attempt: Attempt, library: PartLibrary): Replayed {
  const { scenario, mode, entries } = attempt;
  const session = createSession({ scenario, mode, design: designOf(scenario, library) });
  for (const entry of entries) {
    session.act(entry.action, entry.atMs);
    const found = firstDifference(entry, session.log[entry.n]!);
    if (found !== null) return { agreed: false, firstDivergence: { n: entry.n, ...found } };
  }
  return { agreed: true, session };
}

type Difference = Omit<Divergence, 'n'>;

function firstDifference(recorded: Entry, again: Entry): Difference | null {
  return (
    differ('since', summary(recorded.since), summary(again.since)) ??
    differ('before', recorded.before, again.before) ??
    differ('outcome', broken(recorded), broken(again))
  );
}

/** What must come about again by itself, and when; sentences may be reworded over the years. */
function summary(since: readonly Happened[] = []) {
  return since.map(({ atMs, what, breaches }) => ({ atMs, ...what, codes: codes(breaches) }));
}

function broken({ outcome }: Entry) {
  return { kind: outcome.kind, codes: codes(outcome.breaches) };
}

function codes(breaches: Entry['outcome']['breaches']): string {
  return breaches.map((breach) => breach.interlock).join(' ');
}

/** Walks two values side by side; the path of the first pair of leaves too far apart, or null. */
function differ(what: string, expected: unknown, got: unknown): Difference | null {
  if (expected === got) return null;
  if (isTree(expected) && isTree(got)) {
    for (const key in { ...expected, ...got }) {
      const found = differ(`${what}.${key}`, expected[key], got[key]);
      if (found !== null) return found;
    }
    return null;
  }
  return alike(what, expected, got) ? null : { what, expected, got };
}

function isTree(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null;
}

function alike(what: string, expected: unknown, got: unknown): boolean {
  if (typeof expected === 'number' && typeof got === 'number') {
    const share = Math.abs(expected) * (SHARE[what] ?? 0);
    return Math.abs(expected - got) <= (TOLERANCE[what] ?? share);
  }
  return expected === got;
}
