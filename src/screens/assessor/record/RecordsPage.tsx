import { useState } from 'preact/hooks';
import type { SignedRecord } from '../../../records/sign.ts';
import { dayWords } from '../../shared/time.ts';
import { useLoaded } from '../../shared/useLoaded.ts';
import { Answered } from '../Answered.tsx';
import type { AssessorPageProps } from '../AssessorScreens.tsx';
import { DeedNotice } from '../DeedNotice.tsx';
import type { DraftSummary } from '../desk.ts';
import { writeAssessorRoute } from '../route.ts';
import { decisionWords } from '../say.ts';
import { useDeed } from '../useDeed.ts';

/** What was begun and what was signed. */
export function RecordsPage({ desk }: AssessorPageProps) {
  const deed = useDeed();
  const [version, setVersion] = useState(0);
  const drafts = useLoaded(() => desk.drafts(), [desk, version]);
  const records = useLoaded(() => desk.records(), [desk]);
  const discard = (draft: DraftSummary) => {
    if (!confirm(`Throw away the draft about ${draft.title}? The attempts stay.`)) return;
    deed.run(
      () => desk.discard(draft.id),
      () => {
        setVersion((count) => count + 1);
        return `The draft about ${draft.title} was thrown away.`;
      },
    );
  };
  return (
    <main class="as-page paper" aria-labelledby="as-title">
      <h1 id="as-title">Drafts and records</h1>
      <DeedNotice deed={deed} />
      <section aria-labelledby="as-drafts">
        <h2 id="as-drafts">Begun, not signed</h2>
        <Answered answer={drafts} waiting="Fetching the drafts…">
          {(all) => <Drafts drafts={all} onDiscard={discard} />}
        </Answered>
      </section>
      <section aria-labelledby="as-records">
        <h2 id="as-records">Signed</h2>
        <Answered answer={records} waiting="Fetching the records…">
          {(all) => <Records records={all} />}
        </Answered>
      </section>
    </main>
  );
}

interface DraftsProps {
  readonly drafts: readonly DraftSummary[];
  readonly onDiscard: (draft: DraftSummary) => void;
}

function Drafts({ drafts, onDiscard }: DraftsProps) {
  if (drafts.length === 0)
    return <p>Nothing is half judged. Choose attempts under “Finished attempts” to begin a record.</p>;
  return (
    <ul class="as-list">
      {drafts.map((draft) => (
        <li key={draft.id}>
          <a href={writeAssessorRoute({ page: 'review', id: draft.id })}>{draft.title}</a>, last changed{' '}
          {dayWords(draft.changedAt)}
          <button
            type="button"
            class="entry-link"
            aria-label={`Throw away the draft about ${draft.title}`}
            onClick={() => onDiscard(draft)}
          >
            throw away
          </button>
        </li>
      ))}
    </ul>
  );
}

function Records({ records }: { readonly records: readonly SignedRecord[] }) {
  if (records.length === 0) return <p>No record has been signed here yet.</p>;
  const newest = [...records].sort((one, other) => other.record.signedAt.localeCompare(one.record.signedAt));
  return (
    <ul class="as-list">
      {newest.map(({ record }) => (
        <li key={record.id}>
          <a href={writeAssessorRoute({ page: 'record', id: record.id })}>{record.learner.name}</a>:{' '}
          <strong>{decisionWords(record.outcome)}</strong>, {record.evidence.length}{' '}
          {record.evidence.length === 1 ? 'attempt' : 'attempts'}, {record.assessor},{' '}
          {dayWords(record.signedAt)}
        </li>
      ))}
    </ul>
  );
}
