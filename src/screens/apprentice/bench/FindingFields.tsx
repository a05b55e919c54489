import { CONDITIONS, type Condition, type FoundPlace } from '../../../bench/paper.ts';
import { Button } from '../../shared/Button.tsx';
import { RadioField, SelectField, TextField } from '../../shared/Field.tsx';
import { conditionMeaning, conditionWords, term, type Vocabulary } from '../../shared/words.ts';
import { type FindingDraft, isPlaceless } from './verdictDraft.ts';

export interface FindingFieldsProps {
  readonly number: number;
  readonly finding: FindingDraft;
  readonly bars: number;
  readonly vocabulary: Vocabulary;
  readonly onChange: (finding: FindingDraft) => void;
  readonly onRemove?: () => void;
}

/** One finding: a condition, and where it lies, as finely as the learner dares to say. */
export function FindingFields(props: FindingFieldsProps) {
  const { finding, vocabulary, bars } = props;
  const bar = term('bar', vocabulary);
  return (
    <fieldset class="finding">
      <legend>Finding {props.number}</legend>
      <SelectField<Condition | ''>
        label="Condition"
        value={finding.condition}
        hint={finding.condition ? conditionMeaning(finding.condition, vocabulary) : undefined}
        options={[
          { value: '', label: 'choose' },
          ...CONDITIONS.map((value) => ({ value, label: conditionWords(value, vocabulary) })),
        ]}
        onChange={(condition) => props.onChange({ ...finding, condition })}
      />
      {isPlaceless(finding.condition) ? null : (
        <>
          <RadioField<FoundPlace['kind']>
            label="Where"
            value={finding.place}
            options={[
              { value: 'bar', label: `at one ${bar}` },
              { value: 'pair', label: `between one ${bar} and the next` },
              { value: 'somewhere', label: 'the tests do not tell' },
            ]}
            onChange={(place) => props.onChange({ ...finding, place })}
          />
          {finding.place === 'somewhere' ? null : (
            <TextField
              label={`Counted from the chalk, 0 to ${bars - 1}`}
              inputMode="numeric"
              value={finding.count}
              onInput={(count) => props.onChange({ ...finding, count })}
            />
          )}
        </>
      )}
      {props.onRemove ? (
        <Button kind="quiet" onPress={props.onRemove}>
          Take finding {props.number} away
        </Button>
      ) : null}
    </fieldset>
  );
}
