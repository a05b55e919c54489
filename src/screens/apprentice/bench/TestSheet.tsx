import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { Observation } from '../../../bench/observation.ts';
import type { SheetLine } from '../../../bench/paper.ts';
import type { Job } from '../../../scenario/public/job.ts';
import type { Vocabulary } from '../../shared/words.ts';
import { atHand } from './atHand.ts';
import { EntryForm } from './EntryForm.tsx';
import { SheetTable } from './SheetTable.tsx';
import { changed, EMPTY_DRAFT, type EntryDraft, prefill } from './sheetEntry.ts';

export interface TestSheetProps {
  readonly job: Job;
  readonly seen: Observation;
  readonly lines: readonly SheetLine[];
  readonly vocabulary: Vocabulary;
  /** Rises by one each time the learner asks from the bench to write down what is there. */
  readonly noteAsked: number;
  /** A line asked for from the bench has been written: the hands go back to it. */
  readonly onNoted: () => void;
  readonly onWrite: (line: SheetLine) => boolean;
}

/** The learner's own test sheet: the line being written, and what stands on the sheet for the test in view. */
export function TestSheet(props: TestSheetProps) {
  const { job, seen, noteAsked } = props;
  const [draft, setDraft] = useState<EntryDraft>(() => ({
    ...EMPTY_DRAFT,
    test: job.tests[0] ?? 'look',
    part: job.parts[0] ?? 'armature',
    rangeA: seen.rangeA,
  }));
  const form = useRef<HTMLDivElement>(null);
  const fromBench = useRef(false);
  const at = atHand(seen, job.armature);
  const [focusAsked, setFocusAsked] = useState(0);
  useLayoutEffect(() => {
    if (noteAsked === 0) return;
    if (at) setDraft((before) => prefill(before, at, seen));
    fromBench.current = true;
    setFocusAsked(noteAsked);
  }, [noteAsked]);
  // Only once the fields are those of the test at hand; at once, so that no digit goes to the bench as a key.
  useLayoutEffect(() => {
    if (focusAsked > 0) form.current?.querySelector<HTMLElement>('[data-first] input')?.focus();
  }, [focusAsked]);
  const write = (line: SheetLine) => {
    const written = props.onWrite(line);
    if (written && fromBench.current) {
      fromBench.current = false;
      props.onNoted();
    }
    return written;
  };
  return (
    <div class="sheet" ref={form}>
      <EntryForm {...props} onWrite={write} draft={draft} onDraft={setDraft} at={at} />
      <SheetTable
        test={draft.test}
        lines={props.lines}
        armature={job.armature}
        vocabulary={props.vocabulary}
        onPick={(part) => setDraft(changed(draft, part))}
      />
    </div>
  );
}
