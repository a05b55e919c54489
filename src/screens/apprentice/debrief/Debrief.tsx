import { useState } from 'preact/hooks';
import type { EvidenceStory } from '../../../assess/evidence/story/shape.ts';
import type { Parsed } from '../../../scenario/scenario.ts';
import { Button } from '../../shared/Button.tsx';
import { Cautions, FiguresNote } from '../../shared/Cautions.tsx';
import { dayWords } from '../../shared/time.ts';
import { modeWords, spoken, type Vocabulary } from '../../shared/words.ts';
import type { DebriefData } from '../../shell.ts';
import { BodyCurrent } from './BodyCurrent.tsx';
import { lastChalk } from './chalk.ts';
import { Evidence } from './evidence/Evidence.tsx';
import { JobCardRecord, SheetRecord } from './JobPapers.tsx';
import { LogList } from './LogList.tsx';
import { MarksTable } from './MarksTable.tsx';
import { ReadingsFigure } from './ReadingsFigure.tsx';
import { ToldTable } from './ToldTable.tsx';
import { TruthAndVerdict } from './TruthAndVerdict.tsx';
import { timeUsed, timeWords } from './timeUsed.ts';
import './debrief.css';

export interface DebriefProps {
  readonly data: DebriefData;
  readonly vocabulary: Vocabulary;
  /** What the readings prove, when it has been worked out; marks do not wait for it. */
  readonly askEvidence: () => Promise<Parsed<readonly EvidenceStory[]>>;
  readonly onExport: () => void;
}

/** What was done, what it was worth and why, and what the parts really were. Prints as the record of the job. */
export function Debrief({ data, vocabulary, askEvidence, onExport }: DebriefProps) {
  const [shown, setShown] = useState<readonly number[]>([]);
  const [withMoves, setWithMoves] = useState(false);
  const { attempt, job, marks } = data;
  const show = (entries: readonly number[]) => {
    setShown(entries);
    requestAnimationFrame(() =>
      document.getElementById(`entry-${entries[0]}`)?.scrollIntoView({ block: 'center' }),
    );
  };
  return (
    <main class={`debrief paper ${withMoves ? 'print-moves' : ''}`}>
      <header class="debrief-head">
        <p class="card-workshop">
          {job.workshop}
          <span class="print-only"> – Job record</span>
        </p>
        <h1>Debrief: {job.card.unit}</h1>
        <p class="debrief-facts">
          {attempt.learner || 'No name was given'}, {dayWords(attempt.startedAt)};{' '}
          {modeWords(job.mode).toLowerCase()}; {timeWords(timeUsed(attempt), job.minutes)}.
          {job.mode === 'assessed'
            ? ' The fault was on the learner’s machine: the assessor’s record says who supervised.'
            : ''}
        </p>
        <Outcome data={data} vocabulary={vocabulary} onShow={show} />
        <div class="acts no-print">
          <Button onPress={() => print()}>Print or save the job record</Button>
          <label class="print-choice">
            <input
              type="checkbox"
              checked={withMoves}
              onChange={(event) => setWithMoves(event.currentTarget.checked)}
            />
            with every move
          </label>
          <Button onPress={onExport}>Save the attempt as a file</Button>
          <a class="button button-plain" href="#/jobs">
            Back to the jobs
          </a>
        </div>
      </header>
      <JobCardRecord attempt={attempt} job={job} vocabulary={vocabulary} />
      <BodyCurrent attempt={attempt} vocabulary={vocabulary} onShow={show} />
      <TruthAndVerdict data={data} vocabulary={vocabulary} />
      <MarksTable marks={marks.marks} vocabulary={vocabulary} onShow={show} />
      <Evidence ask={askEvidence} attempt={attempt} vocabulary={vocabulary} onShow={show} />
      {data.passes.map((pass, at) => (
        <ReadingsFigure
          key={`${pass.test} ${at}`}
          pass={pass}
          counted={lastChalk(attempt) !== null}
          vocabulary={vocabulary}
        />
      ))}
      <ToldTable told={data.told} vocabulary={vocabulary} />
      <SheetRecord attempt={attempt} job={job} vocabulary={vocabulary} />
      <LogList attempt={attempt} geometry={job.armature} vocabulary={vocabulary} shown={shown} />
      <footer class="debrief-foot">
        <h2>Mind this</h2>
        <Cautions />
        <FiguresNote />
      </footer>
    </main>
  );
}

interface OutcomeProps extends Omit<DebriefProps, 'onExport' | 'askEvidence'> {
  readonly onShow: (entries: readonly number[]) => void;
}

function Outcome({ data: { marks }, vocabulary, onShow }: OutcomeProps) {
  const { stoppedBy } = marks;
  if (!stoppedBy) {
    return (
      <p class="outcome">
        <strong>
          {marks.earned} of {marks.of}
        </strong>{' '}
        marks. Marks do not make anyone competent: that is for an assessor to say.
      </p>
    );
  }
  return (
    <div class="outcome outcome-stopped">
      <p>
        <strong>Not yet.</strong> The attempt was stopped. {spoken(stoppedBy.breach.sentence, vocabulary)}
      </p>
      <div class="no-print">
        <Button onPress={() => onShow([stoppedBy.entry])}>Show the moment, entry {stoppedBy.entry}</Button>
      </div>
    </div>
  );
}
