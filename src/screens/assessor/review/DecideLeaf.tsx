import { useState } from 'preact/hooks';
import { EVIDENCE_RULES } from '../../../records/record.ts';
import { Button } from '../../shared/Button.tsx';
import { RadioField, SelectField, TextField } from '../../shared/Field.tsx';
import { useLoaded } from '../../shared/useLoaded.ts';
import { Answered } from '../Answered.tsx';
import { DeedNotice } from '../DeedNotice.tsx';
import type { AssessorDesk, KnownKey } from '../desk.ts';
import { writeAssessorRoute } from '../route.ts';
import { RULE_WORDS } from '../say.ts';
import { type Deed, useDeed } from '../useDeed.ts';
import type { LeafProps } from './ReviewPage.tsx';

interface DecideLeafProps extends LeafProps {
  readonly desk: AssessorDesk;
}

const NOT_KEPT = [
  { path: '', sentence: 'The draft could not be kept, so nothing was signed: see the top of the page.' },
];

/** The four questions about the evidence, the decision, and the signature. */
export function DecideLeaf({ drafting, attempts, desk }: DecideLeafProps) {
  const { draft, change } = drafting;
  const deed = useDeed();
  const keys = useLoaded(() => desk.keys(), [desk, deed.said]);
  const allStopped = attempts.every(({ marks }) => marks.stoppedBy !== null);
  return (
    <>
      <h2>The evidence</h2>
      <fieldset class="choice">
        <legend>Is it…</legend>
        {EVIDENCE_RULES.map((rule) => (
          <label key={rule} class="choice-option as-rule">
            <input
              type="checkbox"
              checked={draft.rulesOfEvidence[rule]}
              onChange={(event) =>
                change({ rulesOfEvidence: { ...draft.rulesOfEvidence, [rule]: event.currentTarget.checked } })
              }
            />
            <span>
              <strong>{RULE_WORDS[rule][0]}</strong>: {RULE_WORDS[rule][1]}
            </span>
          </label>
        ))}
      </fieldset>
      <h2>Your decision</h2>
      <RadioField
        label="On this evidence the learner is"
        value={draft.outcome ?? ''}
        options={[
          { value: 'competent', label: 'competent' },
          { value: 'notYet', label: 'not yet competent' },
        ]}
        onChange={(outcome) => change({ outcome: outcome === '' ? null : outcome })}
      />
      {allStopped ? (
        <p class="as-none">Every attempt here was stopped by a critical act: the outcome is “not yet”.</p>
      ) : null}
      <TextField label="Your name" value={draft.assessor} onInput={(assessor) => change({ assessor })} />
      <DeedNotice deed={deed} />
      <Answered answer={keys} waiting="Looking for your key…">
        {(all) => (
          <SignWith
            keys={all.filter(({ canSign }) => canSign)}
            owner={draft.assessor}
            desk={desk}
            deed={deed}
            onSign={(fingerprint) =>
              deed.run(
                async () =>
                  (await drafting.settled())
                    ? desk.sign(draft, fingerprint)
                    : { ok: false, issues: NOT_KEPT },
                (id) => {
                  location.hash = writeAssessorRoute({ page: 'record', id });
                  return undefined;
                },
              )
            }
          />
        )}
      </Answered>
    </>
  );
}

interface SignWithProps {
  readonly keys: readonly KnownKey[];
  readonly owner: string;
  readonly desk: AssessorDesk;
  readonly deed: Deed;
  readonly onSign: (fingerprint: string) => void;
}

function SignWith({ keys, owner, desk, deed, onSign }: SignWithProps) {
  const [picked, setPicked] = useState('');
  const key = keys.find(({ fingerprint }) => fingerprint === picked) ?? keys[0];
  if (key === undefined)
    return (
      <>
        <p>
          There is no key in this browser to sign with. It is made here, and nobody can copy it out; give its
          fingerprint to those who check your records.
        </p>
        <Button
          kind="main"
          disabled={deed.busy}
          onPress={() =>
            deed.run(
              () => desk.makeKey(owner),
              (made) => `Your key is made. Its fingerprint is ${made.fingerprint}.`,
            )
          }
        >
          Make a key for {owner.trim() || 'me'}
        </Button>
      </>
    );
  return (
    <>
      {keys.length > 1 ? (
        <SelectField
          label="Sign with the key of"
          value={key.fingerprint}
          options={keys.map(({ fingerprint, owner: whose }) => ({
            value: fingerprint,
            label: `${whose}, ${fingerprint.slice(0, 9)}…`,
          }))}
          onChange={setPicked}
        />
      ) : (
        <p>
          You sign with the key of {key.owner}: <code class="as-print">{key.fingerprint}</code>
        </p>
      )}
      <p>Once signed, this record cannot be changed; a later one can be signed beside it.</p>
      <Button kind="main" disabled={deed.busy} onPress={() => onSign(key.fingerprint)}>
        {deed.busy ? 'Signing…' : 'Sign the record'}
      </Button>
    </>
  );
}
