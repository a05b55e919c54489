import { useState } from 'preact/hooks';
import type { Issue } from '../../scenario/scenario.ts';
import { DeedNotice } from '../assessor/DeedNotice.tsx';
import { useDeed } from '../assessor/useDeed.ts';
import { IssueList } from '../Problems.tsx';
import { Button } from './Button.tsx';
import type { Safe } from './keepSafe.ts';
import { Notice } from './Notice.tsx';
import { PickFile } from './PickFile.tsx';
import { saveText } from './saveText.ts';
import { useLoaded } from './useLoaded.ts';

export interface KeepSafePageProps {
  readonly safe: Safe;
  /** Class of the page at the desk it belongs to. */
  readonly page: string;
}

/** Everything of this browser into one file, and back from one. */
export function KeepSafePage({ safe, page }: KeepSafePageProps) {
  const deed = useDeed();
  const [leftOut, setLeftOut] = useState<readonly Issue[]>([]);
  const room = useLoaded(() => safe.room(), [safe, deed.said]);
  const saveAll = () =>
    deed.run(
      () => safe.saveAll(),
      ({ name, text }) => {
        saveText(name, text);
        return `${name} was handed to the browser to save.`;
      },
    );
  const takeIn = (file: File) => {
    setLeftOut([]);
    deed.run(
      () => safe.takeIn(file),
      (taken) => {
        setLeftOut(taken.leftOut);
        return `${file.name}: ${taken.said}`;
      },
    );
  };
  return (
    <main class={`${page} paper`} aria-labelledby="safe-title">
      <h1 id="safe-title">Keep safe</h1>
      <p>
        Everything here is kept in this browser alone. Save it to a file now and then, and keep the file
        somewhere else: all attempts, jobs made here, signed records, drafts, and the keys this desk knows.
      </p>
      {room ? <p>{room}</p> : null}
      <div class="acts">
        <Button kind="main" disabled={deed.busy} onPress={saveAll}>
          {deed.busy ? 'One moment…' : 'Save everything to a file'}
        </Button>
        <PickFile onPick={takeIn}>Take in a file of everything…</PickFile>
      </div>
      <DeedNotice deed={deed} />
      {leftOut.length > 0 ? (
        <Notice kind="problem">
          <span>Left out, and still in the file:</span>
          <IssueList issues={leftOut} />
        </Notice>
      ) : null}
      <h2 class="safe-know">What to know</h2>
      <ul>
        <li>Taking in a file adds to what is here. Nothing that is here is changed or removed by it.</li>
        <li>
          The file holds the hidden faults of every job and the learners’ names: keep it as you keep other
          papers of an assessment.
        </li>
        <li>
          A signing key cannot be read out of this browser, so it is not in the file. Records signed with it
          stay good; if the browser is lost, make a new key and tell people its fingerprint.
        </li>
      </ul>
    </main>
  );
}
