import type { EvidenceStory, StoryStep } from '../../../../assess/evidence/story/shape.ts';
import { capital } from '../../../shared/words.ts';
import { type Calling, movedWords, readingWords } from './evidenceWords.ts';

export interface StepsTableProps {
  readonly story: EvidenceStory;
  readonly calling: Calling;
  readonly onShow: (entries: readonly number[]) => void;
}

/** Readings that changed something one by one, runs of those that did not together. */
interface StepRow {
  readonly step: StoryStep | null;
  /** Readings that changed little, before or instead of a telling one. */
  readonly quiet: number;
  readonly open: number;
}

function rowsOf(steps: readonly StoryStep[]): StepRow[] {
  const rows: StepRow[] = [];
  for (const step of steps) {
    const last = rows.at(-1);
    const quiet = step.ruledOut.length === 0 && step.raised.length === 0;
    if (!quiet) rows.push({ step, quiet: 0, open: step.open });
    else if (last?.step === null)
      rows[rows.length - 1] = { step: null, quiet: last.quiet + 1, open: step.open };
    else rows.push({ step: null, quiet: 1, open: step.open });
  }
  return rows;
}

/** What each reading ruled out or made likelier: the picture's twin in words. */
export function StepsTable({ story, calling, onShow }: StepsTableProps) {
  const rows = rowsOf(story.steps);
  return (
    <details class="readings-twin">
      <summary>What each reading ruled out, as a table</summary>
      <div class="table-scroll">
        <table class="steps">
          <thead>
            <tr>
              <th scope="col">Reading</th>
              <th scope="col">Ruled out</th>
              <th scope="col">Made likelier</th>
              <th scope="col">Still possible</th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row, nth) => (
              <Row
                key={row.step?.reading.entry ?? `quiet ${nth}`}
                row={row}
                calling={calling}
                onShow={onShow}
              />
            ))}
          </tbody>
        </table>
      </div>
    </details>
  );
}

function Row({ row, calling, onShow }: { readonly row: StepRow } & Omit<StepsTableProps, 'story'>) {
  const { step, quiet, open } = row;
  if (step === null)
    return (
      <tr class="steps-quiet">
        <th scope="row">{quiet === 1 ? 'One reading' : `${quiet} readings`} that changed little</th>
        <td />
        <td />
        <td>{open}</td>
      </tr>
    );
  return (
    <tr>
      <th scope="row">
        {readingWords(step, calling)}{' '}
        <button type="button" class="entry-link no-print" onClick={() => onShow([step.reading.entry])}>
          entry {step.reading.entry}
        </button>
      </th>
      <td>{capital(movedWords(step.ruledOut, calling))}</td>
      <td>{capital(movedWords(step.raised, calling))}</td>
      <td>{open}</td>
    </tr>
  );
}
