import { useState } from 'preact/hooks';
import { LIMITS } from '../../records/record.ts';
import { Button } from '../shared/Button.tsx';
import { TextField } from '../shared/Field.tsx';
import { dayWords } from '../shared/time.ts';
import { useLoaded } from '../shared/useLoaded.ts';
import { Answered } from './Answered.tsx';
import type { AssessorPageProps } from './AssessorScreens.tsx';
import { DeedNotice } from './DeedNotice.tsx';
import type { KnownKey } from './desk.ts';
import { useDeed } from './useDeed.ts';

/** Keys that sign here, and keys of others that are recognised. */
export function KeysPage({ desk }: AssessorPageProps) {
  const deed = useDeed();
  const [owner, setOwner] = useState('');
  const keys = useLoaded(() => desk.keys(), [desk, deed.said]);
  const forget = (key: KnownKey) => {
    const loss = key.canSign ? ' It cannot be made again: nothing more can be signed with it.' : '';
    if (!confirm(`Forget the key of ${key.owner}?${loss}`)) return;
    deed.run(
      () => desk.forget(key.fingerprint),
      () => `The key of ${key.owner} was forgotten.`,
    );
  };
  return (
    <main class="as-page paper" aria-labelledby="as-title">
      <h1 id="as-title">Keys</h1>
      <DeedNotice deed={deed} />
      <Answered answer={keys} waiting="Fetching the keys…">
        {(all) => (
          <>
            <KeyList
              title="Yours, in this browser"
              none="None yet. One is made below, or when the first record is signed."
              keys={all.filter(({ canSign }) => canSign)}
              onForget={forget}
            />
            <KeyList
              title="Of others, recognised here"
              none="None yet. A colleague’s key is recognised from a record of theirs under “Check a file”."
              keys={all.filter(({ canSign }) => !canSign)}
              onForget={forget}
            />
          </>
        )}
      </Answered>
      <section class="as-newkey" aria-labelledby="as-newkey-title">
        <h2 id="as-newkey-title">A new key</h2>
        <p>
          It is made in this browser, and its secret half can be copied by nobody, not by you either. When
          this browser’s storage is cleared it is gone; make a new one then, and tell people its fingerprint.
        </p>
        <TextField label="Whose key it is" value={owner} onInput={setOwner} autoComplete="name" />
        <Button
          kind="main"
          disabled={deed.busy || owner.trim() === ''}
          onPress={() =>
            deed.run(
              () => desk.makeKey(owner),
              (made) => {
                setOwner('');
                return `The key of ${made.owner} is made. Write down its fingerprint: ${made.fingerprint}.`;
              },
            )
          }
        >
          Make a key
        </Button>
      </section>
      <section aria-labelledby="as-limits-title">
        <h2 id="as-limits-title">What a signature cannot stop</h2>
        <ul>
          {LIMITS.map((limit) => (
            <li key={limit}>{limit}</li>
          ))}
        </ul>
      </section>
    </main>
  );
}

interface KeyListProps {
  readonly title: string;
  /** Said where there is none. */
  readonly none: string;
  readonly keys: readonly KnownKey[];
  readonly onForget: (key: KnownKey) => void;
}

function KeyList({ title, none, keys, onForget }: KeyListProps) {
  return (
    <section aria-label={title}>
      <h2>{title}</h2>
      {keys.length === 0 ? <p>{none}</p> : null}
      <ul class="as-list">
        {keys.map((key) => (
          <li key={key.fingerprint}>
            <strong>{key.owner}</strong>, since {dayWords(key.madeAt)}
            <button
              type="button"
              class="entry-link"
              aria-label={`Forget the key of ${key.owner}`}
              onClick={() => onForget(key)}
            >
              forget
            </button>
            <code class="as-print">{key.fingerprint}</code>
          </li>
        ))}
      </ul>
    </section>
  );
}
