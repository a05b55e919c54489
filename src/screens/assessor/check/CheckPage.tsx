import { useState } from 'preact/hooks';
import { Button } from '../../shared/Button.tsx';
import { TextField } from '../../shared/Field.tsx';
import { PickFile } from '../../shared/PickFile.tsx';
import type { AssessorPageProps } from '../AssessorScreens.tsx';
import { DeedNotice } from '../DeedNotice.tsx';
import type { AssessorDesk, CheckedFile } from '../desk.ts';
import { PrintedRecord } from '../record/PrintedRecord.tsx';
import { type Deed, useDeed } from '../useDeed.ts';
import { CheckList } from './CheckList.tsx';

/** A file somebody handed over: whether it is as it was signed, and where not. */
export function CheckPage({ desk, settings }: AssessorPageProps) {
  const deed = useDeed();
  const [checked, setChecked] = useState<CheckedFile | null>(null);
  const look = (file: File) =>
    deed.run(
      () => desk.check(file),
      (found) => {
        setChecked(found);
        return undefined;
      },
    );
  return (
    <main class="as-page paper" aria-labelledby="as-title">
      <header class="as-head">
        <h1 id="as-title">Check a file</h1>
        <PickFile onPick={look}>Open a file…</PickFile>
      </header>
      <p>
        Opens a record with its attempts, or attempts alone. Nothing of it is kept until you say so.
        Everything is done again and compared, and every seal and signature is checked.
      </p>
      {deed.busy ? (
        <p class="loading" role="status">
          Doing it all again and comparing…
        </p>
      ) : null}
      <DeedNotice deed={deed} />
      {checked ? (
        <>
          <Verdict checked={checked} />
          <CheckList checked={checked} />
          <WithIt checked={checked} desk={desk} deed={deed} onDone={setChecked} />
          {checked.signed ? (
            <details class="as-background">
              <summary>Read the record as it stands in the file</summary>
              <PrintedRecord record={checked.signed.record} vocabulary={settings.vocabulary} />
            </details>
          ) : null}
        </>
      ) : null}
    </main>
  );
}

/** The worst there is to say, first and in large letters. */
function Verdict({ checked: { name, verification, replays } }: { readonly checked: CheckedFile }) {
  const broken = verification.checks.find(({ verdict }) => verdict === 'broken');
  const parted = replays.find(({ agreed }) => !agreed);
  if (broken)
    return (
      <p class="as-verdict as-verdict-altered" role="alert">
        <strong>✕ {name} was altered.</strong> {broken.sentence}
      </p>
    );
  if (parted)
    return (
      <p class="as-verdict as-verdict-altered" role="alert">
        <strong>✕ {name} does not hold together.</strong> {parted.sentence}
      </p>
    );
  if (verification.verdict === 'unsigned')
    return (
      <p class="as-verdict as-verdict-unsigned" role="status">
        <strong>? {name} is not signed.</strong> Nothing speaks against it, and nobody vouches for it.
      </p>
    );
  return (
    <p class="as-verdict as-verdict-intact" role="status">
      <strong>✓ {name} is as it was signed.</strong> Whose key it was is for you to know: compare the
      fingerprint.
    </p>
  );
}

interface WithItProps {
  readonly checked: CheckedFile;
  readonly desk: AssessorDesk;
  readonly deed: Deed;
  readonly onDone: (checked: CheckedFile | null) => void;
}

/** What can be done with a file that was checked. */
function WithIt({ checked, desk, deed, onDone }: WithItProps) {
  const { signed, verification } = checked;
  const [owner, setOwner] = useState(signed?.record.assessor ?? '');
  const unknownKey = verification.checks.some(({ what, verdict }) => what === 'key' && verdict === 'unknown');
  const sound = verification.verdict !== 'altered';
  return (
    <>
      {signed && unknownKey && sound ? (
        <fieldset class="as-trust">
          <legend>Do you know this key?</legend>
          <p>
            Compare <code class="as-print">{signed.record.signedWith.fingerprint}</code> with a fingerprint
            that came to you on paper or by telephone.
          </p>
          <TextField label="It is the key of" value={owner} onInput={setOwner} />
          <Button
            disabled={deed.busy || owner.trim() === ''}
            onPress={() =>
              deed.run(
                () => desk.trust(signed, owner.trim()),
                () => `This desk now knows the key of ${owner.trim()}.`,
              )
            }
          >
            I compared it: remember the key
          </Button>
        </fieldset>
      ) : null}
      <div class="acts">
        <Button
          kind="main"
          disabled={deed.busy || !sound}
          onPress={() => deed.run(checked.keep, (said) => said)}
        >
          Keep it at this desk
        </Button>
        <Button onPress={() => onDone(null)}>Put the file away</Button>
      </div>
    </>
  );
}
