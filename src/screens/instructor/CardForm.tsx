import type { TestKind } from '../../bench/paper.ts';
import type { Issue, Scenario, ScenarioPublic } from '../../scenario/scenario.ts';
import { RadioField, SelectField, TextField } from '../shared/Field.tsx';
import { mainsWords, modeMeaning, modeWords, testWords, type Vocabulary } from '../shared/words.ts';
import { LimitsForm } from './LimitsForm.tsx';
import { NumberField } from './NumberField.tsx';
import { testsFor } from './partEdits.ts';

export interface CardFormProps {
  readonly scenario: Scenario;
  readonly issues: readonly Issue[];
  readonly vocabulary: Vocabulary;
  readonly onChange: (scenario: Scenario) => void;
}

const CARD_FIELDS = [
  ['unit', 'Unit', undefined],
  ['broughtInBy', 'Brought in by', undefined],
  ['complaint', 'Complaint', 4],
  ['askedFor', 'Asked for', 2],
] as const;

/** The job card as the apprentice reads it, and how the attempt is run. */
export function CardForm({ scenario, issues, vocabulary, onChange }: CardFormProps) {
  const { public: shown, hidden } = scenario;
  const setShown = (change: Partial<ScenarioPublic>) =>
    onChange({ ...scenario, public: { ...shown, ...change } });
  const wrong = (path: string) => issues.find((issue) => issue.path === path)?.sentence;
  return (
    <section class="in-card" aria-labelledby="in-card-title">
      <h2 id="in-card-title">The job card</h2>
      {CARD_FIELDS.map(([field, label, lines]) => (
        <TextField
          key={field}
          label={label}
          value={shown.card[field]}
          problem={wrong(`public.card.${field}`)}
          onInput={(text) => setShown({ card: { ...shown.card, [field]: text } })}
          {...(lines ? { lines } : {})}
        />
      ))}
      <RadioField
        label="How it is worked"
        value={shown.mode}
        options={(['guided', 'practice', 'assessed'] as const).map((mode) => ({
          value: mode,
          label: modeWords(mode),
        }))}
        onChange={(mode) => setShown({ mode })}
      />
      <p class="field-hint">
        {modeMeaning(shown.mode)}
        {shown.mode === 'assessed'
          ? ' The fault lies on the learner’s own machine while they work: have somebody supervise.'
          : ''}
      </p>
      <TestsField {...{ shown, vocabulary }} problem={wrong('public.tests')} onChange={setShown} />
      <div class="in-row">
        <SelectField
          label="Mains"
          value={shown.mains}
          options={(['230V50Hz', '120V60Hz'] as const).map((mains) => ({
            value: mains,
            label: mainsWords(mains),
          }))}
          onChange={(mains) => setShown({ mains })}
        />
        <NumberField
          label="Minutes allowed"
          hint="Left empty: no limit."
          value={shown.minutes}
          problem={wrong('public.minutes')}
          onInput={(minutes) => setShown({ minutes })}
        />
        <NumberField
          label="Seed of the contacts"
          hint="The same seed scatters the same."
          value={hidden.seed}
          problem={wrong('hidden.seed')}
          onInput={(seed) => onChange({ ...scenario, hidden: { ...hidden, seed: seed ?? Number.NaN } })}
        />
      </div>
      <LimitsForm {...{ scenario, wrong, onChange }} />
    </section>
  );
}

function TestsField(props: {
  readonly shown: ScenarioPublic;
  readonly problem: string | undefined;
  readonly vocabulary: Vocabulary;
  readonly onChange: (change: Partial<ScenarioPublic>) => void;
}) {
  const { shown, vocabulary, onChange } = props;
  const offered = testsFor(shown.parts);
  const toggled = (test: TestKind) => {
    const on = new Set(shown.tests);
    if (!on.delete(test)) on.add(test);
    onChange({ tests: offered.filter((one) => on.has(one)) });
  };
  return (
    <fieldset class="choice">
      <legend>Tests allowed</legend>
      <div class="choice-row">
        {offered.map((test) => (
          <label key={test} class="choice-option">
            <input type="checkbox" checked={shown.tests.includes(test)} onChange={() => toggled(test)} />
            <span>{testWords(test, vocabulary)}</span>
          </label>
        ))}
      </div>
      {props.problem ? <p class="field-problem">{props.problem}</p> : null}
    </fieldset>
  );
}
