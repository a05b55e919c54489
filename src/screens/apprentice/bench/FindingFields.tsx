import type { PartKind } from '../../../bench/action.ts';
import { CONDITIONS_OF, type Condition } from '../../../bench/paper.ts';
import { Button } from '../../shared/Button.tsx';
import { RadioField, SelectField, TextField } from '../../shared/Field.tsx';
import {
  conditionMeaning,
  conditionWords,
  foundPlaceWords,
  term,
  type Vocabulary,
} from '../../shared/words.ts';
import { type FindingDraft, isCounted, isPlaceless, PLACES_OF, type PlaceChoice } from './verdictDraft.ts';

export interface FindingFieldsProps {
  readonly part: PartKind;
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
  return (
    <fieldset class="finding">
      <legend>Finding {props.number}</legend>
      <SelectField<Condition | ''>
        label="Condition"
        value={finding.condition}
        hint={finding.condition ? conditionMeaning(finding.condition, props.part, vocabulary) : undefined}
        options={[
          { value: '', label: 'Choose…' },
          ...CONDITIONS_OF[props.part].map((value) => ({
            value,
            label: conditionWords(value, props.part, vocabulary),
          })),
        ]}
        onChange={(condition) => props.onChange({ ...finding, condition })}
      />
      {isPlaceless(finding.condition) ? null : (
        <>
          <RadioField<PlaceChoice>
            label="Where"
            value={finding.place}
            options={PLACES_OF[props.part].map((value) => ({
              value,
              label: placeChoiceWords(value, vocabulary),
            }))}
            onChange={(place) => props.onChange({ ...finding, place })}
          />
          {isCounted(finding.place) ? (
            <TextField
              label={`Counted from the chalk, 0 to ${bars - 1}`}
              inputMode="numeric"
              value={finding.count}
              onInput={(count) => props.onChange({ ...finding, count })}
            />
          ) : null}
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

function placeChoiceWords(place: PlaceChoice, vocabulary: Vocabulary): string {
  const bar = term('bar', vocabulary);
  switch (place) {
    case 'bar':
      return `at one ${bar}`;
    case 'pair':
      return `between one ${bar} and the next`;
    case 'branch:1':
    case 'branch:2':
      return `branch to field brush ${place === 'branch:1' ? 1 : 2}`;
    case 'somewhere':
      return 'the tests do not tell';
    default:
      return foundPlaceWords({ kind: 'holder', holder: place }, 0, vocabulary);
  }
}
