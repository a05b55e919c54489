import { useState } from 'preact/hooks';
import type { Issue, Parsed } from '../../scenario/scenario.ts';

/** Something the desk is asked to do, one at a time, with what it refused and what it said. */
export interface Deed {
  readonly busy: boolean;
  readonly issues: readonly Issue[];
  readonly said: string;
  /** @param done  what follows when it went well; a sentence it gives back is shown */
  run<T>(work: () => Promise<Parsed<T>>, done: (value: T) => string | undefined): void;
  clear(): void;
}

export function useDeed(): Deed {
  const [busy, setBusy] = useState(false);
  const [issues, setIssues] = useState<readonly Issue[]>([]);
  const [said, setSaid] = useState('');
  const clear = () => {
    setIssues([]);
    setSaid('');
  };
  return {
    busy,
    issues,
    said,
    clear,
    run(work, done) {
      if (busy) return;
      setBusy(true);
      clear();
      void work().then((answer) => {
        setBusy(false);
        if (answer.ok) setSaid(done(answer.value) ?? '');
        else setIssues(answer.issues);
      });
    },
  };
}
