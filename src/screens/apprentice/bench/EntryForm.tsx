import { useState } from 'preact/hooks';
import { RANGES_A, type RangeA } from '../../../bench/action.ts';
import type { TestKind } from '../../../bench/paper.ts';
import { Button } from '../../shared/Button.tsx';
import { RadioField, SelectField, TextField } from '../../shared/Field.tsx';
import { countWords, testWords } from '../../shared/words.ts';
import { nearestReading } from './scale.ts';
import { type AtHand, type EntryDraft, prefill, toLine } from './sheetEntry.ts';
import type { TestSheetProps } from './TestSheet.tsx';

export interface EntryFormProps extends TestSheetProps {
  readonly draft: EntryDraft;
  readonly onDraft: (draft: EntryDraft) => void;
  readonly at: AtHand | null;
}

/** One line being written; test and bar can be carried over from the bench, the result is the learner's own. */
export function EntryForm(props: EntryFormProps) {
  const { draft, onDraft, at, job, seen, vocabulary } = props;
  const [problem, setProblem] = useState<string | undefined>();
  const change = (part: Partial<EntryDraft>) => onDraft({ ...draft, ...part });
  const write = (from: EntryDraft) => {
    const written = toLine(from);
    setProblem(written.ok ? undefined : written.sentence);
    if (written.ok && props.onWrite(written.line))
      onDraft({ ...from, reading: '', lamp: '', strip: '', remark: '' });
  };
  return (
    <form
      class="entry"
      aria-label="Write a line"
      onSubmit={(event) => {
        event.preventDefault();
        write(draft);
      }}
    >
      <div class="entry-row">
        <SelectField<TestKind>
          label="Test"
          value={draft.test}
          options={job.tests.map((test) => ({ value: test, label: testWords(test, vocabulary) }))}
          onChange={(test) => change({ test })}
        />
        <TextField
          label="Counted from the chalk"
          value={draft.count}
          inputMode="numeric"
          onInput={(count) => change({ count })}
        />
      </div>
      <ResultField draft={draft} change={change} guided={job.mode === 'guided'} seen={seen} />
      <TextField label="Remark" value={draft.remark} onInput={(remark) => change({ remark })} />
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
      {seen.chalkedBar === null ? (
        <p class="field-hint">
          No bar is chalked yet. Without a mark a reading has no place to be counted from.
        </p>
      ) : null}
    </form>
  );
}

function carryWords(at: AtHand): string {
  return at.count === null ? 'Use the test on the bench' : `Use the bench: ${countWords(at.count)}`;
}

interface ResultFieldProps extends Pick<EntryFormProps, 'draft' | 'seen'> {
  readonly change: (part: Partial<EntryDraft>) => void;
  readonly guided: boolean;
}

function ResultField({ draft, change, guided, seen }: ResultFieldProps) {
  if (draft.test === 'ground') {
    return (
      <RadioField
        label="The lamp was"
        value={draft.lamp}
        options={[
          { value: 'dark', label: 'dark' },
          { value: 'dim', label: 'dim' },
          { value: 'lit', label: 'lit' },
        ]}
        onChange={(lamp) => change({ lamp })}
      />
    );
  }
  if (draft.test === 'strip') {
    return (
      <RadioField
        label="The strip was"
        value={draft.strip}
        options={[
          { value: 'still', label: 'still' },
          { value: 'pulled', label: 'pulled' },
          { value: 'buzzing', label: 'buzzing' },
        ]}
        onChange={(strip) => change({ strip })}
      />
    );
  }
  if (draft.test === 'look') return null;
  return (
    <div class="entry-row">
      <TextField
        label="Needle at"
        unit="A"
        inputMode="decimal"
        value={draft.reading}
        onInput={(reading) => change({ reading })}
      />
      <SelectField
        label="On the range"
        value={String(draft.rangeA)}
        options={RANGES_A.map((range) => ({ value: String(range), label: `${range} A` }))}
        onChange={(range) => change({ rangeA: Number(range) as RangeA })}
      />
      {guided && seen.needle.atRest && !seen.needle.pegged ? (
        <Button
          kind="quiet"
          onPress={() => change({ reading: String(nearestReading(seen)), rangeA: seen.rangeA })}
        >
          Read it for me
        </Button>
      ) : null}
    </div>
  );
}
