import { useEffect, useState } from 'preact/hooks';

/** Something on its way: null until it has come. Asked for anew whenever a key changes; late answers are dropped. */
export function useLoaded<T>(ask: () => Promise<T>, keys: readonly unknown[]): T | null {
  const [got, setGot] = useState<{ readonly value: T } | null>(null);
  useEffect(() => {
    let wanted = true;
    setGot(null);
    void ask().then((value) => {
      if (wanted) setGot({ value });
    });
    return () => {
      wanted = false;
    };
  }, keys);
  return got?.value ?? null;
}
