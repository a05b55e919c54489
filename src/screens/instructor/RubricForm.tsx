import { useState } from 'preact/hooks';
import { rubricChanges } from '../../assess/procedure/rubricChanges.ts';
import type { Rubric } from '../../scenario/public/rubric.ts';
import type { Issue, Scenario } from '../../scenario/scenario.ts';
import { RadioField, SelectField, TextField } from '../shared/Field.tsx';
import type { Vocabulary } from '../shared/words.ts';
import { HouseOrder } from './HouseOrder.tsx';
import { NumberField } from './NumberField.tsx';
import { RubricRows } from './RubricRows.tsx';
import { choicesFor, FIRST_OWN, ofProcedure, withSure } from './rubricEdits.ts';

export interface RubricFormProps {
  readonly scenario: Scenario;
  readonly issues: readonly Issue[];
  readonly vocabulary: Vocabulary;
  readonly onChange: (scenario: Scenario) => void;
}

/** What the attempt is marked by. Which acts are critical is not offered here: no rubric can change it. */
export function RubricForm({ scenario, issues, vocabulary, onChange }: RubricFormProps) {
  const { rubric } = scenario.public;
  const [lastOwn, setLastOwn] = useState(rubric ?? FIRST_OWN);
  const setRubric = (changed: Rubric | undefined) => {
    if (changed) setLastOwn(changed);
    const { rubric: _, ...shown } = scenario.public;
    onChange({ ...scenario, public: changed ? { ...shown, rubric: changed } : shown });
  };
  return (
    <section class="in-card" aria-labelledby="in-rubric-title">
      <h2 id="in-rubric-title">How it is marked</h2>
      <RadioField
        label="Rubric"
        value={rubric ? 'own' : 'builtIn'}
        options={[
          { value: 'builtIn', label: 'The built-in rubric' },
          { value: 'own', label: 'A rubric of this job’s own' },
        ]}
        onChange={(which) => setRubric(which === 'own' ? lastOwn : undefined)}
      />
      <p class="field-hint">
        A critical act stops the attempt whatever the rubric: a hand or tip on live metal, an armature lifted
        out live, a remedy on a live bench, an empty cradle kept on until it trips.
      </p>
      {rubric ? <OwnRubric {...{ rubric, issues, vocabulary, scenario }} onChange={setRubric} /> : null}
    </section>
  );
}

interface OwnRubricProps {
  readonly rubric: Rubric;
  readonly scenario: Scenario;
  readonly issues: readonly Issue[];
  readonly vocabulary: Vocabulary;
  readonly onChange: (rubric: Rubric) => void;
}

function OwnRubric({ rubric, scenario, issues, vocabulary, onChange }: OwnRubricProps) {
  const wrong = (path: string) => issues.find((issue) => issue.path === `public.rubric.${path}`)?.sentence;
  const rows = { rubric, wrong, vocabulary, onChange };
  const choices = choicesFor(scenario.public);
  return (
    <>
      <div class="in-row">
        <TextField
          label="Name of the rubric"
          value={rubric.name}
          problem={wrong('name')}
          onInput={(name) => onChange({ ...rubric, name })}
        />
        <NumberField
          label="Version"
          hint="Count it up when you change it."
          value={rubric.version}
          problem={wrong('version')}
          onInput={(version) => onChange({ ...rubric, version: version ?? Number.NaN })}
        />
      </div>
      <p class="field-hint">Listed is what can count with the parts and tests of this job.</p>
      <RubricRows {...rows} caption="How the work was done" choices={choices.filter(ofProcedure)} />
      <RubricRows {...rows} caption="The verdict" choices={choices.filter((row) => !ofProcedure(row))} />
      {wrong('criteria') ? <p class="field-problem">{wrong('criteria')}</p> : null}
      <HouseOrder {...rows} tests={scenario.public.tests} />
      <SureForm {...rows} />
      <Changes rubric={rubric} />
    </>
  );
}

function SureForm(props: {
  readonly rubric: Rubric;
  readonly wrong: (path: string) => string | undefined;
  readonly onChange: (rubric: Rubric) => void;
}) {
  const { rubric, wrong, onChange } = props;
  const { sure } = rubric;
  return (
    <div class="in-row">
      <SelectField
        label="How sure the learner says they are"
        hint="Both rules pay best for saying what one really believes."
        value={sure?.rule ?? 'none'}
        options={[
          { value: 'none', label: 'Not scored' },
          { value: 'brier', label: 'Scored by the Brier rule' },
          { value: 'logarithmic', label: 'Scored by the logarithmic rule' },
        ]}
        onChange={(rule) => onChange(withSure(rubric, rule))}
      />
      {sure ? (
        <NumberField
          label="Points for it"
          value={sure.weight}
          problem={wrong('sure.weight')}
          onInput={(weight) => onChange({ ...rubric, sure: { ...sure, weight: weight ?? Number.NaN } })}
        />
      ) : null}
    </div>
  );
}

function Changes({ rubric }: { readonly rubric: Rubric }) {
  const changes = rubricChanges(rubric);
  return (
    <>
      <h3>What the record will print</h3>
      {changes.length === 0 ? (
        <p>Nothing: it marks as the built-in rubric does.</p>
      ) : (
        <ul>
          {changes.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      )}
    </>
  );
}
