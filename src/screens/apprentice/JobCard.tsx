import type { Job } from '../../scenario/public/job.ts';
import { writeRoute } from '../route.ts';
import { Button } from '../shared/Button.tsx';
import { Cautions } from '../shared/Cautions.tsx';
import { TextField } from '../shared/Field.tsx';
import { LimitsEntry } from '../shared/LimitsEntry.tsx';
import { clock } from '../shared/time.ts';
import { mainsWords, modeMeaning, modeWords, partList, spoken, testWords } from '../shared/words.ts';
import type { JobSummary, Settings } from '../shell.ts';
import './jobs.css';

export interface JobCardProps {
  readonly summary: JobSummary;
  readonly settings: Settings;
  readonly onLearner: (name: string) => void;
  readonly onBegin: () => void;
  /** True while the attempt is being set up. */
  readonly busy: boolean;
}

/** The job card, and the way to the bench. */
export function JobCardPage(props: JobCardProps) {
  const { job, attempts } = props.summary;
  const running = attempts.find((attempt) => attempt.state === 'running');
  return (
    <main class="card-page">
      <article class="card paper" aria-labelledby="card-unit">
        <CardHead job={job} />
        <CardBody job={job} settings={props.settings} />
      </article>
      <aside class="card-side">
        <section class="card-go" aria-labelledby="go-title">
          <h2 id="go-title">Before you switch on</h2>
          <p>
            Rings and watch off, dry floor, someone else about, and you know where the emergency stop is. Look
            the leads over. Keep an armature in the cradle while the bench is on.
          </p>
          <TextField
            label="Name on the record, if you want one"
            value={props.settings.learner}
            autoComplete="name"
            onInput={props.onLearner}
          />
          {running ? (
            <a class="button button-main" href={writeRoute({ screen: 'bench', id: running.id })}>
              Carry on at {clock(running.endMs)}
            </a>
          ) : null}
          <Button kind={running ? 'plain' : 'main'} disabled={props.busy} onPress={props.onBegin}>
            {running ? 'Start afresh' : 'Take it to the bench'}
          </Button>
          <p class="card-mode">
            <strong>{modeWords(job.mode)}.</strong> {modeMeaning(job.mode)}
          </p>
        </section>
        <section class="caution-box" aria-labelledby="caution-title">
          <h2 id="caution-title">Mind this</h2>
          <Cautions />
        </section>
      </aside>
    </main>
  );
}

function CardHead(props: { readonly job: Job }) {
  return (
    <header class="card-head">
      <p class="card-kind">Job card</p>
      <p class="card-workshop">{props.job.workshop}</p>
      <h1 id="card-unit">{props.job.card.unit}</h1>
    </header>
  );
}

function CardBody(props: { readonly job: Job; readonly settings: Settings }) {
  const { job } = props;
  const say = (text: string) => spoken(text, props.settings.vocabulary);
  return (
    <dl class="card-lines">
      <dt>Brought in by</dt>
      <dd>{job.card.broughtInBy}</dd>
      <dt>What it does</dt>
      <dd>{say(job.card.complaint)}</dd>
      <dt>Asked for</dt>
      <dd>{say(job.card.askedFor)}</dd>
      <dt>In the cradle</dt>
      <dd>
        {say(`${job.armature.name}; ${job.armature.slots} slots`)}
        {job.parts.includes('armature') ? null : ' (only to load the growler: it is not to be judged)'}
      </dd>
      <dt>To be judged</dt>
      <dd>{partList(job.parts)}</dd>
      <dt>Tests allowed</dt>
      <dd>
        <ul class="card-tests">
          {job.tests.map((test) => (
            <li key={test}>{testWords(test, props.settings.vocabulary)}</li>
          ))}
        </ul>
      </dd>
      <LimitsEntry job={job} vocabulary={props.settings.vocabulary} />
      <dt>Mains</dt>
      <dd>{mainsWords(job.mains)}</dd>
      <dt>Time</dt>
      <dd>{job.minutes === null ? 'As long as it takes' : `${job.minutes} minutes`}</dd>
    </dl>
  );
}
