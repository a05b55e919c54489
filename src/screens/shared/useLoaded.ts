import { useEffect, useMemo, useState } from 'preact/hooks';

/**
 * Something on its way: null until it has come. Asked for at once, not a frame later, and anew whenever a key changes;
 * late answers are dropped. What is known already is answered in the same breath.
 */
export function useLoaded<T>(ask: () => Promise<T> | T, keys: readonly unknown[]): T | null {
  const asked = useMemo(ask, keys);
  const [got, setGot] = useState<{ readonly from: Promise<T> | T; readonly value: T } | null>(null);
  useEffect(() => {
    if (!(asked instanceof Promise)) return;
    let wanted = true;
    void asked.then((value) => {
      if (wanted) setGot({ from: asked, value });
    });
    return () => {
      wanted = false;
    };
  }, [asked]);
  if (!(asked instanceof Promise)) return asked;
  return got?.from === asked ? got.value : null;
}
