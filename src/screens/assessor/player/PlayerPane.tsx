import { useEffect, useState } from 'preact/hooks';
import { sayObservation } from '../../../bench/words.ts';
import { Button } from '../../shared/Button.tsx';
import { useLoaded } from '../../shared/useLoaded.ts';
import { spoken } from '../../shared/words.ts';
import { Answered } from '../Answered.tsx';
import type { AssessorPageProps } from '../AssessorScreens.tsx';
import type { OpenedAttempt, Run } from '../desk.ts';
import { AttemptFiles } from '../review/AttemptFiles.tsx';
import { LogPane } from './LogPane.tsx';
import { Picture } from './Picture.tsx';
import { Beside, TimeLine } from './TimeLine.tsx';
import { Transport } from './Transport.tsx';
import { usePlayer, usePlayerState } from './usePlayer.ts';

/** A wish from outside the player: to be at an act, with these acts marked in the log. */
export interface Wanted {
  readonly entry: number;
  readonly marked: readonly number[];
}

export interface PlayerPaneProps extends AssessorPageProps {
  readonly opened: OpenedAttempt;
  readonly wanted: Wanted | null;
  /** Told where the film stands whenever it comes to rest. */
  readonly onAt: (entry: number) => void;
}

/** The attempt as a film, and on wish the expert's at the same job. */
export function PlayerPane(props: PlayerPaneProps) {
  const { opened, desk, wanted } = props;
  const expert = useLoaded(() => desk.expertRun(opened.attempt.id), [desk, opened.attempt.id]);
  const [who, setWho] = useState<'learner' | 'expert'>('learner');
  useEffect(() => setWho('learner'), [opened, wanted]);
  const other = expert?.ok ? expert.value : null;
  const showsExpert = who === 'expert' && other !== null;
  return (
    <section class="as-player" aria-label="The attempt as it was done">
      <div class="acts as-who">
        <Button kind="quiet" pressed={!showsExpert} onPress={() => setWho('learner')}>
          The learner
        </Button>
        <Button kind="quiet" pressed={showsExpert} disabled={other === null} onPress={() => setWho('expert')}>
          {expert === null ? 'The expert is at work on the same job…' : 'The expert at the same job'}
        </Button>
      </div>
      {showsExpert ? (
        <Film {...props} key="expert" run={other} expert={null} wanted={null} onAt={() => undefined} />
      ) : (
        <Film {...props} key="learner" run={opened} expert={other} />
      )}
      <details class="as-compare">
        <summary>Beside the expert, in figures</summary>
        <Answered answer={expert} waiting="The expert is at work…">
          {(found) => <Beside run={opened} expert={found} />}
        </Answered>
      </details>
      <AttemptFiles desk={desk} attempt={opened.attempt.id} />
    </section>
  );
}

interface FilmProps extends PlayerPaneProps {
  readonly run: Run;
  readonly expert: Run | null;
}

function Film({ run, expert, wanted, onAt, desk, settings }: FilmProps) {
  const player = usePlayer(run);
  const state = usePlayerState(player);
  useEffect(() => {
    if (wanted === null) return;
    player.pause();
    player.goToEntry(wanted.entry);
  }, [player, wanted]);
  useEffect(() => {
    if (!state.playing) onAt(state.entry);
  }, [state.playing, state.entry]);
  return (
    <>
      <Picture job={run.job} player={player} desk={desk} settings={settings} />
      <Transport player={player} state={state} acts={run.attempt.entries.length} />
      <TimeLine run={run} expert={expert} player={player} state={state} />
      <div class="as-instep">
        <LogPane
          run={run}
          vocabulary={settings.vocabulary}
          current={state.entry}
          marked={wanted?.marked ?? NONE}
          onGo={player.goToEntry}
        />
        <section class="as-seen" aria-labelledby="as-seen-title">
          <h2 id="as-seen-title">What eyes and ears had</h2>
          <ul>
            {sayObservation(run.job.armature, player.look()).map((sentence) => (
              <li key={sentence}>{spoken(sentence, settings.vocabulary)}</li>
            ))}
          </ul>
        </section>
      </div>
    </>
  );
}

const NONE: readonly number[] = [];
