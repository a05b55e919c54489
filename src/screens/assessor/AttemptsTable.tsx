import { clock, dayWords } from '../shared/time.ts';
import { modeWords } from '../shared/words.ts';
import { byPerson, type ListWishes, personOf, type SortKey } from './attemptTable.ts';
import type { FinishedAttempt } from './desk.ts';
import { writeAssessorRoute } from './route.ts';
import { decisionWords, tidy } from './say.ts';

export interface AttemptsTableProps {
  readonly attempts: readonly FinishedAttempt[];
  readonly picked: ReadonlySet<string>;
  readonly onPick: (picked: ReadonlySet<string>) => void;
  readonly wishes: ListWishes;
  readonly onSort: (sort: SortKey, falling: boolean) => void;
}

const COLUMNS: readonly (readonly [SortKey, string])[] = [
  ['learner', 'Learner'],
  ['job', 'Job'],
  ['startedAt', 'When'],
  ['minutes', 'At the bench'],
  ['share', 'Marks'],
  ['state', 'Ended'],
];

export function AttemptsTable(props: AttemptsTableProps) {
  const { attempts, picked, onPick, wishes, onSort } = props;
  if (attempts.length === 0) return <p class="as-none">No attempt is as asked for here.</p>;
  const counts = new Map(byPerson(attempts).map((person) => [personOf(person.attempts[0]!), person]));
  const toggle = (ids: readonly string[], on: boolean) => {
    const next = new Set(picked);
    for (const id of ids) {
      if (on) next.add(id);
      else next.delete(id);
    }
    onPick(next);
  };
  return (
    <table class="as-table">
      <caption class="visually-hidden">Finished attempts</caption>
      <thead>
        <tr>
          <th scope="col">
            <span class="visually-hidden">Choose</span>
          </th>
          {COLUMNS.map(([key, words]) => (
            <SortHead
              key={key}
              words={words}
              sorted={wishes.sort === key ? (wishes.falling ? 'descending' : 'ascending') : undefined}
              onPress={() => onSort(key, wishes.sort === key ? !wishes.falling : key === 'startedAt')}
            />
          ))}
          <th scope="col" class="as-plain-head">
            Record
          </th>
        </tr>
      </thead>
      <tbody>
        {attempts.map((attempt) => {
          const person = counts.get(personOf(attempt));
          const own = person?.attempts.map(({ id }) => id) ?? [];
          return (
            <AttemptRow
              key={attempt.id}
              attempt={attempt}
              picked={picked.has(attempt.id)}
              onToggle={(on) => toggle([attempt.id], on)}
              others={attempt.learner.trim() ? own.length - 1 : 0}
              onAll={() => toggle(own, true)}
            />
          );
        })}
      </tbody>
    </table>
  );
}

interface SortHeadProps {
  readonly words: string;
  readonly sorted: 'ascending' | 'descending' | undefined;
  readonly onPress: () => void;
}

function SortHead({ words, sorted, onPress }: SortHeadProps) {
  const sign = sorted === undefined ? '' : sorted === 'ascending' ? ' ▲' : ' ▼';
  return (
    <th scope="col" aria-sort={sorted}>
      <button type="button" class="as-sort" onClick={onPress}>
        {words}
        <span aria-hidden="true">{sign}</span>
      </button>
    </th>
  );
}

interface AttemptRowProps {
  readonly attempt: FinishedAttempt;
  readonly picked: boolean;
  readonly onToggle: (on: boolean) => void;
  /** How many more of this person are in sight. */
  readonly others: number;
  readonly onAll: () => void;
}

function AttemptRow({ attempt, picked, onToggle, others, onAll }: AttemptRowProps) {
  const name = attempt.learner.trim() || 'No name given';
  const about = `${name}, ${attempt.job}, ${dayWords(attempt.startedAt)}`;
  return (
    <tr class={picked ? 'as-row-picked' : undefined}>
      <td class="as-cell-pick">
        <label class="as-tick">
          <input
            type="checkbox"
            checked={picked}
            aria-label={`Choose ${about}`}
            onChange={(event) => onToggle(event.currentTarget.checked)}
          />
        </label>
      </td>
      <th scope="row">
        {name}
        {others > 0 ? (
          <button type="button" class="entry-link" onClick={onAll}>
            with {others} more
            <span class="visually-hidden"> of {name}: choose them all</span>
          </button>
        ) : null}
      </th>
      <td data-head="Job">
        {attempt.job} <span class={`mode mode-${attempt.mode}`}>{modeWords(attempt.mode)}</span>
      </td>
      <td data-head="When" class="as-short">
        {dayWords(attempt.startedAt)}
      </td>
      <td data-head="At the bench" class="as-number">
        {clock(attempt.endMs)}
      </td>
      <td data-head="Marks" class="as-number">
        {tidy(attempt.earned)} of {tidy(attempt.of)}
      </td>
      <td data-head="Ended" class="as-short">
        {attempt.state === 'stopped' ? '✕ Stopped' : 'Handed in'}
      </td>
      <td data-head="Record">
        {attempt.record ? (
          <a href={writeAssessorRoute({ page: 'record', id: attempt.record.id })}>
            {decisionWords(attempt.record.outcome)}, {attempt.record.assessor}
          </a>
        ) : (
          'none yet'
        )}
      </td>
    </tr>
  );
}
