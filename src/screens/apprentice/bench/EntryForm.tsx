import { useState } from 'preact/hooks';
import type { TestKind } from '../../../bench/paper.ts';
import { Button } from '../../shared/Button.tsx';
import { SelectField, TextField } from '../../shared/Field.tsx';
import { countWords, spoken, testWords } from '../../shared/words.ts';
import { ResultField } from './ResultField.tsx';
import { type AtHand, type EntryDraft, prefill, standing, toLine } from './sheetEntry.ts';
import type { TestSheetProps } from './TestSheet.tsx';

export interface EntryFormProps extends TestSheetProps {
  readonly draft: EntryDraft;
  readonly onDraft: (draft: EntryDraft) => void;
  readonly at: AtHand | null;
}

/** One line being written; test and bar can be carried over from the bench, the result is the learner's own. */
export function EntryForm(props: EntryFormProps) {
  const { draft, onDraft, at, job, seen } = props;
  const [problem, setProblem] = useState<string | null>(null);
  const change = (part: Partial<EntryDraft>) => onDraft({ ...draft, ...part });
  const write = () => {
    const written = toLine(draft);
    setProblem(written.ok ? null : written.sentence);
    if (!written.ok || !props.onWrite(written.line)) return;
    onDraft({ ...draft, reading: '', lamp: '', strip: '', remark: '' });
  };
  return (
    <form
      class="entry"
      aria-label="Write a line"
      onSubmit={(event) => {
        event.preventDefault();
        write();
      }}
    >
      <TestField {...props} change={change} />
      <div class="entry-row">
        <TextField
          label="From the chalk"
          value={draft.count}
          inputMode="numeric"
          onInput={(count) => change({ count })}
        />
        <ResultField draft={draft} change={change} guided={job.mode === 'guided'} seen={seen} />
      </div>
      <div data-first={draft.test === 'look' ? true : undefined}>
        <TextField
          label={draft.test === 'look' ? 'What you saw' : 'Remark'}
          value={draft.remark}
          onInput={(remark) => change({ remark })}
        />
      </div>
      {problem ? (
        <p class="field-problem" role="alert">
          {problem}
        </p>
      ) : null}
      <div class="acts">
        <button type="submit" class="button button-main">
          Write the line
        </button>
        {at ? <Button onPress={() => onDraft(prefill(draft, at, seen))}>{carryWords(at)}</Button> : null}
      </div>
      <ChalkHint {...props} />
    </form>
  );
}

/** The test the line belongs to; each choice says how far that test has got on the sheet. */
function TestField(props: EntryFormProps & { readonly change: (part: Partial<EntryDraft>) => void }) {
  const { job, lines, vocabulary, draft } = props;
  const got = (test: TestKind) => {
    const latest = standing(lines, test);
    const counted = latest.size - (latest.has(null) ? 1 : 0);
    return test === 'look' ? `${latest.size} written` : `${counted} of ${job.armature.bars}`;
  };
  return (
    <SelectField<TestKind>
      label="Test"
      value={draft.test}
      options={job.tests.map((test) => ({
        value: test,
        label: `${testWords(test, vocabulary)} (${got(test)})`,
      }))}
      onChange={(test) => props.change({ test })}
    />
  );
}

function ChalkHint({ seen, vocabulary }: EntryFormProps) {
  if (seen.chalkedBar !== null) return null;
  const hint = 'No bar is chalked yet: without a mark a reading has no place to be counted from.';
  return <p class="field-hint">{spoken(hint, vocabulary)}</p>;
}

function carryWords(at: AtHand): string {
  return at.count === null ? 'As on the bench' : `As on the bench: ${countWords(at.count)}`;
}
