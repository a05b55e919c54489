import { type Condition, conditionAfter, firstCondition, isBlown, isBroken } from '../attempt/condition.ts';
import type { Entry } from '../attempt/entry.ts';
import type { PartKind } from '../bench/action.ts';
import { handledPart } from '../bench/touched.ts';
import type { RemedyKind } from '../engine/parts/remedies.ts';
import { limitsOf } from '../scenario/public/limits.ts';
import { acts, type Film } from './film.ts';

/** What was the matter with parts and bench while the work went on, and what was done about it. */

type Told = Pick<Film, 'scenario' | 'design' | 'entries'>;

/** Condition before the first act, then after each entry: that after entry n is at n + 1. */
export function conditionsOf({ scenario, design, entries }: Told): readonly Condition[] {
  const limits = limitsOf(scenario.public, design);
  const conditions = [firstCondition(scenario.hidden, design.commutatorRadius)];
  for (const { action, outcome } of entries) {
    const before = conditions.at(-1)!;
    conditions.push(outcome.kind === 'done' ? conditionAfter(before, action, limits) : before);
  }
  return conditions;
}

/** Nothing in the bench keeps the lamp from lighting. */
export function lampWhole(condition: Condition): boolean {
  return !isBlown(condition) && !isBroken(condition, 'lamp.1') && !isBroken(condition, 'lamp.2');
}

/** A remedy that went through. */
export interface Remedied {
  readonly entry: number;
  readonly part: PartKind;
  readonly remedy: RemedyKind;
  /** Riser that was resoldered, or null. */
  readonly bar: number | null;
}

export function remediesOf(film: { readonly entries: readonly Entry[] }): Remedied[] {
  return acts(film, 'remedy.do').map(({ n, action }) => ({
    entry: n,
    part: handledPart(action)!,
    remedy: action.remedy,
    bar: action.bar ?? null,
  }));
}
