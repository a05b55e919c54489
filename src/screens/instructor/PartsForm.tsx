import { PART_KINDS } from '../../bench/action.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import { RadioField } from '../shared/Field.tsx';
import { partWords } from '../shared/words.ts';
import type { InstructorDesk } from './desk.ts';
import type { Other } from './matSpots.ts';
import { withPart } from './partEdits.ts';

/** What lies open on the desk. */
export type Open = 'armature' | Other;

export interface PartsFormProps {
  readonly desk: InstructorDesk;
  readonly scenario: Scenario;
  readonly open: Open;
  readonly onOpen: (open: Open) => void;
  readonly onChange: (scenario: Scenario) => void;
}

const OPEN_WORDS: Readonly<Record<Open, string>> = {
  armature: partWords('armature'),
  fieldFrame: partWords('fieldFrame'),
  brushPlate: partWords('brushPlate'),
  bench: 'The bench itself',
};

/** Which parts the job is about, and which of them lies open below. */
export function PartsForm({ desk, scenario, open, onOpen, onChange }: PartsFormProps) {
  const { parts } = scenario.public;
  const counts: Readonly<Record<Open, number>> = {
    armature: scenario.hidden.armature.faults.length,
    fieldFrame: scenario.hidden.fieldFrame?.faults.length ?? 0,
    brushPlate: scenario.hidden.brushPlate?.faults.length ?? 0,
    bench: scenario.hidden.bench?.faults.length ?? 0,
  };
  const toggled = (part: (typeof PART_KINDS)[number]) => {
    const on = !parts.includes(part);
    onChange(withPart(scenario, part, on, desk));
    if (on) onOpen(part);
    else if (open === part) onOpen(parts.find((one) => one !== part) ?? 'bench');
  };
  const openable: readonly Open[] = [...parts, 'bench'];
  return (
    <div class="in-row in-parts">
      <fieldset class="choice">
        <legend>To be judged</legend>
        <div class="choice-row">
          {PART_KINDS.map((part) => (
            <label key={part} class="choice-option">
              <input
                type="checkbox"
                checked={parts.includes(part)}
                disabled={parts.length === 1 && parts.includes(part)}
                onChange={() => toggled(part)}
              />
              <span>{partWords(part)}</span>
            </label>
          ))}
        </div>
      </fieldset>
      <RadioField
        label="Open on the desk"
        value={open}
        options={openable.map((one) => ({
          value: one,
          label: counts[one] > 0 ? `${OPEN_WORDS[one]} (${counts[one]} hidden)` : OPEN_WORDS[one],
        }))}
        onChange={onOpen}
      />
    </div>
  );
}
