import { useLoaded } from '../../../shared/useLoaded.ts';
import type { GuideProps } from './Guide.tsx';

/** The guide; its code comes only with a guided job, and the bench can be used before it is there. */
export function LazyGuide(props: GuideProps) {
  const guide = useLoaded(() => import('./Guide.tsx'), []);
  return guide ? <guide.Guide {...props} /> : <div class="guide" />;
}
