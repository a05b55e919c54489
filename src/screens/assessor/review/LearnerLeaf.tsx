import { TextField } from '../../shared/Field.tsx';
import { dayWords } from '../../shared/time.ts';
import type { LeafProps } from './ReviewPage.tsx';

const DECLARATION = 'I did this work myself, without help other than what is noted here.';

/** Who the learner is, how that is known, and what they declare. */
export function LearnerLeaf({ drafting, attempts }: LeafProps) {
  const { draft, change } = drafting;
  const { learner } = draft;
  const alter = (part: Partial<typeof learner>) => change({ learner: { ...learner, ...part } });
  return (
    <>
      <h2>The learner</h2>
      <TextField label="Name" value={learner.name} onInput={(name) => alter({ name })} />
      <TextField
        label="How you know who they are"
        hint="For instance: known to you; identity card seen."
        value={learner.identifiedBy}
        onInput={(identifiedBy) => alter({ identifiedBy })}
      />
      {attempts.some(({ attempt }) => attempt.mode === 'assessed') ? (
        <TextField
          label="Who supervised the attempt"
          hint="While it was done, the fault was on the learner’s machine. Write “nobody” if nobody was there."
          value={draft.supervisedBy}
          onInput={(supervisedBy) => change({ supervisedBy })}
        />
      ) : null}
      <h3>Declaration</h3>
      <label class="choice-option">
        <input
          type="checkbox"
          checked={learner.declaration !== null}
          onChange={(event) =>
            alter({
              declaration: event.currentTarget.checked
                ? { text: DECLARATION, at: new Date().toISOString() }
                : null,
            })
          }
        />
        <span>The learner declares:</span>
      </label>
      {learner.declaration === null ? (
        <blockquote class="as-declaration">{DECLARATION}</blockquote>
      ) : (
        <>
          <TextField
            label="In these words"
            value={learner.declaration.text}
            lines={3}
            onInput={(text) =>
              learner.declaration && alter({ declaration: { ...learner.declaration, text } })
            }
          />
          <p>Given {dayWords(learner.declaration.at)}.</p>
        </>
      )}
    </>
  );
}
