import type { Observation } from '../bench/observation.ts';
import { caption, NOTHING_TOLD } from './captions.ts';
import { soundsBetween } from './events.ts';
import { type Mix, mix, SILENCE } from './mix.ts';
import type { LoopName, ShotName, SoundName } from './names.ts';
import type { SoundOutput } from './output.ts';

/** The bench to an ear: hears observations, plays what belongs to them, and says it in words. */
export interface BenchSound {
  /** Takes in an observation; sounds what changed since the last one. */
  hear(seen: Observation): void;
  /** Silences the bench, or lets it sound again. Captions go on. */
  mute(on: boolean): void;
  /** Calls back with one caption at a time; returns the way to stop. */
  captions(listener: (line: string) => void): () => void;
  /** Silences and lets go of everything. */
  close(): void;
}

export interface BenchSoundOptions {
  /** Where the first gesture is waited for: a browser lets nothing sound before it. The window unless given. */
  readonly gestures?: EventTarget;
  /** Makes the output after the first gesture. The browser's own through howler unless given. */
  readonly output?: (load: (name: SoundName) => string) => Promise<SoundOutput>;
  readonly muted?: boolean;
}

const GESTURES = ['pointerup', 'keydown', 'touchend'] as const;
const SHOT_GAIN: Readonly<Record<ShotName, number>> = {
  click: 0.35,
  tick: 0.2,
  clack: 0.6,
  arc: 0.4,
  chalk: 0.25,
  thud: 0.6,
  slap: 0.5,
};

/**
 * @param load address of a sound's file
 */
export function createBenchSound(
  load: (name: SoundName) => string,
  options: BenchSoundOptions = {},
): BenchSound {
  const listeners = new Set<(line: string) => void>();
  const gestures = options.gestures ?? window;
  let output: SoundOutput | null = null;
  let last: Observation | null = null;
  let told = NOTHING_TOLD;
  let muted = options.muted ?? false;
  let closed = false;

  const sound = () => {
    if (output === null || last === null) return;
    playLoops(output, muted ? SILENCE : mix(last), last.hum.pitchHz);
  };
  const wake = async () => {
    forget();
    try {
      const made = await (options.output ?? browserOutput)(load);
      if (closed) return made.close();
      output = made;
      sound();
    } catch {
      // The library could not be fetched: the bench stays quiet, captions go on, the next gesture tries again.
      if (!closed) listen();
    }
  };
  const listen = () => {
    for (const kind of GESTURES) gestures.addEventListener(kind, wake);
  };
  const forget = () => {
    for (const kind of GESTURES) gestures.removeEventListener(kind, wake);
  };
  listen();

  return {
    hear(seen) {
      const before = last;
      last = seen;
      if (output !== null && before !== null && !muted) {
        for (const shot of soundsBetween(before, seen)) output.play(shot, SHOT_GAIN[shot]);
      }
      sound();
      const said = caption(told, before, seen);
      told = said.told;
      for (const line of said.lines) for (const listener of listeners) listener(line);
    },
    mute(on) {
      muted = on;
      sound();
    },
    captions(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    close() {
      closed = true;
      forget();
      listeners.clear();
      output?.close();
      output = null;
    },
  };
}

function playLoops(output: SoundOutput, gains: Mix, pitchHz: number): void {
  const pitch = pitchHz < 110 ? 100 : 120;
  const loops: readonly (readonly [LoopName, number])[] = [
    [`hum${pitch}`, gains.hum],
    [`growl${pitch}`, gains.harsh],
    [`buzz${pitch}`, gains.buzz],
  ];
  for (const [name, gain] of loops) output.loop(name, gain);
}

/** The sound library is fetched only when there is something to sound. */
async function browserOutput(load: (name: SoundName) => string): Promise<SoundOutput> {
  const { howlerOutput } = await import('./howlerOutput.ts');
  return howlerOutput(load);
}
