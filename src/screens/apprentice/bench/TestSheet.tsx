import { useState } from 'preact/hooks';
import type { Observation } from '../../../bench/observation.ts';
import type { SheetLine, TestKind } from '../../../bench/paper.ts';
import type { Job } from '../../../scenario/public/job.ts';
import { SelectField } from '../../shared/Field.tsx';
import { testWords, type Vocabulary } from '../../shared/words.ts';
import { EntryForm } from './EntryForm.tsx';
import { SheetTable } from './SheetTable.tsx';
import { atHand, EMPTY_DRAFT, type EntryDraft } from './sheetEntry.ts';

export interface TestSheetProps {
  readonly job: Job;
  readonly seen: Observation;
  readonly lines: readonly SheetLine[];
  readonly vocabulary: Vocabulary;
  readonly onWrite: (line: SheetLine) => boolean;
}

/** The learner's own test sheet: the line being written, and what stands on the sheet for the test in view. */
export function TestSheet(props: TestSheetProps) {
  const { job, seen, vocabulary } = props;
  const first = job.tests[0] ?? 'look';
  const [draft, setDraft] = useState<EntryDraft>({ ...EMPTY_DRAFT, test: first, rangeA: seen.rangeA });
  const at = atHand(seen, job.armature);
  return (
    <div class="sheet">
      <EntryForm {...props} draft={draft} onDraft={setDraft} at={at} />
      <SelectField<TestKind>
        label="What stands on the sheet for"
        value={draft.test}
        options={job.tests.map((test) => ({ value: test, label: testWords(test, vocabulary) }))}
        onChange={(test) => setDraft({ ...draft, test })}
      />
      <SheetTable
        test={draft.test}
        lines={props.lines}
        bars={job.armature.bars}
        vocabulary={vocabulary}
        onPick={(count) => setDraft({ ...draft, count: String(count) })}
      />
    </div>
  );
}
