import type { Attempt } from '../../../attempt/entry.ts';
import type { Verdict } from '../../../bench/paper.ts';
import { VerdictWords } from '../../shared/VerdictWords.tsx';
import { capital, type Vocabulary } from '../../shared/words.ts';
import type { DebriefData } from '../../shell.ts';
import { lastChalk } from './chalk.ts';
import { faultWords } from './faultWords.ts';

export interface TruthAndVerdictProps {
  readonly data: DebriefData;
  readonly vocabulary: Vocabulary;
}

/** What the part really was, beside what the learner said it was. */
export function TruthAndVerdict({ data, vocabulary }: TruthAndVerdictProps) {
  const { attempt, job } = data;
  const telling = { chalkedBar: lastChalk(attempt), bars: job.armature.bars, vocabulary };
  const faults = attempt.scenario.hidden.armature.faults;
  const verdict = writtenVerdict(attempt);
  return (
    <section class="beside" aria-label="What it was, and what you said">
      <div>
        <h2>What it really was</h2>
        {faults.length === 0 ? <p>Sound: nothing is wrong with this part.</p> : null}
        <ul>
          {faults.map((fault) => {
            const words = faultWords(fault, telling);
            return <li key={words}>{capital(words)}.</li>;
          })}
        </ul>
      </div>
      <div>
        <h2>What you said</h2>
        {verdict ? (
          <VerdictWords verdict={verdict} bars={job.armature.bars} vocabulary={vocabulary} />
        ) : (
          <p>No verdict was written.</p>
        )}
      </div>
    </section>
  );
}

function writtenVerdict(attempt: Attempt): Verdict | null {
  for (const { action, outcome } of attempt.entries.toReversed()) {
    if (action.type === 'verdict.write' && outcome.kind === 'done') return action.verdict;
  }
  return null;
}
