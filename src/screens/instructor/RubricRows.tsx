import { useId, useState } from 'preact/hooks';
import { criterionTitle } from '../../assess/procedure/rubricChanges.ts';
import { type Rubric, type RubricRow, THRESHOLDS, thresholdOf } from '../../scenario/public/rubric.ts';
import { spoken, type Vocabulary } from '../shared/words.ts';
import { rowOf, withMarked, withRow } from './rubricEdits.ts';

export interface RubricRowsProps {
  readonly rubric: Rubric;
  readonly caption: string;
  /** What can be marked, as it is built in. */
  readonly choices: readonly RubricRow[];
  readonly vocabulary: Vocabulary;
  /** What is wrong at a place of the rubric. */
  readonly wrong: (path: string) => string | undefined;
  readonly onChange: (rubric: Rubric) => void;
}

/** Criteria with weight and threshold, each to be taken in or left out. */
export function RubricRows({ choices, caption, ...props }: RubricRowsProps) {
  return (
    <div class="in-table">
      <table class="in-rubric">
        <caption>{caption}</caption>
        <thead>
          <tr>
            <th scope="col">Marked</th>
            <th scope="col">Points</th>
            <th scope="col">Threshold</th>
          </tr>
        </thead>
        <tbody>
          {choices.map((usual) => (
            <Row key={usual.criterion} usual={usual} {...props} />
          ))}
        </tbody>
      </table>
    </div>
  );
}

type RowProps = Omit<RubricRowsProps, 'choices' | 'caption'> & { readonly usual: RubricRow };

function Row({ usual, rubric, vocabulary, wrong, onChange }: RowProps) {
  const own = rowOf(rubric, usual.criterion);
  const title = spoken(criterionTitle(usual.criterion), vocabulary);
  const place = `criteria[${rubric.criteria.findIndex(({ criterion }) => criterion === usual.criterion)}]`;
  const range = THRESHOLDS[usual.criterion];
  return (
    <tr>
      <th scope="row">
        <label class="in-check">
          <input
            type="checkbox"
            checked={own !== null}
            onChange={() => onChange(withMarked(rubric, usual.criterion, own === null))}
          />
          <span>{title}</span>
        </label>
      </th>
      <td>
        {own ? (
          <Figure
            label={`Points, ${title}`}
            value={own.weight}
            problem={wrong(`${place}.weight`)}
            onInput={(weight) => onChange(withRow(rubric, { ...own, weight }))}
          />
        ) : (
          '–'
        )}
      </td>
      <td>
        {own && range ? (
          <Figure
            label={`${range.meaning}, ${title}`}
            shown={spoken(range.meaning, vocabulary)}
            unit={range.unit}
            value={thresholdOf(own) ?? 0}
            problem={wrong(`${place}.threshold`)}
            onInput={(threshold) => onChange(withRow(rubric, { ...own, threshold }))}
          />
        ) : (
          ''
        )}
      </td>
    </tr>
  );
}

interface FigureProps {
  readonly label: string;
  /** Words beside the figure, where the column's heading does not say enough. */
  readonly shown?: string;
  readonly unit?: string;
  readonly value: number;
  readonly problem: string | undefined;
  readonly onInput: (value: number) => void;
}

/** A figure in a table; what is no number is left for the check to name. */
function Figure({ label, shown, unit, value, problem, onInput }: FigureProps) {
  const id = useId();
  const [text, setText] = useState(String(value));
  return (
    <span class="in-figure">
      <input
        type="text"
        inputMode="decimal"
        aria-label={label}
        aria-invalid={problem ? true : undefined}
        aria-describedby={problem ? id : undefined}
        value={text}
        onInput={({ currentTarget: { value: typed } }) => {
          setText(typed);
          onInput(typed.trim() === '' ? Number.NaN : Number(typed));
        }}
      />
      {unit ? <span class="field-unit">{unit}</span> : null}
      {shown ? <span class="field-hint">{shown}</span> : null}
      {problem ? (
        <span class="field-problem" id={id}>
          {problem}
        </span>
      ) : null}
    </span>
  );
}
