import { useEffect, useState } from 'preact/hooks';

/** What is not wanted at once is fetched when the bench has been standing for so long, ms. */
const LATER_MS = 4000;

/** Code fetched when it is wanted, or a while later all the same; null until it has come. It never goes again. */
export function useLater<T>(fetch: () => Promise<T>, wantedNow: boolean): T | null {
  const [got, setGot] = useState<{ readonly value: T } | null>(null);
  useEffect(() => {
    if (got) return;
    let mounted = true;
    const take = () =>
      void fetch().then((value) => {
        if (mounted) setGot({ value });
      });
    const timer = setTimeout(take, wantedNow ? 0 : LATER_MS);
    return () => {
      mounted = false;
      clearTimeout(timer);
    };
  }, [wantedNow, got]);
  return got?.value ?? null;
}
