import { useState } from 'preact/hooks';
import type { Scenario } from '../../scenario/scenario.ts';
import { Answered } from '../assessor/Answered.tsx';
import { DeedNotice } from '../assessor/DeedNotice.tsx';
import { useDeed } from '../assessor/useDeed.ts';
import { IssueList } from '../Problems.tsx';
import { Button } from '../shared/Button.tsx';
import { Notice } from '../shared/Notice.tsx';
import { saveText } from '../shared/saveText.ts';
import { useLoaded } from '../shared/useLoaded.ts';
import { CardForm } from './CardForm.tsx';
import type { InstructorPageProps } from './InstructorScreens.tsx';
import { OpenParts } from './OpenParts.tsx';
import { RubricForm } from './RubricForm.tsx';
import { writeInstructorRoute } from './route.ts';

/** One job on the desk: its part lies open, its card beside it. */
export function JobPage({ jobId, ...props }: InstructorPageProps & { readonly jobId: string }) {
  const job = useLoaded(() => props.desk.job(jobId), [props.desk, jobId]);
  return (
    <main class="in-page paper" aria-labelledby="in-title">
      {job?.ok === false ? <h1 id="in-title">No such job on this desk</h1> : null}
      <Answered answer={job} waiting="Fetching the job…">
        {(kept) => <Editor {...props} {...kept} />}
      </Answered>
    </main>
  );
}

interface EditorProps extends InstructorPageProps {
  readonly scenario: Scenario;
  readonly revision: number;
}

function Editor({ desk, settings, ...kept }: EditorProps) {
  const [scenario, setScenario] = useState(kept.scenario);
  const [saved, setSaved] = useState({ scenario: kept.scenario, revision: kept.revision });
  const deed = useDeed();
  const checked = desk.check(scenario);
  const issues = checked.ok ? [] : checked.issues;
  const part = desk.partTypes.find(({ view }) => view.typeId === scenario.public.armature);
  const save = () =>
    deed.run(
      () => desk.save(scenario, saved.revision),
      (revision) => {
        setSaved({ scenario, revision });
        return 'Saved. It stands on the apprentices’ board.';
      },
    );
  const handOut = () => {
    const file = desk.file(scenario);
    if (file.ok) saveText(file.value.name, file.value.text);
  };
  const copy = () =>
    deed.run(
      () => desk.duplicate(scenario.public.id),
      (id) => {
        location.hash = writeInstructorRoute({ page: 'job', id });
        return undefined;
      },
    );
  return (
    <>
      <header class="in-head">
        <h1 id="in-title">{scenario.public.card.unit || 'A job without a name'}</h1>
        <p class="in-id">
          Job {scenario.public.id}
          {saved.scenario === scenario ? '' : ' · changed, not saved'}
        </p>
        <div class="acts">
          <Button kind="main" disabled={deed.busy || issues.length > 0} onPress={save}>
            Save
          </Button>
          <Button disabled={issues.length > 0} onPress={handOut}>
            Hand out as a file
          </Button>
          <Button disabled={deed.busy || saved.scenario !== scenario} onPress={copy}>
            Duplicate
          </Button>
        </div>
      </header>
      <DeedNotice deed={deed} />
      {issues.length > 0 ? (
        <Notice kind="problem">
          <IssueList issues={issues} />
        </Notice>
      ) : null}
      {part ? <OpenParts {...{ desk, settings, scenario, part, issues }} onChange={setScenario} /> : null}
      <CardForm {...{ scenario, issues }} vocabulary={settings.vocabulary} onChange={setScenario} />
      <RubricForm {...{ scenario, issues }} vocabulary={settings.vocabulary} onChange={setScenario} />
    </>
  );
}
