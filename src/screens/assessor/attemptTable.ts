import type { FinishedAttempt } from './desk.ts';

export type SortKey = 'learner' | 'job' | 'startedAt' | 'minutes' | 'share' | 'state';

export interface ListWishes {
  /** Words that must all be found in name or job. */
  readonly find: string;
  readonly mode: FinishedAttempt['mode'] | 'all';
  readonly state: FinishedAttempt['state'] | 'all';
  readonly judged: 'all' | 'open' | 'signed';
  readonly sort: SortKey;
  readonly falling: boolean;
}

export const FIRST_WISHES: ListWishes = {
  find: '',
  mode: 'all',
  state: 'all',
  judged: 'open',
  sort: 'startedAt',
  falling: true,
};

/** The attempts that are wanted, in the order wanted. */
export function chosen(attempts: readonly FinishedAttempt[], wishes: ListWishes): FinishedAttempt[] {
  const words = wishes.find.toLocaleLowerCase().split(/\s+/).filter(Boolean);
  const kept = attempts.filter((attempt) => {
    const text = `${attempt.learner} ${attempt.job}`.toLocaleLowerCase();
    return (
      words.every((word) => text.includes(word)) &&
      (wishes.mode === 'all' || attempt.mode === wishes.mode) &&
      (wishes.state === 'all' || attempt.state === wishes.state) &&
      (wishes.judged === 'all' || (attempt.record === null) === (wishes.judged === 'open'))
    );
  });
  const sign = wishes.falling ? -1 : 1;
  return kept.sort((one, other) => sign * compare(one, other, wishes.sort) || byTime(other, one));
}

const byTime = (one: FinishedAttempt, other: FinishedAttempt) => one.startedAt.localeCompare(other.startedAt);

function compare(one: FinishedAttempt, other: FinishedAttempt, key: SortKey): number {
  if (key === 'minutes') return one.endMs - other.endMs;
  if (key === 'share') return shareOf(one) - shareOf(other);
  return one[key].localeCompare(other[key]);
}

/** Share of the marks, 0..1. */
export function shareOf({ earned, of }: Pick<FinishedAttempt, 'earned' | 'of'>): number {
  return of > 0 ? earned / of : 0;
}

/** Names that differ only in case and spaces are one person's; nothing is known of one who left none. */
export function personOf(attempt: Pick<FinishedAttempt, 'learner'>): string {
  return attempt.learner.trim().replace(/\s+/g, ' ').toLocaleLowerCase();
}

export interface Person {
  readonly name: string;
  readonly attempts: readonly FinishedAttempt[];
}

/** Attempts by person, in the order their first one comes. */
export function byPerson(attempts: readonly FinishedAttempt[]): Person[] {
  const people = new Map<string, FinishedAttempt[]>();
  for (const attempt of attempts) {
    const key = personOf(attempt);
    people.set(key, [...(people.get(key) ?? []), attempt]);
  }
  return [...people.values()].map((all) => ({
    name: all[0]!.learner.trim() || 'No name given',
    attempts: all,
  }));
}

/** Why these cannot be one set of evidence, in a sentence; null when they can. */
export function whyNotOneSet(attempts: readonly FinishedAttempt[]): string | null {
  if (attempts.length === 0) return 'Choose at least one attempt.';
  const names = [...new Set(attempts.map(personOf))];
  if (names[0] === '' && attempts.length > 1)
    return 'These attempts carry no name, so nobody knows that they are one person’s: choose one of them.';
  if (names.length === 1) return null;
  return 'These attempts are of different people: a set of evidence is one person’s.';
}
