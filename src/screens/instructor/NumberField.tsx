import { useState } from 'preact/hooks';
import { TextField } from '../shared/Field.tsx';

/** A figure typed as text; empty is null, and what is no number is left for the check to name. */
export function NumberField(props: {
  readonly label: string;
  readonly hint?: string;
  readonly value: number | null;
  readonly problem: string | undefined;
  readonly onInput: (value: number | null) => void;
}) {
  const { value, problem, onInput, ...rest } = props;
  const [text, setText] = useState(value === null ? '' : String(value));
  const came = text.trim() === '' ? 'nothing' : `“${text}”`;
  const notNumber = Number.isNaN(value) ? `Expected a number, but ${came} came.` : undefined;
  return (
    <TextField
      {...rest}
      inputMode="numeric"
      problem={notNumber ?? problem}
      value={text}
      onInput={(typed) => {
        setText(typed);
        onInput(typed.trim() === '' ? null : Number(typed));
      }}
    />
  );
}
