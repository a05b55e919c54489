import type { FieldFrameView } from '../../scenario/public/job.ts';
import { SelectField } from '../shared/Field.tsx';
import { capital, type Vocabulary } from '../shared/words.ts';
import { HiddenList } from './HiddenList.tsx';
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
      <HiddenList
        title={other === 'bench' ? 'Hidden in the bench' : 'Hidden on this part'}
        none="Nothing: it is in good order."
        hidden={faults.map((fault) => ({
          key: `${fault.kind} ${otherSpotOf(fault)}`,
          words: otherFaultWords(fault, other, frame, vocabulary),
        }))}
        onOpen={(nth) => onChoose(otherSpotOf(faults[nth]!))}
        onTakeOut={(nth) => replace(nth)}
      />
    </section>
  );
}
