import { useLater } from '../../shared/useLater.ts';
import type { VerdictLeafProps } from './VerdictLeaf.tsx';

/** The verdict; its code comes when the leaf is turned to, or once the bench stands. */
export function LazyVerdictLeaf(props: VerdictLeafProps & { readonly front: boolean }) {
  const leaf = useLater(() => import('./VerdictLeaf.tsx'), props.front);
  return leaf && <leaf.VerdictLeaf {...props} />;
}
