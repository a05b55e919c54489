import { afterEach, describe, expect, it } from 'vitest';
import { type BenchSound, createBenchSound } from '../../src/sound/benchSound.ts';
import { mix } from '../../src/sound/mix.ts';
import type { LoopName, ShotName } from '../../src/sound/names.ts';
import type { SoundOutput } from '../../src/sound/output.ts';
import { humming, QUIET, touching, withStrip } from './bench.ts';

/** Writes down what it is asked to sound. */
class Paper implements SoundOutput {
  readonly gains = new Map<LoopName, number>();
  readonly shots: ShotName[] = [];
  closed = false;

  loop(name: LoopName, gain: number): void {
    this.gains.set(name, gain);
  }
  play(name: ShotName): void {
    this.shots.push(name);
  }
  close(): void {
    this.closed = true;
  }
}

let sound: BenchSound | undefined;
afterEach(() => sound?.close());

function bench(muted = false) {
  const paper = new Paper();
  const gestures = new EventTarget();
  const made = createBenchSound((name) => `/${name}.wav`, { gestures, output: async () => paper, muted });
  sound = made;
  const gesture = async () => {
    gestures.dispatchEvent(new Event('pointerup'));
    await new Promise((done) => setTimeout(done, 0));
  };
  return { made, paper, gestures, gesture };
}

describe('the sound of the bench', () => {
  it('waits for the first gesture and then takes up what is there', async () => {
    const { made, paper, gesture } = bench();
    made.hear(humming(11, 2));
    expect(paper.gains.size).toBe(0);
    await gesture();
    expect(paper.gains.get('hum100')).toBe(mix(humming(11, 2)).hum);
  });

  it('plays the set of loops that belongs to the mains', async () => {
    const { made, paper, gesture } = bench();
    await gesture();
    made.hear(withStrip(humming(12, 3, 120), 2, 4));
    expect([...paper.gains.keys()]).toEqual(['hum120', 'growl120', 'buzz120']);
    expect(paper.gains.get('buzz120')).toBeGreaterThan(0);
  });

  it('sounds what happens once, and not again', async () => {
    const { made, paper, gesture } = bench();
    await gesture();
    const on = humming(11);
    made.hear(QUIET);
    made.hear(on);
    made.hear(touching(on, 'lamp.1', 'core'));
    made.hear(touching(on, 'lamp.1', 'core'));
    expect(paper.shots).toEqual(['click', 'tick']);
  });

  it('is silent while muted, captions going on, and comes back at the right gain', async () => {
    const { made, paper, gesture } = bench(true);
    const lines: string[] = [];
    made.captions((line) => lines.push(line));
    await gesture();
    made.hear(QUIET);
    made.hear(humming(11, 0));
    expect([...paper.gains.values()].every((gain) => gain === 0)).toBe(true);
    expect(paper.shots).toEqual([]);
    expect(lines).toEqual(['A switch clicks', 'The growler hums']);
    made.mute(false);
    expect(paper.gains.get('hum100')).toBe(mix(humming(11, 0)).hum);
  });

  it('stops telling who no longer listens, and lets go when closed', async () => {
    const { made, paper, gesture } = bench();
    const lines: string[] = [];
    const stop = made.captions((line) => lines.push(line));
    stop();
    await gesture();
    made.hear(humming(11));
    made.close();
    expect(lines).toEqual([]);
    expect(paper.closed).toBe(true);
  });

  it('stays quiet when the sound library cannot be fetched, and tries again at the next gesture', async () => {
    const gestures = new EventTarget();
    const paper = new Paper();
    let tries = 0;
    sound = createBenchSound((name) => name, {
      gestures,
      output: async () => {
        tries += 1;
        if (tries === 1) throw new Error('no network');
        return paper;
      },
    });
    sound.hear(humming(11));
    for (let i = 0; i < 3; i += 1) {
      gestures.dispatchEvent(new Event('keydown'));
      await new Promise((done) => setTimeout(done, 0));
    }
    expect(tries).toBe(2);
    expect(paper.gains.get('hum100')).toBeGreaterThan(0);
  });
});
