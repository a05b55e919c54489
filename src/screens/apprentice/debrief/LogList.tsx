import { useMemo } from 'preact/hooks';
import type { Attempt, Entry, Sensed } from '../../../attempt/entry.ts';
import { actionWords, type Speaking } from '../../shared/actionWords.ts';
import { clock } from '../../shared/time.ts';
import { spoken, type Vocabulary } from '../../shared/words.ts';
import { chalkAt } from './chalk.ts';

export interface LogListProps {
  readonly attempt: Attempt;
  readonly bars: number;
  readonly vocabulary: Vocabulary;
  /** Entries brought to the fore by a mark. */
  readonly shown: readonly number[];
}

/** Everything that was done, move by move, with what eyes and ears had at that moment. */
export function LogList({ attempt, bars, vocabulary, shown }: LogListProps) {
  const chalked = useMemo(() => chalkAt(attempt.entries), [attempt]);
  return (
    <section class="log" aria-labelledby="log-title">
      <h2 id="log-title">What you did, move by move</h2>
      <ol class="log-list">
        {attempt.entries.map((entry, at) => (
          <LogLine
            key={entry.n}
            entry={entry}
            speaking={{ chalkedBar: chalked[at] ?? null, bars, vocabulary }}
            rangeWords={sensedWords(entry.before)}
            marked={shown.includes(entry.n)}
          />
        ))}
      </ol>
    </section>
  );
}

interface LogLineProps {
  readonly entry: Entry;
  readonly speaking: Speaking;
  readonly rangeWords: string;
  readonly marked: boolean;
}

function LogLine({ entry, speaking, rangeWords, marked }: LogLineProps) {
  const { outcome } = entry;
  const said =
    outcome.kind === 'refused' ? [outcome.sentence] : outcome.breaches.map((breach) => breach.sentence);
  return (
    <li id={`entry-${entry.n}`} class={marked ? 'log-line log-marked' : 'log-line'} value={entry.n}>
      <span class="log-time">{clock(entry.atMs)}</span>
      <span class="log-act">
        {marked ? <span class="log-flag">▶ </span> : null}
        {actionWords(entry.action, speaking)}
        {outcome.kind === 'refused' ? <em> (refused)</em> : null}
      </span>
      <span class="log-seen">{rangeWords}</span>
      {said.map((sentence) => (
        <span key={sentence} class="log-said">
          {spoken(sentence, speaking.vocabulary)}
        </span>
      ))}
    </li>
  );
}

/** What was seen and heard as the move was made, in a few words. */
function sensedWords(sensed: Sensed): string {
  const { needle, lamp, pull, buzz, supply } = sensed;
  const words = [
    needle.pegged
      ? 'needle at the stop'
      : needle.deflection > 0.005
        ? `needle at ${Math.round(needle.deflection * 100)} % of scale`
        : '',
    lamp.glow === 0 ? '' : lamp.glow <= 2 ? 'lamp dull' : 'lamp lit',
    pull > 0 ? 'strip pulled' : '',
    buzz > 0 ? 'strip buzzing' : '',
    supply === 'cutOut' ? 'cut-out open' : '',
  ].filter((word) => word !== '');
  return words.join(', ');
}
