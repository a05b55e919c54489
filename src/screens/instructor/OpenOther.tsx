import { useState } from 'preact/hooks';
import type { MatPart } from '../../bench/action.ts';
import type { FieldFrameView } from '../../scenario/public/job.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import { SelectField } from '../shared/Field.tsx';
import { partWords, type Vocabulary } from '../shared/words.ts';
import type { InstructorDesk } from './desk.ts';
import { type Other, type OtherSpot, otherSpotOf, spotsOf } from './matSpots.ts';
import { OtherForm } from './OtherForm.tsx';
import { OtherPicture } from './OtherPicture.tsx';
import { otherFaults, withOtherFaults, withType } from './partEdits.ts';

export interface OpenOtherProps {
  readonly other: Other;
  readonly desk: InstructorDesk;
  readonly scenario: Scenario;
  readonly frame: FieldFrameView | null;
  readonly vocabulary: Vocabulary;
  readonly onChange: (scenario: Scenario) => void;
}

/** Field frame, brush plate or the bench itself, with every place a fault can live. */
export function OpenOther({ other, desk, scenario, frame, vocabulary, onChange }: OpenOtherProps) {
  const faults = otherFaults(scenario, other);
  const [picked, setPicked] = useState<OtherSpot>(faults[0] ? otherSpotOf(faults[0]) : '');
  const spots = spotsOf(other, frame);
  const chosen = spots.includes(picked) ? picked : (spots[0] ?? '');
  const faulty = faults.map(otherSpotOf);
  return (
    <>
      <section class="in-picture" aria-labelledby="in-part-title">
        <h2 id="in-part-title">
          {other === 'bench' ? 'The bench itself' : `The ${partWords(other).toLowerCase()}, open`}
        </h2>
        {other === 'bench' ? (
          <p>
            A bench that is not in order is met before any part is: a lamp that proves dark, a needle that
            does not stand at zero, a handle that shows its metal. Nobody is marked for the bench’s own
            faults, but for finding them.
          </p>
        ) : (
          <>
            <TypeField part={other} {...{ desk, scenario, onChange }} />
            <OtherPicture {...{ other, frame, chosen, faulty, vocabulary }} onChoose={setPicked} />
          </>
        )}
      </section>
      <OtherForm
        {...{ other, frame, faults, chosen, vocabulary }}
        onChoose={setPicked}
        onChange={(list) => onChange(withOtherFaults(scenario, other, list))}
      />
    </>
  );
}

function TypeField(
  props: Pick<OpenOtherProps, 'desk' | 'scenario' | 'onChange'> & { readonly part: MatPart },
) {
  const { part, desk, scenario, onChange } = props;
  const types = part === 'fieldFrame' ? desk.frameTypes : desk.plateTypes;
  return (
    <SelectField
      label="Part type"
      hint="Another type starts sound: places do not carry over."
      value={scenario.public[part] ?? ''}
      options={types.map(({ typeId, name }) => ({ value: typeId, label: name }))}
      onChange={(typeId) => onChange(withType(scenario, part, typeId))}
    />
  );
}
