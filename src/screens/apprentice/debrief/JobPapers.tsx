import type { Attempt } from '../../../attempt/entry.ts';
import type { SheetLine, TestKind } from '../../../bench/paper.ts';
import type { Job } from '../../../scenario/public/job.ts';
import { actionWords } from '../../shared/actionWords.ts';
import { LimitsEntry } from '../../shared/LimitsEntry.tsx';
import { lineResult, lineScale, lineWhere } from '../../shared/lineWords.ts';
import { mainsWords, partList, spoken, testWords, type Vocabulary } from '../../shared/words.ts';
import { lastChalk } from './chalk.ts';
import { timeUsed, timeWords } from './timeUsed.ts';

export interface JobPapersProps {
  readonly attempt: Attempt;
  readonly job: Job;
  readonly vocabulary: Vocabulary;
}

/** The card as it was handed in: what was asked, the time it took, the work that was done. */
export function JobCardRecord({ attempt, job, vocabulary }: JobPapersProps) {
  const say = (text: string) => spoken(text, vocabulary);
  const used = timeUsed(attempt);
  return (
    <section class="papers" aria-label="Job card">
      <dl class="papers-card">
        <dt>Brought in by</dt>
        <dd>{job.card.broughtInBy}</dd>
        <dt>What it does</dt>
        <dd>{say(job.card.complaint)}</dd>
        <dt>Asked for</dt>
        <dd>{say(job.card.askedFor)}</dd>
        <dt>To be judged</dt>
        <dd>{partList(job.parts)}</dd>
        <LimitsEntry job={job} vocabulary={vocabulary} />
        <dt>Mains</dt>
        <dd>{mainsWords(job.mains)}</dd>
        <dt>Time</dt>
        <dd>{timeWords(used, job.minutes)}</dd>
        <dt>Work done</dt>
        <dd>
          <WorkDone attempt={attempt} job={job} vocabulary={vocabulary} />
        </dd>
      </dl>
    </section>
  );
}

/** Remedies and repairs, in order. */
function WorkDone({ attempt, job, vocabulary }: JobPapersProps) {
  const chalkedBar = lastChalk(attempt);
  const done = attempt.entries.flatMap(({ n, action, outcome, before }) => {
    const isWork = action.type === 'remedy.do' || action.type === 'bench.setRight';
    if (!isWork || outcome.kind !== 'done') return [];
    const speaking = { geometry: job.armature, chalkedBar, rotationDeg: before.rotationDeg, vocabulary };
    return [{ n, words: actionWords(action, speaking) }];
  });
  if (done.length === 0) return <>None</>;
  return <>{done.map(({ words }) => words).join('; ')}</>;
}

/** Everything that was written on the test sheet, test by test, oldest first. */
export function SheetRecord({ attempt, job, vocabulary }: JobPapersProps) {
  const lines = attempt.entries.flatMap(({ action, outcome }) =>
    action.type === 'sheet.write' && outcome.kind === 'done' ? [action.line] : [],
  );
  const tests = [...new Set([...job.tests, ...lines.map(({ test }) => test)])];
  return (
    <section aria-labelledby="sheet-title">
      <h2 id="sheet-title">Test sheet: what you wrote</h2>
      {lines.length === 0 ? <p>Nothing was written on the sheet.</p> : null}
      {tests.map((test) => (
        <TestLines
          key={test}
          test={test}
          lines={lines.filter((line) => line.test === test)}
          vocabulary={vocabulary}
        />
      ))}
    </section>
  );
}

/** What a line says, with its remark. */
function LineSays({ line }: { readonly line: SheetLine }) {
  const result = lineResult(line);
  return (
    <span class="papers-says">
      {result ? <strong>{result}</strong> : null} {lineScale(line)}
      {line.remark ? `${result ? ', ' : ''}${line.remark}` : ''}
    </span>
  );
}

interface TestLinesProps {
  readonly test: TestKind;
  readonly lines: readonly SheetLine[];
  readonly vocabulary: Vocabulary;
}

function TestLines({ test, lines, vocabulary }: TestLinesProps) {
  if (lines.length === 0) return null;
  return (
    <section class="papers-test" aria-label={testWords(test, vocabulary)}>
      <h3>{testWords(test, vocabulary)}</h3>
      <ul class="papers-lines">
        {lines.map((line, nth) => (
          <li key={nth}>
            <span>{lineWhere(line, vocabulary)} </span>
            <LineSays line={line} />
          </li>
        ))}
      </ul>
    </section>
  );
}
