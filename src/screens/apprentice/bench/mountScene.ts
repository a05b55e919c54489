import type { BenchPort } from '../../../bench/port.ts';
import type { Tool } from '../../../scenario/public/benchTools.ts';
import type { Vocabulary } from '../../shared/words.ts';

/** What the scene is told when it is hung into the page. */
export interface SceneWishes {
  readonly vocabulary: Vocabulary;
  /** True: nothing swings, blurs or flickers; states change in one step. */
  readonly still: boolean;
  /** Handed over once the picture hangs. */
  readonly onReady?: (picture: PictureControl) => void;
  /** Told when the bench begins to be looked at closer, and when it is seen whole again. */
  readonly onCloser?: (closer: boolean) => void;
  /** Told when a tool is pressed on the picture. */
  readonly onTool?: (tool: Tool) => void;
}

/** What the page may ask of the picture. */
export interface PictureControl {
  lookCloser(closer: boolean): void;
}

/**
 * Puts the picture of the bench into its host element and returns the way to take it out again. `port` is the page's
 * own: acts sent through it get their refusals and warnings shown. Keys belong to the page, not to the picture.
 */
export type MountScene = (host: HTMLElement, port: BenchPort, wishes: SceneWishes) => () => void;
