import type { Attempt } from '../../../attempt/entry.ts';
import type { PartKind } from '../../../bench/action.ts';
import type { Verdict } from '../../../bench/paper.ts';
import type { Job } from '../../../scenario/public/job.ts';
import { VerdictWords } from '../../shared/VerdictWords.tsx';
import { capital, partWords, spoken, type Vocabulary } from '../../shared/words.ts';
import type { DebriefData } from '../../shell.ts';
import { lastChalk } from './chalk.ts';
import { faultWords } from './faultWords.ts';
import {
  benchFaultWords,
  brushWearWords,
  commutatorWearWords,
  fieldFaultWords,
  plateFaultWords,
} from './matFaultWords.ts';

export interface TruthAndVerdictProps {
  readonly data: Pick<DebriefData, 'attempt' | 'job'>;
  readonly vocabulary: Vocabulary;
}

/** What each part really was as it came in, beside what the learner said it was. */
export function TruthAndVerdict({ data, vocabulary }: TruthAndVerdictProps) {
  const { attempt, job } = data;
  const bench = attempt.scenario.hidden.bench?.faults ?? [];
  return (
    <section class="beside-parts" aria-label="What it was, and what you said">
      {job.parts.map((part) => {
        const verdict = writtenVerdict(attempt, part);
        const truth = truthOf(part, attempt, job, vocabulary);
        return (
          <section key={part} class="beside" aria-label={partWords(part)}>
            <div>
              <h2>
                {job.parts.length > 1 ? `${partWords(part)}: what it really was` : 'What it really was'}
              </h2>
              {truth.length === 0 ? <p>Sound: nothing is wrong with this part.</p> : <List words={truth} />}
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
      })}
      {bench.length === 0 ? null : (
        <>
          <h2>What was wrong with the bench</h2>
          <List words={bench.map(benchFaultWords)} />
        </>
      )}
    </section>
  );
}

function List({ words }: { readonly words: readonly string[] }) {
  return (
    <ul>
      {words.map((one) => (
        <li key={one}>{capital(one)}.</li>
      ))}
    </ul>
  );
}

/** Everything wrong with a part as it came in. */
function truthOf(part: PartKind, attempt: Attempt, job: Job, vocabulary: Vocabulary): readonly string[] {
  const { hidden } = attempt.scenario;
  const say = (words: readonly string[]) => words.map((one) => spoken(one, vocabulary));
  if (part === 'armature') {
    const telling = { chalkedBar: lastChalk(attempt), bars: job.armature.bars, vocabulary };
    const faults = hidden.armature.faults.map((fault) => faultWords(fault, telling));
    return [...faults, ...say(commutatorWearWords(hidden, job))];
  }
  const worn = say(brushWearWords(hidden, job, part, vocabulary));
  if (part === 'fieldFrame') {
    const faults = hidden.fieldFrame?.faults ?? [];
    return [...say(faults.map((fault) => fieldFaultWords(fault, job.fieldFrame))), ...worn];
  }
  const faults = hidden.brushPlate?.faults ?? [];
  return [...faults.map((fault) => plateFaultWords(fault, vocabulary)), ...worn];
}

function writtenVerdict(attempt: Attempt, part: PartKind): Verdict | null {
  for (const { action, outcome } of attempt.entries.toReversed()) {
    const written = action.type === 'verdict.write' && outcome.kind === 'done' ? action.verdict : null;
    if (written?.part === part) return written;
  }
  return null;
}
