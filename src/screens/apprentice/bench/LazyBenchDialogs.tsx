import { useLater } from '../../shared/useLater.ts';
import type { BenchDialogsProps } from './BenchDialogs.tsx';

/** The questions over the bench; their code comes with the first of them, or once the bench stands. */
export function LazyBenchDialogs(props: BenchDialogsProps) {
  const dialogs = useLater(() => import('./BenchDialogs.tsx'), props.question !== null);
  return dialogs && <dialogs.BenchDialogs {...props} />;
}
