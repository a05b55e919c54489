import { useMemo } from 'preact/hooks';
import type { Attempt, Entry, Sensed } from '../../../attempt/entry.ts';
import { RANGES_A, type RangeA } from '../../../bench/action.ts';
import type { CommutatorGeometry } from '../../../bench/geometry.ts';
import { lampWords, needleWords } from '../../../bench/words.ts';
import { actionWords, type Speaking } from '../../shared/actionWords.ts';
import { clock } from '../../shared/time.ts';
import { spoken, type Vocabulary } from '../../shared/words.ts';
import { chalkAt } from './chalk.ts';

export interface LogListProps {
  readonly attempt: Attempt;
  readonly geometry: CommutatorGeometry;
  readonly vocabulary: Vocabulary;
  /** Entries brought to the fore by a mark. */
  readonly shown: readonly number[];
}

/** Everything that was done, move by move, with what eyes and ears had at that moment. */
export function LogList({ attempt, geometry, vocabulary, shown }: LogListProps) {
  const chalked = useMemo(() => chalkAt(attempt.entries), [attempt]);
  const ranges = useMemo(() => rangeAt(attempt.entries), [attempt]);
  return (
    <section class="log" aria-labelledby="log-title">
      <h2 id="log-title">What you did, move by move</h2>
      <ol
        class="log-list"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling list must be reachable by keyboard
        tabIndex={0}
        aria-labelledby="log-title"
      >
        {attempt.entries.map((entry, at) => (
          <LogLine
            key={entry.n}
            entry={entry}
            speaking={{
              geometry,
              chalkedBar: chalked[at] ?? null,
              rotationDeg: entry.before.rotationDeg,
              vocabulary,
            }}
            seen={sensedWords(entry.before, ranges[at]!)}
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
  readonly seen: string;
  readonly marked: boolean;
}

function LogLine({ entry, speaking, seen, marked }: LogLineProps) {
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
      <span class="log-seen">{seen}</span>
      {said.map((sentence) => (
        <span key={sentence} class="log-said">
          {spoken(sentence, speaking.vocabulary)}
        </span>
      ))}
    </li>
  );
}

/** The ammeter's range as each entry was done; the bench begins on the highest. */
function rangeAt(entries: readonly Entry[]): readonly RangeA[] {
  let rangeA: RangeA = RANGES_A[RANGES_A.length - 1]!;
  return entries.map(({ action, outcome }) => {
    const then = rangeA;
    if (action.type === 'range.turn' && outcome.kind === 'done') rangeA = action.to;
    return then;
  });
}

/** What was seen and heard as the move was made, in a few words; nothing where all was quiet. */
function sensedWords(sensed: Sensed, rangeA: RangeA): string {
  const { needle, lamp, pull, buzz, supply } = sensed;
  const words = [
    needle.deflection > RESTING || needle.pegged ? needleWords(needle, rangeA) : '',
    lamp.glow > 0 ? lampWords(lamp) : '',
    pull > 0 ? 'The strip is pulled.' : '',
    buzz > 0 ? 'The strip buzzes.' : '',
    supply === 'cutOut' ? 'The cut-out is open.' : '',
  ].filter((word) => word !== '');
  return words.join(' ');
}

/** Below this the needle lies at its stop, share of the sweep. */
const RESTING = 1 / 400;
