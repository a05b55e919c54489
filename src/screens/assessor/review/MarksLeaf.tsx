import { useState } from 'preact/hooks';
import type { Mark } from '../../../assess/mark.ts';
import { type MarkChange, pointsAfter, totalAfter } from '../../../records/record.ts';
import { ReadingsFigure } from '../../apprentice/debrief/ReadingsFigure.tsx';
import { TruthAndVerdict } from '../../apprentice/debrief/TruthAndVerdict.tsx';
import { spoken, type Vocabulary } from '../../shared/words.ts';
import { lastChalks } from '../chalks.ts';
import { tidy } from '../say.ts';
import { ChangeMark } from './ChangeMark.tsx';
import type { LeafProps } from './ReviewPage.tsx';

interface MarksLeafProps extends LeafProps {
  readonly vocabulary: Vocabulary;
}

const GROUPS = [
  ['procedure', 'How the work was done'],
  ['diagnosis', 'What was found'],
] as const;

/** Every mark with what it rests on; one can be changed with a reason, and both then stand. */
export function MarksLeaf({ drafting, opened, onShow, vocabulary }: MarksLeafProps) {
  const { marks, attempt } = opened;
  const total = totalAfter(drafting.draft, { attempt: attempt.id, marks });
  const changed = drafting.draft.changes.some((change) => change.attempt === attempt.id);
  return (
    <>
      <p class="as-total">
        <strong>
          {tidy(total)} of {tidy(marks.of)}
        </strong>{' '}
        {changed ? `after your changes; ${tidy(marks.earned)} as computed. ` : 'as computed. '}
        Marks are not competence: that is yours to decide.
      </p>
      {marks.stoppedBy ? (
        <div class="outcome-stopped">
          <p>
            <strong>Stopped.</strong> {spoken(marks.stoppedBy.breach.sentence, vocabulary)}
          </p>
          <Moments
            entries={[marks.stoppedBy.entry]}
            title="the critical act"
            onShow={(to) => onShow(attempt.id, to)}
          />
        </div>
      ) : null}
      {GROUPS.map(([group, words]) => (
        <section key={group} aria-label={words}>
          <h2>{words}</h2>
          <ul class="as-marks">
            {marks.marks
              .filter((mark) => mark.group === group)
              .map((mark) => (
                <MarkItem
                  key={mark.id}
                  mark={mark}
                  vocabulary={vocabulary}
                  points={pointsAfter(drafting.draft, attempt.id, mark)}
                  changes={drafting.draft.changes.filter(
                    (change) => change.attempt === attempt.id && change.mark === mark.id,
                  )}
                  onShow={(entries) => onShow(attempt.id, entries)}
                  onChange={(to, reason) =>
                    drafting.change({
                      changes: [
                        ...drafting.draft.changes,
                        changeOf(attempt.id, mark, pointsAfter(drafting.draft, attempt.id, mark), to, reason),
                      ],
                    })
                  }
                />
              ))}
          </ul>
        </section>
      ))}
      <Background opened={opened} vocabulary={vocabulary} />
    </>
  );
}

function changeOf(attempt: string, mark: Mark, from: number, to: number, reason: string): MarkChange {
  return { attempt, mark: mark.id, from, to, reason, at: new Date().toISOString() };
}

interface MarkItemProps {
  readonly mark: Mark;
  readonly points: number;
  readonly changes: readonly MarkChange[];
  readonly vocabulary: Vocabulary;
  readonly onShow: (entries: readonly number[]) => void;
  readonly onChange: (to: number, reason: string) => void;
}

function MarkItem({ mark, points, changes, vocabulary, onShow, onChange }: MarkItemProps) {
  const [changing, setChanging] = useState(false);
  const title = spoken(mark.title, vocabulary);
  return (
    <li class="as-mark">
      <p class="as-mark-head">
        <strong>{title}</strong>
        <span class="as-mark-points">
          <span aria-hidden="true">{signOf(points, mark.of)} </span>
          {changes.length > 0 ? <s>{tidy(mark.earned)}</s> : null} {tidy(points)} of {tidy(mark.of)}
        </span>
      </p>
      <p class="as-mark-why">{spoken(mark.sentence, vocabulary)}</p>
      {changes.map((change) => (
        <p key={change.at} class="as-mark-change">
          Changed from {tidy(change.from)} to {tidy(change.to)}: {change.reason}
        </p>
      ))}
      {changing ? (
        <ChangeMark
          title={title}
          points={points}
          of={mark.of}
          onDone={(to, reason) => {
            onChange(to, reason);
            setChanging(false);
          }}
          onCancel={() => setChanging(false)}
        />
      ) : (
        <p class="as-mark-acts">
          <Moments entries={mark.entries} title={`“${title}”`} onShow={onShow} />
          <button
            type="button"
            class="entry-link"
            aria-label={`change this mark: “${title}”`}
            onClick={() => setChanging(true)}
          >
            change this mark
          </button>
        </p>
      )}
    </li>
  );
}

interface MomentsProps {
  readonly entries: readonly number[];
  readonly title: string;
  readonly onShow: (entries: readonly number[]) => void;
}

/** The acts behind a mark, one after the other with each press. */
function Moments({ entries, title, onShow }: MomentsProps) {
  const [next, setNext] = useState(0);
  if (entries.length === 0) return null;
  const words =
    entries.length === 1
      ? `go to act ${entries[0]}`
      : `go to act ${entries[next]} (${next + 1} of ${entries.length})`;
  return (
    <button
      type="button"
      class="entry-link"
      aria-label={`${words}, behind ${title}`}
      onClick={() => {
        onShow([entries[next]!, ...entries.filter((_, nth) => nth !== next)]);
        setNext((next + 1) % entries.length);
      }}
    >
      {words}
    </button>
  );
}

function signOf(points: number, of: number): string {
  return points >= of ? '●' : points > 0 ? '◐' : '○';
}

function Background({ opened, vocabulary }: Pick<MarksLeafProps, 'opened' | 'vocabulary'>) {
  const counted = lastChalks(opened.attempt.entries).at(-1) != null;
  return (
    <details class="as-background">
      <summary>What the part was, what was said of it, and the readings</summary>
      <TruthAndVerdict data={opened} vocabulary={vocabulary} />
      {opened.passes.map((pass) => (
        <ReadingsFigure key={pass.test} pass={pass} counted={counted} vocabulary={vocabulary} />
      ))}
    </details>
  );
}
