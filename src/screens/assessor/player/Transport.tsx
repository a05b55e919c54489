import { useId } from 'preact/hooks';
import { Button } from '../../shared/Button.tsx';
import { clock } from '../../shared/time.ts';
import { type Player, type PlayerState, SPEEDS, type Speed } from './player.ts';

export interface TransportProps {
  readonly player: Player;
  readonly state: PlayerState;
  readonly acts: number;
}

/** Run, stop, step, speed and the place in time. */
export function Transport({ player, state, acts }: TransportProps) {
  return (
    <div class="as-transport">
      <fieldset class="acts acts-named">
        <legend class="visually-hidden">Play the attempt</legend>
        <Button kind="quiet" label="One act back" onPress={() => player.step(-1)}>
          <Sign d="M5 3v14M16 3 7 10l9 7z" />
        </Button>
        <Button kind="main" onPress={() => (state.playing ? player.pause() : player.play())}>
          {state.playing ? 'Pause' : 'Play'}
        </Button>
        <Button kind="quiet" label="One act on" onPress={() => player.step(1)}>
          <Sign d="M15 3v14M4 3l9 7-9 7z" />
        </Button>
        <SpeedChoice state={state} onSpeed={(speed) => player.setSpeed(speed)} />
        <label class="choice-option">
          <input
            type="checkbox"
            checked={state.skipping}
            onChange={(event) => player.setSkipping(event.currentTarget.checked)}
          />
          <span>pass over pauses</span>
        </label>
      </fieldset>
      <p class="as-time">
        <strong>{clock(state.atMs)}</strong> of {clock(player.endMs)};{' '}
        {state.entry < 0 ? 'before the first act' : `act ${state.entry} of ${acts - 1}`}
      </p>
    </div>
  );
}

/** A plain sign drawn as a path in a field of 20 by 20. */
function Sign({ d }: { readonly d: string }) {
  return (
    <svg class="as-sign" viewBox="0 0 20 20" aria-hidden="true">
      <path d={d} />
    </svg>
  );
}

interface SpeedChoiceProps {
  readonly state: PlayerState;
  readonly onSpeed: (speed: Speed) => void;
}

function SpeedChoice({ state, onSpeed }: SpeedChoiceProps) {
  const id = useId();
  return (
    <span class="as-speed">
      <label for={id}>Speed</label>
      <select
        id={id}
        value={String(state.speed)}
        onChange={(event) => onSpeed(Number(event.currentTarget.value) as Speed)}
      >
        {SPEEDS.map((speed) => (
          <option key={speed} value={String(speed)}>
            {speed === 0.5 ? '½' : speed}×
          </option>
        ))}
      </select>
    </span>
  );
}
