import { useLoaded } from '../../../shared/useLoaded.ts';
import type { WordsPanelProps } from './WordsPanel.tsx';

/** The panel; its code comes when it is first opened, and the bench can be used before it is there. */
export function LazyWordsPanel(props: WordsPanelProps) {
  const panel = useLoaded(() => import('./WordsPanel.tsx'), []);
  return panel ? <panel.WordsPanel {...props} /> : <p class="loading">Finding the words…</p>;
}
