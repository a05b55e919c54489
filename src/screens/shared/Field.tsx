import type { ComponentChildren } from 'preact';
import { useId } from 'preact/hooks';

export interface Option<T extends string> {
  readonly value: T;
  readonly label: string;
}

interface Labelled {
  readonly label: string;
  /** A few words under the field. */
  readonly hint?: string | undefined;
  /** What is wrong with what was entered. */
  readonly problem?: string | undefined;
}

function Frame(props: Labelled & { readonly id: string; readonly children: ComponentChildren }) {
  return (
    <div class="field">
      <label for={props.id}>{props.label}</label>
      {props.children}
      {props.hint ? (
        <p class="field-hint" id={`${props.id}-hint`}>
          {props.hint}
        </p>
      ) : null}
      {props.problem ? (
        <p class="field-problem" id={`${props.id}-problem`}>
          {props.problem}
        </p>
      ) : null}
    </div>
  );
}

function described(id: string, props: Labelled): string | undefined {
  const ids = [props.hint ? `${id}-hint` : null, props.problem ? `${id}-problem` : null].filter(
    (part) => part,
  );
  return ids.length ? ids.join(' ') : undefined;
}

export interface TextFieldProps extends Labelled {
  readonly value: string;
  readonly onInput: (value: string) => void;
  readonly inputMode?: 'text' | 'decimal' | 'numeric';
  readonly lines?: number;
  readonly unit?: string;
  readonly autoComplete?: string;
}

/** One line of text, or several when `lines` is given. */
export function TextField(props: TextFieldProps) {
  const id = useId();
  const shared = {
    id,
    value: props.value,
    'aria-describedby': described(id, props),
    'aria-invalid': props.problem ? true : undefined,
  };
  return (
    <Frame {...props} id={id}>
      {props.lines ? (
        <textarea
          {...shared}
          rows={props.lines}
          onInput={(event) => props.onInput(event.currentTarget.value)}
        />
      ) : (
        <span class="field-line">
          <input
            {...shared}
            type="text"
            inputMode={props.inputMode ?? 'text'}
            autoComplete={props.autoComplete ?? 'off'}
            onInput={(event) => props.onInput(event.currentTarget.value)}
          />
          {props.unit ? <span class="field-unit">{props.unit}</span> : null}
        </span>
      )}
    </Frame>
  );
}

export interface ChoiceProps<T extends string> extends Labelled {
  readonly value: T;
  readonly options: readonly Option<T>[];
  readonly onChange: (value: T) => void;
}

/** One of a list, as a native select. */
export function SelectField<T extends string>(props: ChoiceProps<T>) {
  const id = useId();
  return (
    <Frame {...props} id={id}>
      <select
        id={id}
        value={props.value}
        aria-describedby={described(id, props)}
        onChange={(event) => props.onChange(event.currentTarget.value as T)}
      >
        {props.options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.label}
          </option>
        ))}
      </select>
    </Frame>
  );
}

/** One of a few, all of them in sight. */
export function RadioField<T extends string>(props: ChoiceProps<T>) {
  const name = useId();
  return (
    <fieldset class="choice">
      <legend>{props.label}</legend>
      <div class="choice-row">
        {props.options.map((option) => (
          <label key={option.value} class="choice-option">
            <input
              type="radio"
              name={name}
              checked={option.value === props.value}
              onChange={() => props.onChange(option.value)}
            />
            <span>{option.label}</span>
          </label>
        ))}
      </div>
      {props.problem ? <p class="field-problem">{props.problem}</p> : null}
    </fieldset>
  );
}

export interface SliderProps extends Labelled {
  readonly value: number;
  readonly min: number;
  readonly max: number;
  readonly step: number;
  readonly words: string;
  readonly onInput: (value: number) => void;
}

export function SliderField(props: SliderProps) {
  const id = useId();
  return (
    <Frame {...props} id={id}>
      <span class="field-line">
        <input
          id={id}
          type="range"
          min={props.min}
          max={props.max}
          step={props.step}
          value={props.value}
          aria-valuetext={props.words}
          onInput={(event) => props.onInput(Number(event.currentTarget.value))}
        />
        <output class="field-unit" for={id}>
          {props.words}
        </output>
      </span>
    </Frame>
  );
}
