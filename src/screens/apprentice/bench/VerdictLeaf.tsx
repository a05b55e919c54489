import { useState } from 'preact/hooks';
import type { PartKind } from '../../../bench/action.ts';
import type { Verdict } from '../../../bench/paper.ts';
import type { Job } from '../../../scenario/public/job.ts';
import { RadioField } from '../../shared/Field.tsx';
import { partWords, type Vocabulary } from '../../shared/words.ts';
import { VerdictForm } from './VerdictForm.tsx';

export interface VerdictLeafProps {
  readonly job: Job;
  /** The verdicts that stand, one for each part decided so far. */
  readonly verdicts: readonly Verdict[];
  readonly vocabulary: Vocabulary;
  readonly onVerdict: (verdict: Verdict) => void;
  readonly onHandIn: () => void;
}

/** One verdict form for each part to be judged; what is half written on the others stays. */
export function VerdictLeaf(props: VerdictLeafProps) {
  const { job, verdicts, vocabulary } = props;
  const [front, setFront] = useState<PartKind>(job.parts[0] ?? 'armature');
  const open = job.parts.filter((part) => !verdicts.some((verdict) => verdict.part === part));
  const verdictOn = (part: PartKind) => verdicts.find((verdict) => verdict.part === part) ?? null;
  return (
    <>
      {job.parts.length > 1 ? (
        <RadioField
          label="Part"
          value={front}
          options={job.parts.map((value) => ({
            value,
            label: `${partWords(value)}${verdictOn(value) ? ' ✓' : ''}`,
          }))}
          onChange={setFront}
        />
      ) : null}
      {job.parts.length > 1 ? (
        <p class="field-hint still-open" role="status">
          {open.length === 0
            ? 'Every part has its verdict.'
            : `Still without a verdict: ${open.map(partWords).join(', ').toLowerCase()}.`}
        </p>
      ) : null}
      {job.parts.map((part) => (
        <div key={part} hidden={part !== front}>
          <VerdictForm
            job={job}
            part={part}
            written={verdictOn(part)}
            vocabulary={vocabulary}
            onWrite={props.onVerdict}
            onHandIn={props.onHandIn}
          />
        </div>
      ))}
    </>
  );
}
