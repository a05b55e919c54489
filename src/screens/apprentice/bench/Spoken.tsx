import { useEffect, useRef, useState } from 'preact/hooks';

export interface SpokenProps {
  readonly lines: readonly string[];
  /** False while a needle still swings: nothing is said until it rests. */
  readonly settled: boolean;
}

/** Quiet before speaking, ms, so that a fast run of keys is not talked over. */
const QUIET_MS = 450;

/** Tells a screen reader what is new on the bench, once it has settled. */
export function Spoken({ lines, settled }: SpokenProps) {
  const said = useRef<readonly string[]>(lines);
  const [text, setText] = useState('');
  const now = lines.join('|');
  useEffect(() => {
    if (!settled) return;
    const timer = setTimeout(() => {
      const fresh = lines.filter((line) => !said.current.includes(line));
      said.current = lines;
      if (fresh.length) setText(fresh.join(' '));
    }, QUIET_MS);
    return () => clearTimeout(timer);
  }, [now, settled]);
  return (
    <p class="visually-hidden" aria-live="polite">
      {text}
    </p>
  );
}
