import { useState } from 'preact/hooks';
import { Button } from '../../shared/Button.tsx';
import { TextField } from '../../shared/Field.tsx';
import { dayWords } from '../../shared/time.ts';
import type { LeafProps } from './ReviewPage.tsx';

/** What the assessor saw or heard themselves, on its own or tied to a moment of the film. */
export function RemarksLeaf({ drafting, opened, at, onShow }: LeafProps) {
  const { draft, change } = drafting;
  const [text, setText] = useState('');
  const [tied, setTied] = useState(true);
  const add = () => {
    if (text.trim() === '') return;
    const about = tied && at >= 0 ? { attempt: opened.attempt.id, entry: at } : null;
    change({
      remarks: [...draft.remarks, { at: new Date().toISOString(), text: text.trim(), about }],
    });
    setText('');
  };
  return (
    <>
      <h2>Your own observations</h2>
      <TextField label="What you saw or heard" value={text} lines={4} onInput={setText} />
      <label class="choice-option">
        <input type="checkbox" checked={tied} onChange={(event) => setTied(event.currentTarget.checked)} />
        <span>
          {at >= 0 ? `tie it to act ${at}, where the film stands` : 'tie it to where the film stands'}
        </span>
      </label>
      <div class="acts">
        <Button kind="main" disabled={text.trim() === ''} onPress={add}>
          Add the observation
        </Button>
      </div>
      {draft.remarks.length === 0 ? <p>Nothing noted yet.</p> : null}
      <ul class="as-remarks">
        {draft.remarks.map((remark) => (
          <li key={remark.at}>
            <p class="as-remark-text">{remark.text}</p>
            <p class="as-remark-foot">
              {dayWords(remark.at)}
              {remark.about ? (
                <button
                  type="button"
                  class="entry-link"
                  onClick={() => remark.about && onShow(remark.about.attempt, [remark.about.entry])}
                >
                  at act {remark.about.entry}
                </button>
              ) : null}
              <button
                type="button"
                class="entry-link"
                aria-label={`Take out: ${remark.text.slice(0, 60)}`}
                onClick={() => change({ remarks: draft.remarks.filter((one) => one !== remark) })}
              >
                take out
              </button>
            </p>
          </li>
        ))}
      </ul>
      <TextField
        label="Adjustments made for this learner, one a line"
        hint="For instance: job card read aloud; more time."
        value={draft.adjustments.join('\n')}
        lines={3}
        onInput={(lines) => change({ adjustments: lines === '' ? [] : lines.split('\n') })}
      />
    </>
  );
}
