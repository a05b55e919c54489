import { fetchRenderer } from './drawing/renderer.ts';
import { studio } from './studio/studio.ts';

/** Fetches what will paint and draw the bench, so that it is there when one is opened. */
export function warmScene(): void {
  studio.open();
  void Promise.all([import('./index.ts'), fetchRenderer()]).catch(() => undefined);
}
