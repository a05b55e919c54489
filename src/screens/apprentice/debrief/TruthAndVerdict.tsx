import type { Attempt } from '../../../attempt/entry.ts';
import type { PartKind } from '../../../bench/action.ts';
import type { Verdict } from '../../../bench/paper.ts';
import { VerdictWords } from '../../shared/VerdictWords.tsx';
import { capital, partWords, type Vocabulary } from '../../shared/words.ts';
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
        {job.parts.map((part) => {
          const verdict = writtenVerdict(attempt, part);
          return (
            <section key={part} aria-label={partWords(part)}>
              {job.parts.length > 1 ? <h3>{partWords(part)}</h3> : null}
              {verdict ? (
                <VerdictWords verdict={verdict} bars={job.armature.bars} vocabulary={vocabulary} />
              ) : (
                <p>No verdict was written.</p>
              )}
            </section>
          );
        })}
      </div>
    </section>
  );
}

function writtenVerdict(attempt: Attempt, part: PartKind): Verdict | null {
  for (const { action, outcome } of attempt.entries.toReversed()) {
    const written = action.type === 'verdict.write' && outcome.kind === 'done' ? action.verdict : null;
    if (written?.part === part) return written;
  }
  return null;
}
