import { useState } from 'preact/hooks';
import type { Draft } from '../../../records/draft.ts';
import type { Parsed } from '../../../scenario/scenario.ts';
import { IssueList } from '../../Problems.tsx';
import { Button } from '../../shared/Button.tsx';
import { Notice } from '../../shared/Notice.tsx';
import { dayWords } from '../../shared/time.ts';
import { useLoaded } from '../../shared/useLoaded.ts';
import { Answered } from '../Answered.tsx';
import type { AssessorPageProps } from '../AssessorScreens.tsx';
import type { Findings, JudgedAttempt, OpenedAttempt } from '../desk.ts';
import { PlayerPane, type Wanted } from '../player/PlayerPane.tsx';
import { tidy } from '../say.ts';
import { Tabs } from '../Tabs.tsx';
import { askEach } from './askEach.ts';
import { CriteriaLeaf } from './CriteriaLeaf.tsx';
import { DecideLeaf } from './DecideLeaf.tsx';
import { LearnerLeaf } from './LearnerLeaf.tsx';
import { MarksLeaf } from './MarksLeaf.tsx';
import { RemarksLeaf } from './RemarksLeaf.tsx';
import { type Drafting, useDraft } from './useDraft.ts';

export interface ReviewPageProps extends AssessorPageProps {
  readonly draftId: string;
}

/** Attempts of one person under review: the film on one side, the assessor's paper on the other. */
export function ReviewPage({ draftId, ...props }: ReviewPageProps) {
  const { desk } = props;
  const started = useLoaded(() => desk.draft(draftId), [desk, draftId]);
  // The film hangs as soon as the attempt is read; what is found by weighing it comes when it comes.
  const opened = useLoaded(
    async () => (started?.ok ? askEach(started.value.draft.attempts, desk.open) : started),
    [desk, started],
  );
  const found = useLoaded(
    async () => (started?.ok ? askEach(started.value.draft.attempts, desk.judge) : null),
    [desk, started],
  );
  return (
    <main class="as-review">
      <Answered answer={started} waiting="Fetching the attempt…">
        {(start) => (
          <Answered answer={opened} waiting="Fetching the attempt…">
            {(attempts) =>
              'length' in attempts ? (
                <Review start={start} attempts={attempts} found={found} {...props} />
              ) : null
            }
          </Answered>
        )}
      </Answered>
    </main>
  );
}

/** Judging the readings of a type of armature for the first time is what takes longest. */
function weighingWords(attempts: number): string {
  const which = attempts === 1 ? 'the attempt is' : `${attempts} attempts are`;
  return `While the film can be watched, ${which} played through once and what was read is weighed. The first of its kind takes some seconds…`;
}

interface ReviewProps extends AssessorPageProps {
  readonly start: { readonly draft: Draft; readonly revision: number };
  readonly attempts: readonly OpenedAttempt[];
  /** For each of the attempts; null while it is being worked out. */
  readonly found: Parsed<readonly Findings[]> | null;
}

const LEAVES = [
  { key: 'marks', words: 'Marks' },
  { key: 'remarks', words: 'Remarks' },
  { key: 'criteria', words: 'Criteria' },
  { key: 'learner', words: 'Learner' },
  { key: 'decide', words: 'Decide' },
] as const;
type Leaf = (typeof LEAVES)[number]['key'];

/** What every leaf of the assessor's paper gets. */
export interface LeafProps {
  readonly drafting: Drafting;
  readonly attempts: readonly JudgedAttempt[];
  /** The attempt in the player. */
  readonly opened: JudgedAttempt;
  /** Act at which the film stands; -1 before the first. */
  readonly at: number;
  /** Brings the film to the first of these acts and marks them all. */
  readonly onShow: (attempt: string, entries: readonly number[]) => void;
}

function Review({ start, attempts, found, desk, settings }: ReviewProps) {
  const drafting = useDraft(start, desk);
  const [leaf, setLeaf] = useState<Leaf>('marks');
  const [shown, setShown] = useState(0);
  const [wanted, setWanted] = useState<Wanted | null>(null);
  const [at, setAt] = useState(-1);
  const opened = attempts[shown]!;
  const onShow = (attempt: string, entries: readonly number[]) => {
    const nth = attempts.findIndex((one) => one.attempt.id === attempt);
    if (nth >= 0) setShown(nth);
    if (entries[0] !== undefined) setWanted({ entry: entries[0], marked: entries });
  };
  return (
    <>
      <ReviewHead
        drafting={drafting}
        attempts={attempts}
        found={found?.ok ? found.value : null}
        shown={shown}
        onPick={setShown}
      />
      <div class="as-columns">
        <PlayerPane
          key={opened.attempt.id}
          opened={opened}
          wanted={wanted}
          onAt={setAt}
          desk={desk}
          settings={settings}
        />
        <Tabs name="The assessor’s paper" tabs={LEAVES} current={leaf} onChange={setLeaf}>
          <Answered answer={found} waiting={weighingWords(attempts.length)}>
            {(findings) => {
              const judged = attempts.map((one, nth) => ({ ...one, ...findings[nth]! }));
              const given = { drafting, attempts: judged, opened: judged[shown]!, at, onShow };
              return <LeafInSight leaf={leaf} given={given} desk={desk} settings={settings} />;
            }}
          </Answered>
        </Tabs>
      </div>
    </>
  );
}

interface LeafInSightProps extends AssessorPageProps {
  readonly leaf: Leaf;
  readonly given: LeafProps;
}

function LeafInSight({ leaf, given, desk, settings }: LeafInSightProps) {
  switch (leaf) {
    case 'marks':
      return <MarksLeaf {...given} vocabulary={settings.vocabulary} />;
    case 'remarks':
      return <RemarksLeaf {...given} />;
    case 'criteria':
      return <CriteriaLeaf {...given} vocabulary={settings.vocabulary} />;
    case 'learner':
      return <LearnerLeaf {...given} />;
    case 'decide':
      return <DecideLeaf {...given} desk={desk} />;
  }
}

interface ReviewHeadProps {
  readonly drafting: Drafting;
  readonly attempts: readonly OpenedAttempt[];
  readonly found: readonly Findings[] | null;
  readonly shown: number;
  readonly onPick: (nth: number) => void;
}

const SAVING_WORDS = {
  saved: 'Draft kept',
  saving: 'Keeping the draft…',
  refused: 'Draft not kept',
} as const;

function ReviewHead({ drafting, attempts, found, shown, onPick }: ReviewHeadProps) {
  const { attempt, job } = attempts[shown]!;
  const replay = found?.[shown]?.replay;
  return (
    <header class="as-review-head">
      <h1>
        {drafting.draft.learner.name.trim() || 'No name given'}: {job.card.unit}
      </h1>
      <p class="as-review-facts">
        {dayWords(attempt.startedAt)}
        {replay ? `; ${replay.agreed ? '✓' : '✕'} ${replay.sentence}` : null}{' '}
        <span role="status" class={`as-saving as-saving-${drafting.saving}`}>
          {SAVING_WORDS[drafting.saving]}
        </span>
      </p>
      {drafting.issues.length > 0 ? (
        <Notice kind="problem">
          <IssueList issues={drafting.issues} />
        </Notice>
      ) : null}
      {attempts.length > 1 ? (
        <fieldset class="acts acts-named">
          <legend class="visually-hidden">Attempts of this set</legend>
          {attempts.map((one, nth) => (
            <Button key={one.attempt.id} kind="quiet" pressed={nth === shown} onPress={() => onPick(nth)}>
              {nth + 1}. {one.job.card.unit}
              {found === null ? null : `: ${earnedWords(found[nth]!)}`}
            </Button>
          ))}
        </fieldset>
      ) : null}
    </header>
  );
}

function earnedWords({ marks }: Findings): string {
  return marks.stoppedBy ? 'stopped' : tidy(marks.earned);
}
