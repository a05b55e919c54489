import { parseCriteriaText } from '../../../records/criteria.ts';
import { judgementsFor } from '../../../records/draft.ts';
import { type CriterionJudgement, pointsAfter } from '../../../records/record.ts';
import { RadioField, TextField } from '../../shared/Field.tsx';
import { PickFile } from '../../shared/PickFile.tsx';
import { spoken, type Vocabulary } from '../../shared/words.ts';
import { DeedNotice } from '../DeedNotice.tsx';
import { metWords, tidy } from '../say.ts';
import { useDeed } from '../useDeed.ts';
import type { LeafProps } from './ReviewPage.tsx';

const MET = (['met', 'notYet', 'notSeen'] as const).map((value) => ({ value, label: metWords(value) }));

/** The assessor's own criteria, each beside the marks that speak to it. */
export function CriteriaLeaf({ vocabulary, ...props }: LeafProps & { readonly vocabulary: Vocabulary }) {
  const say = (words: string) => spoken(words, vocabulary);
  const { draft, change } = props.drafting;
  const deed = useDeed();
  const { set, judgements } = draft.criteria;
  const judge = (nth: number, part: Partial<CriterionJudgement>) =>
    change({ criteria: { set, judgements: judgements.with(nth, { ...judgements[nth]!, ...part }) } });
  const takeIn = (file: File) =>
    deed.run(
      async () => parseCriteriaText(await file.text()),
      (read) => {
        change({ criteria: judgementsFor(read) });
        return `The criteria are now “${read.title}”.`;
      },
    );
  return (
    <>
      <h2>Criteria</h2>
      <p class="as-set">{set}</p>
      <PickFile onPick={takeIn}>Use other criteria…</PickFile>
      <DeedNotice deed={deed} />
      <ol class="as-criteria">
        {judgements.map((judgement, nth) => (
          <li key={judgement.criterion}>
            <RadioField
              label={judgement.title}
              value={judgement.met}
              options={MET}
              onChange={(met) => judge(nth, { met })}
            />
            <Speaking {...props} say={say} marks={judgement.marks} />
            <TextField label="Note" value={judgement.note} onInput={(note) => judge(nth, { note })} />
          </li>
        ))}
      </ol>
    </>
  );
}

/** The marks that speak to a criterion, each with its points in every attempt of the set. */
interface SpeakingProps extends LeafProps {
  readonly marks: readonly string[];
  readonly say: (words: string) => string;
}

function Speaking({ attempts, drafting, onShow, marks, say }: SpeakingProps) {
  const titles = new Map(attempts.flatMap((one) => one.marks.marks.map(({ id, title }) => [id, say(title)])));
  const known = marks.filter((id) => titles.has(id));
  if (known.length === 0) return <p class="as-speaking">No mark of these attempts speaks to it.</p>;
  return (
    <ul class="as-speaking">
      {known.map((id) => (
        <li key={id}>
          {titles.get(id)}:
          {attempts.map(({ attempt, job, marks: all }) => {
            const mark = all.marks.find((one) => one.id === id);
            if (mark === undefined) return null;
            const points = `${tidy(pointsAfter(drafting.draft, attempt.id, mark))} of ${tidy(mark.of)}`;
            return (
              <button
                key={attempt.id}
                type="button"
                class="entry-link"
                disabled={mark.entries.length === 0}
                aria-label={`${points}: show what is behind “${say(mark.title)}”, ${job.card.unit}`}
                onClick={() => onShow(attempt.id, mark.entries)}
              >
                {points}
              </button>
            );
          })}
        </li>
      ))}
    </ul>
  );
}
