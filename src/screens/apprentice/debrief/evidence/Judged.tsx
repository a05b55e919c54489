import type { EvidenceStory } from '../../../../assess/evidence/story/shape.ts';
import { percentWords } from '../../../../assess/words.ts';
import { conditionWords, partWords } from '../../../shared/words.ts';
import { type Calling, judgementWords, markWords } from './evidenceWords.ts';

export interface JudgedProps {
  readonly story: EvidenceStory;
  readonly calling: Calling;
}

/** The verdict beside what the readings make of it. */
export function Judged({ story: { part, judged }, calling }: JudgedProps) {
  if (judged === null)
    return <p>No verdict on the {partWords(part).toLowerCase()} was written, so there is none to weigh.</p>;
  const [title, meaning] = judgementWords(judged);
  return (
    <div class={`judged judged-${judged.judgement}`}>
      <p>
        <strong>{title}</strong> {meaning}
      </p>
      <ul>
        {judged.findings.map((finding) => (
          <Weighed key={JSON.stringify(finding.claim)} finding={finding} calling={calling} />
        ))}
      </ul>
      <p class="judged-rule">
        From 95 % on, for the condition and for the place, a verdict counts as proven. Faults that may rightly
        be called by the same name count together.
      </p>
    </div>
  );
}

type Weighing = NonNullable<EvidenceStory['judged']>['findings'][number];

function Weighed({ finding, calling }: { readonly finding: Weighing } & Pick<JudgedProps, 'calling'>) {
  const { claim, condition, place, before, right } = finding;
  const at = claim.mark === null ? '' : `, ${markWords(claim.mark, calling)}`;
  return (
    <li>
      <strong>
        {conditionWords(claim.condition, calling.part, calling.vocabulary)}
        {at}
      </strong>
      : {percentWords(before.condition)} likely before any reading, {percentWords(condition)} after your
      readings
      {claim.mark === null ? '' : `, and ${percentWords(place)} at that place`}.{' '}
      {truthWords(claim.condition, right)}
    </li>
  );
}

function truthWords(condition: Weighing['claim']['condition'], right: boolean): string {
  if (condition === 'sound') return right ? 'So it is.' : 'It is not.';
  return right ? 'The part has it.' : 'The part does not have it.';
}
