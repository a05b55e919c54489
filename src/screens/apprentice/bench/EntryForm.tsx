import { useState } from 'preact/hooks';
import { isMatTest, MAT_TESTS } from '../../../bench/matTests.ts';
import type { TestKind } from '../../../bench/paper.ts';
import { Button } from '../../shared/Button.tsx';
import { SelectField, TextField } from '../../shared/Field.tsx';
import { brushName, gaugeName, matPlaceWords } from '../../shared/lineWords.ts';
import { countWords, partWords, spoken, testWords, type Vocabulary } from '../../shared/words.ts';
import type { AtHand } from './atHand.ts';
import { isCounted, isOfBars } from './entryKinds.ts';
import { PlaceFields } from './PlaceFields.tsx';
import { ResultField } from './ResultField.tsx';
import { changed, cleared, type EntryDraft, prefill, standing, toLine } from './sheetEntry.ts';
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
  const change = (part: Partial<EntryDraft>) => onDraft(changed(draft, part));
  const write = () => {
    const written = toLine(draft);
    setProblem(written.ok ? null : written.sentence);
    if (!written.ok || !props.onWrite(written.line)) return;
    onDraft(cleared(draft));
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
        <PlaceFields draft={draft} job={job} vocabulary={props.vocabulary} change={change} />
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
          {spoken(problem, props.vocabulary)}
        </p>
      ) : null}
      <div class="acts">
        <button type="submit" class="button button-main">
          Write the line
        </button>
        {at ? (
          <Button onPress={() => onDraft(prefill(draft, at, seen))}>
            {carryWords(at, props.vocabulary)}
          </Button>
        ) : null}
      </div>
      <ChalkHint {...props} />
    </form>
  );
}

/** The test the line belongs to; each choice says how far that test has got on the sheet. */
function TestField(props: EntryFormProps & { readonly change: (part: Partial<EntryDraft>) => void }) {
  const { job, vocabulary, draft } = props;
  return (
    <SelectField<TestKind>
      label="Test"
      value={draft.test}
      options={job.tests.map((test) => ({
        value: test,
        label: `${testWords(test, vocabulary)} (${got(test, props)})`,
      }))}
      onChange={(test) => props.change({ test })}
    />
  );
}

/** How far a test has got: bars and holders out of those there are, else lines. */
function got(test: TestKind, { lines, job }: EntryFormProps): string {
  if (isOfBars(test)) {
    const latest = standing(lines, test);
    return `${latest.size - (latest.has(null) ? 1 : 0)} of ${job.armature.bars}`;
  }
  const written = lines.filter((line) => line.test === test);
  const places = isMatTest(test) ? MAT_TESTS[test].to : null;
  return places
    ? `${new Set(written.map(({ at }) => at)).size} of ${places.length}`
    : `${written.length} written`;
}

function ChalkHint({ seen, vocabulary, draft }: EntryFormProps) {
  if (seen.chalkedBar !== null || !isCounted(draft)) return null;
  const hint = 'No bar is chalked yet: without a mark a reading has no place to be counted from.';
  return <p class="field-hint">{spoken(hint, vocabulary)}</p>;
}

function carryWords(at: AtHand, vocabulary: Vocabulary): string {
  const where = whereWords(at, vocabulary);
  return where === '' ? 'As on the bench' : `As on the bench: ${where}`;
}

function whereWords({ count, place, gauge, brush, part }: AtHand, vocabulary: Vocabulary): string {
  if (count !== null) return countWords(count);
  if (place !== undefined) return matPlaceWords(place, vocabulary);
  if (brush !== undefined) return brushName(brush, vocabulary);
  if (gauge !== undefined) return gaugeName(gauge);
  return part === undefined ? '' : partWords(part).toLowerCase();
}
