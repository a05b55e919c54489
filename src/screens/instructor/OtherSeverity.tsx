import { SelectField, SliderField } from '../shared/Field.tsx';
import { OTHER_OHMS, type OtherFault } from './matSpots.ts';
import { OhmSlider, ShareSlider } from './severitySliders.tsx';

interface SeverityProps<F extends OtherFault = OtherFault> {
  readonly fault: F;
  readonly onChange: (fault: OtherFault) => void;
}

/** How bad a fault of frame, plate or bench is. */
export function OtherSeverity(props: SeverityProps) {
  const { fault, onChange } = props;
  return (
    <>
      <Form {...props} />
      {'ohm' in fault && fault.ohm !== 'open' ? (
        <OhmSlider
          range={OTHER_OHMS[fault.kind]}
          ohm={fault.ohm}
          onInput={(ohm) => onChange({ ...fault, ohm } as OtherFault)}
        />
      ) : null}
    </>
  );
}

/** What a kind of fault has besides its resistance. */
function Form({ fault, onChange }: SeverityProps) {
  switch (fault.kind) {
    case 'brushJoint':
      return (
        <SelectField
          label="How far it has let go"
          value={fault.ohm === 'open' ? 'open' : 'poor'}
          options={[
            { value: 'open', label: 'Altogether' },
            { value: 'poor', label: 'Some contact left' },
          ]}
          onChange={(how) => onChange({ ...fault, ohm: how === 'open' ? 'open' : 0.01 })}
        />
      );
    case 'shortedTurns':
      return (
        <ShareSlider
          label="Share of its turns"
          share={fault.share}
          onInput={(share) => onChange({ ...fault, share })}
        />
      );
    case 'groundedCoil':
      return (
        <ShareSlider
          label="How far along the coil"
          share={fault.fraction}
          onInput={(fraction) => onChange({ ...fault, fraction })}
        />
      );
    case 'weakInsulation':
    case 'insulatorDown':
      return (
        <SelectField
          label="Under the voltage of a test"
          value={String(fault.breakdownV)}
          options={[
            { value: 'null', label: 'As it measures' },
            { value: '100', label: 'Breaks down above 100 V' },
            { value: '300', label: 'Breaks down above 300 V' },
          ]}
          onChange={(volt) => onChange({ ...fault, breakdownV: volt === 'null' ? null : Number(volt) })}
        />
      );
    case 'looseRivet':
      return (
        <SelectField
          label="It makes"
          value={fault.makes}
          options={[
            { value: 'pressed', label: 'While the holder is pressed' },
            { value: 'released', label: 'While it is left alone' },
          ]}
          onChange={(makes) => onChange({ ...fault, makes })}
        />
      );
    case 'ammeterZero':
      return (
        <SliderField
          label="Needle off zero"
          value={fault.offset}
          min={0.01}
          max={0.2}
          step={0.01}
          words={`${Math.round(100 * fault.offset)} % of the scale`}
          onInput={(offset) => onChange({ ...fault, offset })}
        />
      );
    default:
      return null;
  }
}
