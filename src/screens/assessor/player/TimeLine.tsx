import { useMemo } from 'preact/hooks';
import { minutesWords } from '../../shared/time.ts';
import type { Run } from '../desk.ts';
import { LANE_WORDS, LANES, type Span, spansOf, sumsOf } from '../lanes.ts';
import type { Player, PlayerState } from './player.ts';

export interface TimeLineProps {
  readonly run: Run;
  /** The expert at the same job, once worked out. */
  readonly expert: Run | null;
  readonly player: Player;
  readonly state: PlayerState;
}

const LANE_HEIGHT = 15;
const WIDTH = 1000;

/**
 * What was worked at when, and the handle on time. Under each of the learner's bars lies the expert's, on the same
 * scale, as an outline: told by shape as well as by colour.
 */
export function TimeLine({ run, expert, player, state }: TimeLineProps) {
  const { entries, endMs } = run.attempt;
  const own = useMemo(() => spansOf(entries, endMs), [run]);
  const other = useMemo(
    () => (expert ? spansOf(expert.attempt.entries, expert.attempt.endMs) : []),
    [expert],
  );
  const longest = Math.max(endMs, expert?.attempt.endMs ?? 0, 1);
  const critical = entries.filter(({ outcome }) => outcome.breaches.some((breach) => breach.critical));
  return (
    <div class="as-timeline">
      <ul class="as-lane-names" aria-hidden="true">
        {LANES.map((lane) => (
          <li key={lane}>{LANE_WORDS[lane]}</li>
        ))}
      </ul>
      <div class="as-lanes">
        <svg
          viewBox={`0 0 ${WIDTH} ${LANES.length * LANE_HEIGHT}`}
          preserveAspectRatio="none"
          aria-hidden="true"
        >
          {LANES.map((lane, nth) => (
            <line
              key={lane}
              class="as-lane-rule"
              x1={0}
              x2={WIDTH}
              y1={(nth + 1) * LANE_HEIGHT}
              y2={(nth + 1) * LANE_HEIGHT}
            />
          ))}
          <Bars spans={own} longest={longest} kind="own" />
          <Bars spans={other} longest={longest} kind="expert" />
          {critical.map(({ n, atMs }) => (
            <rect
              key={n}
              class="as-critical"
              x={(WIDTH * atMs) / longest - 1.5}
              y={0}
              width={3}
              height={LANES.length * LANE_HEIGHT}
            />
          ))}
          <line
            class="as-now"
            x1={(WIDTH * state.atMs) / longest}
            x2={(WIDTH * state.atMs) / longest}
            y1={0}
            y2={LANES.length * LANE_HEIGHT}
          />
        </svg>
        <input
          type="range"
          class="as-slider"
          style={{ width: `${(100 * endMs) / longest}%` }}
          min={0}
          max={endMs}
          step={100}
          value={state.atMs}
          aria-label="Place in the attempt"
          aria-valuetext={`${Math.floor(state.atMs / 60_000)} minutes ${Math.floor((state.atMs / 1000) % 60)} seconds`}
          onInput={(event) => player.goTo(Number(event.currentTarget.value))}
        />
      </div>
      <p class="as-legend">
        Filled: the learner. {expert ? 'Outlined: the expert at the same job. ' : ''}
        {critical.length > 0 ? 'Upright bar through all: a critical act.' : ''}
      </p>
    </div>
  );
}

interface BarsProps {
  readonly spans: readonly Span[];
  readonly longest: number;
  readonly kind: 'own' | 'expert';
}

function Bars({ spans, longest, kind }: BarsProps) {
  return (
    <g class={`as-bars-${kind}`}>
      {spans.map(({ lane, fromMs, toMs }) => (
        <rect
          key={fromMs}
          x={(WIDTH * fromMs) / longest}
          y={LANES.indexOf(lane) * LANE_HEIGHT + (kind === 'own' ? 2 : 9)}
          width={Math.max(1.5, (WIDTH * (toMs - fromMs)) / longest)}
          height={kind === 'own' ? 6 : 4}
        />
      ))}
    </g>
  );
}

export interface BesideProps {
  readonly run: Run;
  readonly expert: Run;
}

/** The two runs side by side in figures: the table twin of the lanes. */
export function Beside({ run, expert }: BesideProps) {
  const [own, other] = [run, expert].map(({ attempt }) => sumsOf(spansOf(attempt.entries, attempt.endMs)));
  return (
    <table class="as-beside">
      <caption>
        Work at each thing: {minutesWords(run.attempt.endMs)} in all, the expert{' '}
        {minutesWords(expert.attempt.endMs)}
      </caption>
      <thead>
        <tr>
          <th scope="col">At</th>
          <th scope="col">Learner</th>
          <th scope="col">Expert</th>
        </tr>
      </thead>
      <tbody>
        {LANES.map((lane) => (
          <tr key={lane}>
            <th scope="row">{LANE_WORDS[lane]}</th>
            <td>{sumWords(own![lane])}</td>
            <td>{sumWords(other![lane])}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function sumWords({ acts, ms }: { readonly acts: number; readonly ms: number }): string {
  if (acts === 0) return 'nothing';
  return `${acts} act${acts === 1 ? '' : 's'}, ${Math.round(ms / 1000)} s`;
}
