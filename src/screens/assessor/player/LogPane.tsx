import { memo } from 'preact/compat';
import { useEffect, useMemo, useRef } from 'preact/hooks';
import type { Entry } from '../../../attempt/entry.ts';
import { actionWords } from '../../shared/actionWords.ts';
import { clock } from '../../shared/time.ts';
import { spoken, type Vocabulary } from '../../shared/words.ts';
import { lastChalks } from '../chalks.ts';
import type { Run } from '../desk.ts';

export interface LogPaneProps {
  readonly run: Run;
  readonly vocabulary: Vocabulary;
  /** Number of the act last done. */
  readonly current: number;
  /** Entries a mark points to. */
  readonly marked: readonly number[];
  readonly onGo: (n: number) => void;
}

/** Every act, in step with the picture: the one last done is in view. */
export function LogPane({ run, vocabulary, current, marked, onGo }: LogPaneProps) {
  const list = useRef<HTMLOListElement>(null);
  useEffect(() => {
    if (list.current) bringUp(list.current, current);
  }, [current, run]);
  const onKeyDown = (event: KeyboardEvent) => {
    const by = { ArrowDown: 1, ArrowUp: -1 }[event.key];
    const next = list.current?.children[current + (by ?? 0)];
    if (by === undefined || !next) return;
    event.preventDefault();
    onGo(current + by);
    next.querySelector('button')?.focus();
  };
  return (
    <section class="as-log" aria-labelledby="as-log-title">
      <h2 id="as-log-title">What was done</h2>
      <ol ref={list} class="as-log-list" onKeyDown={onKeyDown}>
        <Lines run={run} vocabulary={vocabulary} marked={marked} onGo={onGo} />
      </ol>
    </section>
  );
}

/** One line of hundreds is a stop for the tab key: the current one, to which the arrow keys move. */
function bringUp(list: HTMLOListElement, current: number): void {
  for (const old of list.querySelectorAll('[aria-current]')) {
    old.removeAttribute('aria-current');
    old.querySelector('button')?.setAttribute('tabindex', '-1');
  }
  const item = list.children[Math.max(0, current)];
  if (!(item instanceof HTMLElement)) return;
  item.setAttribute('aria-current', 'step');
  item.querySelector('button')?.setAttribute('tabindex', '0');
  list.scrollTop = item.offsetTop - list.clientHeight / 2;
}

type LinesProps = Omit<LogPaneProps, 'current'>;

const Lines = memo(function Lines({ run, vocabulary, marked, onGo }: LinesProps) {
  const { entries } = run.attempt;
  const chalks = useMemo(() => lastChalks(entries), [entries]);
  const shown = new Set(marked);
  return (
    <>
      {entries.map((entry, nth) => (
        <li key={entry.n} class={lineClass(entry, shown.has(entry.n))}>
          <button type="button" tabIndex={-1} onClick={() => onGo(entry.n)}>
            <span class="as-log-time">{clock(entry.atMs)}</span>
            <span class="as-log-act">
              {shown.has(entry.n) ? <span aria-hidden="true">▶ </span> : null}
              {actionWords(entry.action, {
                geometry: run.job.armature,
                chalkedBar: chalks[nth] ?? null,
                rotationDeg: entry.before.rotationDeg,
                vocabulary,
              })}
              {entry.outcome.kind === 'refused' ? ' (refused)' : ''}
            </span>
            <Said entry={entry} vocabulary={vocabulary} />
          </button>
        </li>
      ))}
    </>
  );
});

function Said({
  entry: { outcome },
  vocabulary,
}: {
  readonly entry: Entry;
  readonly vocabulary: Vocabulary;
}) {
  if (outcome.breaches.length === 0) return null;
  return (
    <span class="as-log-said">
      {outcome.breaches.map(({ sentence, critical }) => (
        <span key={sentence}>
          <strong>{critical ? '✕ Critical: ' : '! '}</strong>
          {spoken(sentence, vocabulary)}{' '}
        </span>
      ))}
    </span>
  );
}

function lineClass({ outcome }: Entry, marked: boolean): string {
  const critical = outcome.breaches.some((breach) => breach.critical);
  return ['as-log-line', marked ? 'as-log-marked' : '', critical ? 'as-log-critical' : '']
    .filter(Boolean)
    .join(' ');
}
