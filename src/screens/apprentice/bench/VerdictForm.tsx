import { useState } from 'preact/hooks';
import type { PartKind } from '../../../bench/action.ts';
import { DISPOSITIONS, type Verdict } from '../../../bench/paper.ts';
import type { Job } from '../../../scenario/public/job.ts';
import { Button } from '../../shared/Button.tsx';
import { RadioField, SliderField, TextField } from '../../shared/Field.tsx';
import { dispositionWords, partWords, spoken, sureWords, type Vocabulary } from '../../shared/words.ts';
import { FindingFields } from './FindingFields.tsx';
import { decide, draftOf, EMPTY_FINDING, type FindingDraft, type VerdictDraft } from './verdictDraft.ts';

export interface VerdictFormProps {
  readonly job: Job;
  readonly part: PartKind;
  readonly written: Verdict | null;
  readonly vocabulary: Vocabulary;
  readonly onWrite: (verdict: Verdict) => void;
  readonly onHandIn: () => void;
}

/** What a reason is made of. */
const CARRIED: Readonly<Record<PartKind, string>> = {
  armature: 'Which readings carry it: test, bar from the chalk, what you read.',
  fieldFrame: 'Which readings carry it: test, brush, what you saw.',
  brushPlate: 'Which readings carry it: test, holder, what you saw.',
};

/** The decision on the part: what is wrong, where, what happens next, how sure, and why. */
export function VerdictForm(props: VerdictFormProps) {
  const { job, part, vocabulary } = props;
  const [draft, setDraft] = useState<VerdictDraft>(() => draftOf(props.written));
  const [problems, setProblems] = useState<readonly string[]>([]);
  const change = (some: Partial<VerdictDraft>) => setDraft({ ...draft, ...some });
  const findingAt = (index: number, finding: FindingDraft) =>
    change({ findings: draft.findings.map((one, at) => (at === index ? finding : one)) });
  const write = () => {
    const decided = decide(draft, part, job.armature.bars);
    setProblems(decided.ok ? [] : decided.problems);
    if (decided.ok) props.onWrite(decided.verdict);
    return decided.ok;
  };
  return (
    <form
      class="verdict"
      aria-label={`Verdict on the ${partWords(part).toLowerCase()}`}
      onSubmit={(event) => event.preventDefault()}
    >
      {draft.findings.map((finding, index) => (
        <FindingFields
          key={index}
          part={part}
          number={index + 1}
          finding={finding}
          bars={job.armature.bars}
          vocabulary={vocabulary}
          onChange={(changed) => findingAt(index, changed)}
          {...(draft.findings.length > 1
            ? { onRemove: () => change({ findings: draft.findings.filter((_, at) => at !== index) }) }
            : {})}
        />
      ))}
      <div class="acts">
        <Button kind="quiet" onPress={() => change({ findings: [...draft.findings, EMPTY_FINDING] })}>
          Add another finding
        </Button>
      </div>
      <RadioField
        label="What happens to the part next"
        value={draft.disposition}
        options={DISPOSITIONS.map((value) => ({ value, label: dispositionWords(value) }))}
        onChange={(disposition) => change({ disposition })}
      />
      <SliderField
        label="How sure you are"
        value={Math.round(draft.sure * 100)}
        min={0}
        max={100}
        step={5}
        words={`${Math.round(draft.sure * 100)} %, ${sureWords(draft.sure)}`}
        onInput={(percent) => change({ sure: percent / 100 })}
      />
      <TextField
        label="Because"
        hint={spoken(CARRIED[part], vocabulary)}
        lines={4}
        value={draft.because}
        onInput={(because) => change({ because })}
      />
      {problems.length > 0 ? (
        <div class="field-problem" role="alert">
          <ul>
            {problems.map((problem) => (
              <li key={problem}>{problem}</li>
            ))}
          </ul>
        </div>
      ) : null}
      <div class="acts">
        <Button onPress={() => void write()}>Write the verdict</Button>
        <Button kind="main" onPress={() => write() && props.onHandIn()}>
          Hand the job in…
        </Button>
      </div>
      {props.written ? (
        <p class="field-hint">A verdict stands on the sheet. Writing again replaces it.</p>
      ) : null}
    </form>
  );
}
