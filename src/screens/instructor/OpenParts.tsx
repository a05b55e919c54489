import { useState } from 'preact/hooks';
import type { Issue, Scenario } from '../../scenario/scenario.ts';
import type { PartType } from './desk.ts';
import { EffectsTable } from './EffectsTable.tsx';
import type { InstructorPageProps } from './InstructorScreens.tsx';
import { OpenArmature } from './OpenArmature.tsx';
import { OpenOther } from './OpenOther.tsx';
import { type Open, PartsForm } from './PartsForm.tsx';
import { ReadingsNeeded } from './ReadingsNeeded.tsx';
import { useEffects } from './useEffects.ts';
import { WearForm } from './WearForm.tsx';

export interface OpenPartsProps extends InstructorPageProps {
  readonly scenario: Scenario;
  /** The armature in the cradle. */
  readonly part: PartType;
  readonly issues: readonly Issue[];
  readonly onChange: (scenario: Scenario) => void;
}

/** The parts of the job, one of them open on the desk, and what every test will show. */
export function OpenParts({ desk, settings, scenario, part, issues, onChange }: OpenPartsProps) {
  const { vocabulary } = settings;
  const [open, setOpen] = useState<Open>(scenario.public.parts[0] ?? 'armature');
  const effects = useEffects(desk, scenario);
  const frame = desk.frameTypes.find(({ typeId }) => typeId === scenario.public.fieldFrame) ?? null;
  return (
    <>
      <PartsForm {...{ desk, scenario, open, onChange }} onOpen={setOpen} />
      <div class="in-open">
        {open === 'armature' ? (
          <OpenArmature {...{ desk, scenario, part, vocabulary, onChange }} />
        ) : (
          <OpenOther key={open} other={open} {...{ desk, scenario, frame, vocabulary, onChange }} />
        )}
        <div class="in-effects">
          <EffectsTable {...effects} {...{ open, part, frame, vocabulary }} allowed={scenario.public.tests} />
          {open === 'armature' ? <ReadingsNeeded {...{ desk, scenario }} /> : null}
          <WearForm key={open} {...{ scenario, open, issues, vocabulary, onChange }} />
        </div>
      </div>
    </>
  );
}
