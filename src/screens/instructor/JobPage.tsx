import { useState } from 'preact/hooks';
import type { Scenario } from '../../scenario/scenario.ts';
import { Answered } from '../assessor/Answered.tsx';
import { DeedNotice } from '../assessor/DeedNotice.tsx';
import { useDeed } from '../assessor/useDeed.ts';
import { IssueList } from '../Problems.tsx';
import { Button } from '../shared/Button.tsx';
import { SelectField } from '../shared/Field.tsx';
import { Notice } from '../shared/Notice.tsx';
import { saveText } from '../shared/saveText.ts';
import { useLoaded } from '../shared/useLoaded.ts';
import { CardForm } from './CardForm.tsx';
import type { Fault, PartType } from './desk.ts';
import { EffectsTable } from './EffectsTable.tsx';
import { EndView } from './EndView.tsx';
import { FaultForm } from './FaultForm.tsx';
import type { InstructorPageProps } from './InstructorScreens.tsx';
import { RubricForm } from './RubricForm.tsx';
import { writeInstructorRoute } from './route.ts';
import { type Spot, spotOf } from './spots.ts';
import { useEffects } from './useEffects.ts';

/** One job on the desk: its part lies open, its card beside it. */
export function JobPage({ jobId, ...props }: InstructorPageProps & { readonly jobId: string }) {
  const job = useLoaded(() => props.desk.job(jobId), [props.desk, jobId]);
  return (
    <main class="in-page paper" aria-labelledby="in-title">
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
      {part ? <OpenPart {...{ desk, settings, scenario, part }} onChange={setScenario} /> : null}
      <CardForm {...{ scenario, issues }} vocabulary={settings.vocabulary} onChange={setScenario} />
      <RubricForm {...{ scenario, issues }} vocabulary={settings.vocabulary} onChange={setScenario} />
    </>
  );
}

interface OpenPartProps extends InstructorPageProps {
  readonly scenario: Scenario;
  readonly part: PartType;
  readonly onChange: (scenario: Scenario) => void;
}

function OpenPart({ desk, settings, scenario, part, onChange }: OpenPartProps) {
  const { vocabulary } = settings;
  const { faults } = scenario.hidden.armature;
  const [chosen, setChosen] = useState<Spot>(() =>
    faults[0] ? spotOf(faults[0], part) : { ring: 'bar', n: 0 },
  );
  const effects = useEffects(desk, scenario);
  const setFaults = (list: readonly Fault[]) =>
    onChange({ ...scenario, hidden: { ...scenario.hidden, armature: { faults: list } } });
  const changePart = (armature: string) => {
    setChosen({ ring: 'bar', n: 0 });
    onChange({
      ...scenario,
      public: { ...scenario.public, armature },
      hidden: { ...scenario.hidden, armature: { faults: [] } },
    });
  };
  return (
    <div class="in-open">
      <section class="in-picture" aria-labelledby="in-part-title">
        <h2 id="in-part-title">The part, open</h2>
        <SelectField
          label="Part type"
          hint="Another type starts sound: places do not carry over."
          value={part.view.typeId}
          options={desk.partTypes.map(({ view }) => ({ value: view.typeId, label: view.name }))}
          onChange={changePart}
        />
        <EndView
          {...{ part, chosen, vocabulary }}
          faulty={faults.map((fault) => spotOf(fault, part))}
          onChoose={setChosen}
        />
        <p class="field-hint">
          From the inside out: commutator surface, bars with the mica between them, risers, slots where coils
          cross, coils, core. Arrow keys go round a ring and from ring to ring.
        </p>
      </section>
      <FaultForm {...{ part, faults, chosen, vocabulary }} onChoose={setChosen} onChange={setFaults} />
      <EffectsTable {...effects} {...{ part, vocabulary }} allowed={scenario.public.tests} />
    </div>
  );
}
