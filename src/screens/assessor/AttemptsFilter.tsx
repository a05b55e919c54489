import { SelectField, TextField } from '../shared/Field.tsx';
import type { ListWishes } from './attemptTable.ts';

export interface AttemptsFilterProps {
  readonly wishes: ListWishes;
  readonly onChange: (wishes: ListWishes) => void;
  readonly shown: number;
  readonly all: number;
}

/** Which attempts are in sight. */
export function AttemptsFilter({ wishes, onChange, shown, all }: AttemptsFilterProps) {
  const change = (part: Partial<ListWishes>) => onChange({ ...wishes, ...part });
  return (
    <section class="as-filter" aria-label="Which attempts">
      <TextField label="Name or job" value={wishes.find} onInput={(find) => change({ find })} />
      <SelectField
        label="Help given"
        value={wishes.mode}
        options={[
          { value: 'all', label: 'Any' },
          { value: 'assessed', label: 'Assessed' },
          { value: 'practice', label: 'Practice' },
          { value: 'guided', label: 'Guided' },
        ]}
        onChange={(mode) => change({ mode })}
      />
      <SelectField
        label="How it ended"
        value={wishes.state}
        options={[
          { value: 'all', label: 'Either way' },
          { value: 'handedIn', label: 'Handed in' },
          { value: 'stopped', label: 'Stopped by a critical act' },
        ]}
        onChange={(state) => change({ state })}
      />
      <SelectField
        label="Judged"
        value={wishes.judged}
        options={[
          { value: 'open', label: 'Not yet' },
          { value: 'signed', label: 'Signed for' },
          { value: 'all', label: 'Either' },
        ]}
        onChange={(judged) => change({ judged })}
      />
      <p class="as-count" role="status">
        {shown === all ? '' : `${shown} of `}
        {all === 1 ? '1 attempt' : `${all} attempts`}
      </p>
    </section>
  );
}
