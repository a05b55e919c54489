import { useState } from 'preact/hooks';
import { Button } from '../shared/Button.tsx';
import { PickFiles } from '../shared/PickFile.tsx';
import { saveText } from '../shared/saveText.ts';
import { useLoaded } from '../shared/useLoaded.ts';
import { Answered } from './Answered.tsx';
import type { AssessorPageProps } from './AssessorScreens.tsx';
import { AttemptsFilter } from './AttemptsFilter.tsx';
import { AttemptsTable } from './AttemptsTable.tsx';
import { chosen, FIRST_WISHES, type ListWishes, whyNotOneSet } from './attemptTable.ts';
import { DeedNotice } from './DeedNotice.tsx';
import type { FinishedAttempt } from './desk.ts';
import { writeAssessorRoute } from './route.ts';
import { takeIn } from './takeIn.ts';
import { type Deed, useDeed } from './useDeed.ts';

/** The list of finished attempts; one or several of one person go to the assessor together. */
export function AttemptsPage({ desk }: AssessorPageProps) {
  const deed = useDeed();
  const [version, setVersion] = useState(0);
  const [wishes, setWishes] = useState(FIRST_WISHES);
  const [picked, setPicked] = useState<ReadonlySet<string>>(new Set());
  const attempts = useLoaded(() => desk.attempts(), [desk, version]);
  const pick = (files: readonly File[]) =>
    deed.run(
      async () => {
        const answer = await takeIn(files, desk);
        // Some may have been kept even where others were refused.
        setVersion((count) => count + 1);
        return answer;
      },
      (said) => said,
    );
  return (
    <main class="as-page paper" aria-labelledby="as-title">
      <header class="as-head">
        <h1 id="as-title">Finished attempts</h1>
        <PickFiles onPick={pick}>Take in files…</PickFiles>
      </header>
      <DeedNotice deed={deed} busy="Looking into what was handed over…" />
      <Answered answer={attempts} waiting="Fetching the attempts…">
        {(all) => <Attempts {...{ all, desk, deed, wishes, setWishes, picked, setPicked }} />}
      </Answered>
    </main>
  );
}

interface AttemptsProps {
  readonly all: readonly FinishedAttempt[];
  readonly desk: AssessorPageProps['desk'];
  readonly deed: Deed;
  readonly wishes: ListWishes;
  readonly setWishes: (wishes: ListWishes) => void;
  readonly picked: ReadonlySet<string>;
  readonly setPicked: (picked: ReadonlySet<string>) => void;
}

function Attempts({ all, desk, deed, wishes, setWishes, picked, setPicked }: AttemptsProps) {
  const shown = chosen(all, wishes);
  const inSight = shown.filter(({ id }) => picked.has(id));
  if (all.length === 0)
    return (
      <p>
        Nobody has finished an attempt on this machine yet. Learners’ files can be taken in with the button
        above.
      </p>
    );
  return (
    <>
      <AttemptsFilter wishes={wishes} onChange={setWishes} shown={shown.length} all={all.length} />
      <AttemptsTable
        attempts={shown}
        picked={picked}
        onPick={setPicked}
        wishes={wishes}
        onSort={(sort, falling) => setWishes({ ...wishes, sort, falling })}
      />
      <PickedBar
        picked={inSight}
        onAssess={() =>
          deed.run(
            () => desk.begin(inSight.map(({ id }) => id)),
            (id) => {
              location.hash = writeAssessorRoute({ page: 'review', id });
              return undefined;
            },
          )
        }
        onTable={() =>
          deed.run(
            () => desk.listFile((inSight.length > 0 ? inSight : shown).map(({ id }) => id)),
            (file) => {
              saveText(file.name, file.text);
              return undefined;
            },
          )
        }
      />
    </>
  );
}

interface PickedBarProps {
  readonly picked: readonly FinishedAttempt[];
  readonly onAssess: () => void;
  readonly onTable: () => void;
}

function PickedBar({ picked, onAssess, onTable }: PickedBarProps) {
  const why = whyNotOneSet(picked);
  const words = picked.length === 1 ? 'Assess this attempt' : `Assess these ${picked.length} as one set`;
  return (
    <div class="as-picked">
      <Button kind="main" disabled={why !== null} onPress={onAssess}>
        {picked.length === 0 ? 'Assess' : words}
      </Button>
      <p class="as-why" role="status">
        {why ?? `One set of evidence: ${picked[0]!.learner.trim() || 'no name given'}.`}
      </p>
      <Button onPress={onTable}>
        {picked.length === 0 ? 'Save the list as a table' : 'Save these as a table'}
      </Button>
    </div>
  );
}
