import { type Broken as BrokenRule, brokenIn } from '../attempt/broken.ts';
import type { Attempt, Entry } from '../attempt/entry.ts';
import { createSession, designOf, type Session } from '../attempt/session.ts';
import type { Observation } from '../bench/observation.ts';
import type { ArmatureDesign } from '../engine/parts/armature.ts';
import type { PartLibrary, Scenario } from '../scenario/scenario.ts';
import { type Points, TENTHS, WHOLE } from './points.ts';

/** A stretch of simulated time in which nobody did anything, ended by an act or by the end of the record. */
export interface Stretch {
  /** Number of the entry that began it; -1 for the time before the first. */
  readonly since: number;
  readonly fromMs: number;
  readonly toMs: number;
  /** What the learner had before them at its end, just before the next act. */
  readonly seen: Observation;
  /** The needle came to rest and stood where it still stands at the end, but for what no eye tells. */
  readonly needleRested: boolean;
}

/** A rule broken in the attempt. */
export interface Broken extends BrokenRule {
  /** The bench refused the act, so the harm was not done. */
  readonly refused: boolean;
}

/** A whole attempt played again: what was done, and what could be seen while it was done. */
export interface Film {
  readonly scenario: Scenario;
  readonly points: Points;
  readonly design: ArmatureDesign;
  readonly entries: readonly Entry[];
  readonly stretches: readonly Stretch[];
  readonly broken: readonly Broken[];
}

export function lasted(stretch: Stretch): number {
  return stretch.toMs - stretch.fromMs;
}

/** The bench is on with the selector at the given place and an armature closes its magnetic circuit. */
export function excited(seen: Observation, selector: 'low' | 'high'): boolean {
  return seen.supply === 'on' && seen.selector === selector && seen.cradle === 'armature';
}

/** Acts of one kind that went through. */
export function acts<T extends Entry['action']['type']>(
  film: Pick<Film, 'entries'>,
  type: T,
): (Entry & { readonly action: Extract<Entry['action'], { readonly type: T }> })[] {
  return film.entries.filter(
    (entry): entry is Entry & { readonly action: Extract<Entry['action'], { readonly type: T }> } =>
      entry.action.type === type && entry.outcome.kind === 'done',
  );
}

/** The bench refused the act: the breach is the act's own, not one that came about by itself after it. */
function wasRefused(log: readonly Entry[], { entry, breach }: BrokenRule): boolean {
  const outcome = log[entry]?.outcome;
  return outcome?.kind === 'refused' && outcome.breaches.includes(breach);
}

/** How often the needle is looked at while the ammeter lies across two bars, ms. */
const LOOK_MS = 100;
/** Movement no eye tells once the needle has come to rest: the winding warms, and the reading with it; full scale. */
const CREEP = 3 / 400;

function metered({ leads, supply }: Observation): boolean {
  return supply === 'on' && leads['ammeter.1'].touches !== null && leads['ammeter.2'].touches !== null;
}

/** Deflection at which the needle was last seen at rest before an instant, looking every now and then; or null. */
function restBefore(session: Session, fromMs: number, toMs: number): number | null {
  let rest: number | null = null;
  for (let atMs = fromMs + LOOK_MS; atMs < toMs; atMs += LOOK_MS) {
    const { atRest, deflection } = session.needleAt(atMs);
    if (atRest) rest = deflection;
  }
  return rest;
}

/** Time without an act, up to an instant; nothing is done in it, so looking now and then changes nothing. */
function stretchOf(session: Session, fromMs: number, toMs: number): Stretch {
  const rest = metered(session.observe(fromMs)) ? restBefore(session, fromMs, toMs) : null;
  const seen = session.observe(toMs);
  const { atRest, deflection } = seen.needle;
  const needleRested = atRest || (rest !== null && Math.abs(deflection - rest) <= CREEP);
  return { since: session.log.length - 1, fromMs, toMs, seen, needleRested };
}

/**
 * Plays an attempt again from its acts alone. Marks rest on what this bench shows, not on what the record says it
 * showed; whether the two agree is the replay's business.
 */
export function filmOf(attempt: Attempt, library: PartLibrary): Film {
  const { scenario, mode, endMs } = attempt;
  const design = designOf(scenario, library);
  const session = createSession({ scenario, design, mode });
  const stretches: Stretch[] = [];
  let fromMs = 0;
  for (const { action, atMs } of attempt.entries) {
    stretches.push(stretchOf(session, fromMs, atMs));
    session.act(action, atMs);
    fromMs = atMs;
  }
  const toMs = Math.max(fromMs, endMs);
  stretches.push(stretchOf(session, fromMs, toMs));
  const broken = brokenIn(session.log, session.sinceLastAct(toMs)).map((rule) => ({
    ...rule,
    refused: wasRefused(session.log, rule),
  }));
  const points = attempt.points === 'whole' ? WHOLE : TENTHS;
  return { scenario, points, design, entries: session.log, stretches, broken };
}
