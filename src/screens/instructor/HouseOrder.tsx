import type { TestKind } from '../../bench/paper.ts';
import { HOUSE_SEQUENCE, type Rubric } from '../../scenario/public/rubric.ts';
import { Button } from '../shared/Button.tsx';
import { testWords, type Vocabulary } from '../shared/words.ts';
import { NumberField } from './NumberField.tsx';
import { earlier, firstOrder, rowOf, withOrder, withRow } from './rubricEdits.ts';

export interface HouseOrderProps {
  readonly rubric: Rubric;
  readonly tests: readonly TestKind[];
  readonly vocabulary: Vocabulary;
  readonly wrong: (path: string) => string | undefined;
  readonly onChange: (rubric: Rubric) => void;
}

/** The order a school wants its tests done in: optional, worth marks, never critical. */
export function HouseOrder({ rubric, tests, vocabulary, wrong, onChange }: HouseOrderProps) {
  const order = rubric.houseSequence ?? null;
  const row = rowOf(rubric, HOUSE_SEQUENCE);
  const place = `criteria[${rubric.criteria.findIndex(({ criterion }) => criterion === HOUSE_SEQUENCE)}].weight`;
  return (
    <fieldset class="choice">
      <legend>An order of the house</legend>
      <label class="choice-option">
        <input
          type="checkbox"
          checked={order !== null}
          onChange={() => onChange(withOrder(rubric, order === null ? firstOrder(tests) : null))}
        />
        <span>Mark the order of the tests</span>
      </label>
      <p class="field-hint">
        Open, short and ground tests may come in any order; this is your school’s own wish.
      </p>
      {order && row ? (
        <>
          <ol class="in-hidden">
            {order.map((test, nth) => (
              <li key={test}>
                <span>
                  {nth + 1}. {testWords(test, vocabulary)}
                </span>
                <Button
                  kind="quiet"
                  disabled={nth === 0}
                  label={`Earlier: ${testWords(test, vocabulary)}`}
                  onPress={() => onChange(withOrder(rubric, earlier(order, nth)))}
                >
                  Earlier
                </Button>
              </li>
            ))}
          </ol>
          <NumberField
            label="Points for the order"
            value={row.weight}
            problem={wrong(place)}
            onInput={(weight) => onChange(withRow(rubric, { ...row, weight: weight ?? Number.NaN }))}
          />
        </>
      ) : null}
    </fieldset>
  );
}
