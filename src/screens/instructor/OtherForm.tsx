import type { FieldFrameView } from '../../scenario/public/job.ts';
import { Button } from '../shared/Button.tsx';
import { SelectField } from '../shared/Field.tsx';
import { capital, type Vocabulary } from '../shared/words.ts';
import {
  newOtherFault,
  type Other,
  type OtherFault,
  type OtherKind,
  type OtherSpot,
  otherKindsAt,
  otherSpotOf,
  spotsOf,
} from './matSpots.ts';
import { OtherSeverity } from './OtherSeverity.tsx';
import { otherFaultWords, otherKindWords, otherSpotWords } from './say.ts';

export interface OtherFormProps {
  readonly other: Other;
  readonly frame: FieldFrameView | null;
  readonly faults: readonly OtherFault[];
  readonly chosen: OtherSpot;
  readonly vocabulary: Vocabulary;
  readonly onChoose: (spot: OtherSpot) => void;
  readonly onChange: (faults: readonly OtherFault[]) => void;
}

/** What is hidden at the chosen place of frame, plate or bench; below, everything hidden there. */
export function OtherForm(props: OtherFormProps) {
  const { other, frame, faults, chosen, vocabulary, onChoose, onChange } = props;
  const here = (kind: OtherKind) =>
    faults.findIndex((fault) => fault.kind === kind && otherSpotOf(fault) === chosen);
  const replace = (nth: number, ...by: OtherFault[]) => onChange(faults.toSpliced(nth, 1, ...by));
  const toggled = (kind: OtherKind) => {
    const nth = here(kind);
    if (nth >= 0) replace(nth);
    else onChange([...faults, newOtherFault(kind, chosen)]);
  };
  return (
    <section class="in-place" aria-labelledby="in-place-title">
      <h2 id="in-place-title">{capital(otherSpotWords(chosen, frame, vocabulary))}</h2>
      <SelectField
        label="Place"
        value={chosen}
        options={spotsOf(other, frame).map((spot) => ({
          value: spot,
          label: capital(otherSpotWords(spot, frame, vocabulary)),
        }))}
        onChange={onChoose}
      />
      <fieldset class="choice">
        <legend>Hidden here</legend>
        {otherKindsAt(chosen).map((kind) => {
          const nth = here(kind);
          const fault = faults[nth];
          return (
            <div key={kind} class="in-kind">
              <label class="choice-option">
                <input type="checkbox" checked={nth >= 0} onChange={() => toggled(kind)} />
                <span>{otherKindWords(kind, vocabulary)}</span>
              </label>
              {fault ? <OtherSeverity fault={fault} onChange={(changed) => replace(nth, changed)} /> : null}
            </div>
          );
        })}
      </fieldset>
      <h3>{other === 'bench' ? 'Hidden in the bench' : 'Hidden on this part'}</h3>
      {faults.length === 0 ? <p>Nothing: it is in good order.</p> : null}
      <ul class="in-hidden">
        {faults.map((fault, nth) => {
          const words = otherFaultWords(fault, other, frame, vocabulary);
          return (
            <li key={`${fault.kind} ${otherSpotOf(fault)}`}>
              <Button kind="quiet" onPress={() => onChoose(otherSpotOf(fault))}>
                {words}
              </Button>
              <Button kind="quiet" label={`Take out: ${words}`} onPress={() => replace(nth)}>
                Take out
              </Button>
            </li>
          );
        })}
      </ul>
    </section>
  );
}
