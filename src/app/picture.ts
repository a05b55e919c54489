import { scaleFraction } from '../engine/instruments/ammeter.ts';
import type { Job } from '../scenario/public/job.ts';
import type { SetOutScene, Size } from '../scene/index.ts';
import type { SceneWishes } from '../screens/apprentice/bench/mountScene.ts';
import { spoken } from '../screens/shared/words.ts';

/** What the picture of a bench depends on, apart from its job and its size. */
export type PictureWishes = Pick<SceneWishes, 'vocabulary' | 'still'>;

interface SetOut {
  readonly key: string;
  readonly scene: Promise<SetOutScene>;
}

/** One picture at most waits to be hung: that of the card being read. */
let waiting: SetOut | null = null;

/** Sets the bench out for a job whose card is being read, so that it stands there when the learner comes to it. */
export function setOutPicture(job: Job, size: Size, wishes: PictureWishes): void {
  const key = keyOf(job, wishes);
  if (waiting?.key === key) return;
  putAway();
  waiting = { key, scene: make(job, size, wishes) };
  // Whoever comes to take it is told.
  waiting.scene.catch(() => undefined);
}

/** The picture that was set out for this job, or a new one. Whoever takes it has to destroy it. */
export function takePicture(job: Job, size: Size, wishes: PictureWishes): Promise<SetOutScene> {
  const found = waiting;
  if (found?.key !== keyOf(job, wishes)) {
    putAway();
    return make(job, size, wishes);
  }
  waiting = null;
  return found.scene;
}

function putAway(): void {
  void waiting?.scene.then((scene) => scene.destroy()).catch(() => undefined);
  waiting = null;
}

async function make(job: Job, size: Size, { still, vocabulary }: PictureWishes): Promise<SetOutScene> {
  const { setOutScene } = await import('../scene/index.ts');
  return setOutScene(size, job, {
    reducedMotion: still,
    showBarNumbers: job.mode === 'guided',
    scaleFraction,
    say: (text) => spoken(text, vocabulary),
  });
}

/** An instructor may change a job while its card lies open. */
function keyOf(job: Job, { still, vocabulary }: PictureWishes): string {
  return JSON.stringify([job, still, vocabulary]);
}
