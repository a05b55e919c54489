import { Howl, Howler } from 'howler';
import { LEAD_MS, LOOP_MS, type LoopName, type ShotName, type SoundName } from './names.ts';
import type { SoundOutput } from './output.ts';
import { FADED_MS, type GainParam, rampTo } from './ramp.ts';

/** The browser's sound through howler. Files are fetched when they are first needed. */
export function howlerOutput(load: (name: SoundName) => string): SoundOutput {
  const loops = new Map<LoopName, Loop>();
  const shots = new Map<ShotName, Howl>();
  return {
    loop(name, gain) {
      const loop = loops.get(name);
      if (loop !== undefined) return loop.setGain(gain);
      if (gain <= 0) return;
      const made = new Loop(name, load(name));
      loops.set(name, made);
      made.setGain(gain);
    },
    play(name, gain) {
      const shot = shots.get(name) ?? new Howl({ src: [load(name)], format: ['wav'] });
      shots.set(name, shot);
      shot.volume(gain);
      shot.play();
    },
    close() {
      for (const loop of loops.values()) loop.close();
      for (const shot of shots.values()) shot.unload();
    },
  };
}

/**
 * A loop whose gain is ramped on its own node of the sound graph: the library's volume steps, and stopping a loop that
 * still sounds clicks. So a silenced loop is stopped only once it has faded.
 */
class Loop {
  private readonly howl: Howl;
  private id: number | null = null;
  private gain = 0;
  private stopping: ReturnType<typeof setTimeout> | undefined;

  constructor(name: LoopName, url: string) {
    this.howl = new Howl({
      src: [url],
      format: ['wav'],
      volume: 0,
      sprite: { loop: [LEAD_MS, LOOP_MS[name], true] },
    });
    // Starting sets the gain to the library's own volume: ours is put back from there.
    this.howl.on('play', () => this.ramp());
  }

  setGain(gain: number): void {
    if (gain === this.gain) return;
    this.gain = gain;
    clearTimeout(this.stopping);
    if (gain > 0 && this.id === null) this.id = this.howl.play('loop');
    else this.ramp();
    if (gain <= 0) this.stopping = setTimeout(() => this.stop(), FADED_MS);
  }

  close(): void {
    clearTimeout(this.stopping);
    this.howl.unload();
  }

  private stop(): void {
    if (this.id !== null) this.howl.stop(this.id);
    this.id = null;
  }

  private ramp(): void {
    if (this.id === null) return;
    const param = gainParam(this.howl, this.id);
    if (param === null) this.howl.volume(this.gain, this.id);
    else rampTo(param, this.gain, Howler.ctx.currentTime);
  }
}

/** The gain of one playing sound in the sound graph; null where the browser has none. Not in the library's types. */
function gainParam(howl: Howl, id: number): GainParam | null {
  const inner = howl as unknown as { _soundById(id: number): { _node?: { gain?: GainParam } } | null };
  const gain = inner._soundById(id)?._node?.gain;
  return typeof gain?.setTargetAtTime === 'function' ? gain : null;
}
