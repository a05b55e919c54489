import type { EvidenceStory } from '../../../../assess/evidence/story/shape.ts';
import type { Attempt } from '../../../../attempt/entry.ts';
import type { Parsed } from '../../../../scenario/scenario.ts';
import { IssueList } from '../../../Problems.tsx';
import { Notice } from '../../../shared/Notice.tsx';
import { useLoaded } from '../../../shared/useLoaded.ts';
import { partWords, type Vocabulary } from '../../../shared/words.ts';
import type { Calling } from './evidenceWords.ts';
import { Field } from './Field.tsx';
import { Judged } from './Judged.tsx';
import { NextReading } from './NextReading.tsx';
import { StepsTable } from './StepsTable.tsx';
import './evidence.css';

export interface EvidenceProps {
  readonly ask: () => Promise<Parsed<readonly EvidenceStory[]>>;
  readonly attempt: Attempt;
  readonly vocabulary: Vocabulary;
  readonly onShow: (entries: readonly number[]) => void;
}

/** What the learner's own readings could prove of each part; worked out while the rest is already there to read. */
export function Evidence({ ask, attempt, vocabulary, onShow }: EvidenceProps) {
  const got = useLoaded(ask, [attempt.id]);
  if (got?.ok === true)
    return (
      <>
        {got.value.map((story) => (
          <Story
            key={story.part}
            story={story}
            alone={got.value.length === 1}
            vocabulary={vocabulary}
            onShow={onShow}
          />
        ))}
      </>
    );
  return (
    <section class="evidence" aria-labelledby="evidence-title" aria-busy={got === null}>
      <h2 id="evidence-title">{TITLE}</h2>
      {got === null ? (
        <>
          <p class="evidence-wait no-print" role="status">
            Weighing every reading against everything the part could have…
          </p>
          <p class="print-only">This had not been worked out yet when the record was printed.</p>
        </>
      ) : (
        <Notice kind="problem">
          <IssueList issues={got.issues} />
        </Notice>
      )}
    </section>
  );
}
const TITLE = 'What your readings prove';

interface StoryProps extends Pick<EvidenceProps, 'vocabulary' | 'onShow'> {
  readonly story: EvidenceStory;
  /** No other part has a story: the title need not name this one. */
  readonly alone: boolean;
}

function Story({ story, alone, vocabulary, onShow }: StoryProps) {
  const calling: Calling = { part: story.part, bars: story.bars, chalkedBar: story.chalkedBar, vocabulary };
  const id = `evidence-${story.part}`;
  return (
    <section class="evidence" aria-labelledby={id}>
      <h2 id={id}>{alone ? TITLE : `${partWords(story.part)}: ${lowerFirst(TITLE)}`}</h2>
      <p>
        Every reading is weighed against every fault {KINDS[story.part]} of this kind could have: places and
        severities, one fault or several. What is hidden in the job plays no part in it.{' '}
        {story.from === 'sheet'
          ? 'In assessed work what you wrote on the sheet counts, not what the instruments showed.'
          : 'What the instruments showed at rest counts.'}
        {story.endedByRemedy ? ' Told here is the part as it came in, up to the first remedy.' : ''}
      </p>
      <Judged story={story} calling={calling} />
      <Differing entries={story.differing} onShow={onShow} />
      <Field story={story} calling={calling} />
      <NextReading story={story} calling={calling} onShow={onShow} />
      <StepsTable story={story} calling={calling} onShow={onShow} />
    </section>
  );
}
const KINDS = { armature: 'an armature', fieldFrame: 'a field frame', brushPlate: 'a brush plate' } as const;
const lowerFirst = (words: string) => words.charAt(0).toLowerCase() + words.slice(1);

function Differing(props: { readonly entries: readonly number[] } & Pick<EvidenceProps, 'onShow'>) {
  const { entries, onShow } = props;
  if (entries.length === 0) return null;
  return (
    <p>
      {entries.length === 1 ? 'One line' : `${entries.length} lines`} on your sheet{' '}
      {entries.length === 1 ? 'says' : 'say'} something else than the instruments showed.{' '}
      <button type="button" class="entry-link no-print" onClick={() => onShow(entries)}>
        show where
      </button>
    </p>
  );
}
