import type { Settings } from '../shell.ts';

/** Whether nothing is to swing, blur or flicker: chosen here, or asked for by the operating system. */
export function isStill({ motion }: Pick<Settings, 'motion'>): boolean {
  return motion === 'still' || matchMedia('(prefers-reduced-motion: reduce)').matches;
}
