import type { LoopName, ShotName } from './names.ts';

/** What can make a sound: the browser, or a test that writes down what it was asked for. */
export interface SoundOutput {
  /** Lets a loop sound at a gain from now on, 0..1, without a click; 0 silences it. */
  loop(name: LoopName, gain: number): void;
  /** Sounds once. */
  play(name: ShotName, gain: number): void;
  close(): void;
}
