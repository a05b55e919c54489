import type { Job } from '../scenario/public/job.ts';
import type { MountScene } from '../screens/apprentice/bench/mountScene.ts';
import { type BenchSound, createBenchSound } from '../sound/benchSound.ts';
import type { SoundName } from '../sound/names.ts';
import { takePicture } from './picture.ts';

const SOUND_FILES = import.meta.glob<string>('../../assets/sounds/*', {
  eager: true,
  query: '?url',
  import: 'default',
});

function soundUrl(name: SoundName): string {
  const found = Object.entries(SOUND_FILES).find(([file]) => file.includes(`/${name}.`));
  if (!found) throw new Error(`There is no sound ${name} in assets/sounds.`);
  return found[1];
}

export interface Surround {
  readonly mountScene: MountScene;
  readonly setMuted: (muted: boolean) => void;
  readonly captions: BenchSound['captions'];
  close(): void;
}

/** Eyes and ears of a bench: the picture and the sound that follow its observations. */
export function surround(job: Job): Surround {
  const sound: BenchSound = createBenchSound(soundUrl);
  return {
    mountScene: (host, port, wishes) => {
      let unmounted = false;
      let takeDown = () => {};
      const unwatchSound = port.watch((seen) => sound.hear(seen));
      const size = { width: host.clientWidth, height: host.clientHeight };
      void takePicture(job, size, wishes).then((picture) => {
        if (unmounted) return picture.destroy();
        const scene = picture.hang({
          host,
          send: (action) => port.send(action),
          ...(wishes.onCloser && { onCloser: wishes.onCloser }),
          ...(wishes.onTool && { onTool: wishes.onTool }),
        });
        // Where everything touchable lies on the canvas, for tests that press where a person would.
        Object.assign(host, { places: () => scene.places(), drawing: () => scene.stats() });
        const unwatch = port.watch((seen) => scene.show(seen));
        scene.show(port.look());
        wishes.onReady?.(scene);
        const resizing = new ResizeObserver(() => scene.resize());
        resizing.observe(host);
        takeDown = () => {
          resizing.disconnect();
          unwatch();
          scene.destroy();
        };
      });
      return () => {
        unmounted = true;
        unwatchSound();
        takeDown();
      };
    },
    setMuted: (muted) => sound.mute(muted),
    captions: (listener) => sound.captions(listener),
    close: () => sound.close(),
  };
}

/** The picture alone, for an attempt that is played back: it shows, in silence. */
export function mountReplay(job: Job, ...mount: Parameters<MountScene>): () => void {
  const around = surround(job);
  around.setMuted(true);
  const takeDown = around.mountScene(...mount);
  return () => {
    takeDown();
    around.close();
  };
}
