import { useState } from 'preact/hooks';
import type { Scenario } from '../../scenario/scenario.ts';
import { SelectField } from '../shared/Field.tsx';
import { spoken, term, type Vocabulary } from '../shared/words.ts';
import type { Fault, InstructorDesk, PartType } from './desk.ts';
import { EndView } from './EndView.tsx';
import { FaultForm } from './FaultForm.tsx';
import { type Spot, spotOf } from './spots.ts';

export interface OpenArmatureProps {
  readonly desk: InstructorDesk;
  readonly scenario: Scenario;
  readonly part: PartType;
  readonly vocabulary: Vocabulary;
  readonly onChange: (scenario: Scenario) => void;
}

/** An armature lying open with every place a fault can live. */
export function OpenArmature({ desk, scenario, part, vocabulary, onChange }: OpenArmatureProps) {
  const { faults } = scenario.hidden.armature;
  const [chosen, setChosen] = useState<Spot>(() =>
    faults[0] ? spotOf(faults[0], part) : { ring: 'bar', n: 0 },
  );
  const setFaults = (list: readonly Fault[]) =>
    onChange({ ...scenario, hidden: { ...scenario.hidden, armature: { faults: list } } });
  const changePart = (armature: string) => {
    setChosen({ ring: 'bar', n: 0 });
    onChange({
      ...scenario,
      public: { ...scenario.public, armature },
      hidden: { ...scenario.hidden, armature: { faults: [] } },
    });
  };
  return (
    <>
      <section class="in-picture" aria-labelledby="in-part-title">
        <h2 id="in-part-title">The armature, open</h2>
        <SelectField
          label="Part type"
          hint="Another type starts sound: places do not carry over."
          value={part.view.typeId}
          options={desk.partTypes.map(({ view }) => ({
            value: view.typeId,
            label: spoken(view.name, vocabulary),
          }))}
          onChange={changePart}
        />
        <EndView
          {...{ part, chosen, vocabulary }}
          faulty={faults.map((fault) => spotOf(fault, part))}
          onChoose={setChosen}
        />
        <p class="field-hint">
          From the inside out: commutator surface, {term('bars', vocabulary)} with the mica between them,
          risers, slots where coils cross, coils, core. Arrow keys go round a ring and from ring to ring.
        </p>
      </section>
      <FaultForm {...{ part, faults, chosen, vocabulary }} onChoose={setChosen} onChange={setFaults} />
    </>
  );
}
