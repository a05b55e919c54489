import { useState } from 'preact/hooks';
import { Button } from '../../shared/Button.tsx';
import { TextField } from '../../shared/Field.tsx';
import { tidy } from '../say.ts';

export interface ChangeMarkProps {
  readonly title: string;
  readonly points: number;
  readonly of: number;
  readonly onDone: (to: number, reason: string) => void;
  readonly onCancel: () => void;
}

/** Reads points as typed, comma or point; null for what is no number from 0 to the most there are. */
export function readPoints(text: string, of: number): number | null {
  const typed = text.trim().replace(',', '.');
  const points = typed === '' ? Number.NaN : Number(typed);
  return points >= 0 && points <= of ? Math.round(points * 10) / 10 : null;
}

/** New points and the reason for them; without a reason nothing changes. */
export function ChangeMark({ title, points, of, onDone, onCancel }: ChangeMarkProps) {
  const [text, setText] = useState(tidy(points));
  const [reason, setReason] = useState('');
  const [tried, setTried] = useState(false);
  const to = readPoints(text, of);
  const done = () => {
    setTried(true);
    if (to !== null && reason.trim() !== '') onDone(to, reason.trim());
  };
  return (
    <fieldset class="as-change">
      <legend class="visually-hidden">Change the mark for “{title}”</legend>
      <TextField
        label="New mark"
        value={text}
        inputMode="decimal"
        unit={`of ${tidy(of)}`}
        problem={tried && to === null ? `Expected 0 to ${tidy(of)}, but “${text}” came.` : undefined}
        onInput={setText}
      />
      <TextField
        label="Reason, for the record"
        value={reason}
        lines={2}
        problem={tried && reason.trim() === '' ? 'Expected a reason, but nothing came.' : undefined}
        onInput={setReason}
      />
      <div class="acts">
        <Button kind="main" onPress={done}>
          Change the mark
        </Button>
        <Button onPress={onCancel}>Leave it</Button>
      </div>
    </fieldset>
  );
}
