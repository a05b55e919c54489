import { SelectField } from '../shared/Field.tsx';
import type { Vocabulary } from '../shared/words.ts';
import { capital } from '../shared/words.ts';
import type { Fault, PartType } from './desk.ts';
import { HiddenList } from './HiddenList.tsx';
import { kindWords, ringWords, severityWords, spotWords } from './say.ts';
import { OhmSlider, ShareSlider } from './severitySliders.tsx';
import {
  type FaultKind,
  kindsAt,
  newFault,
  OHM_RANGE,
  RINGS,
  type Spot,
  sameSpot,
  spotOf,
  spotsIn,
  touchingIn,
} from './spots.ts';

export interface FaultFormProps {
  readonly part: PartType;
  readonly faults: readonly Fault[];
  readonly chosen: Spot;
  readonly vocabulary: Vocabulary;
  readonly onChoose: (spot: Spot) => void;
  readonly onChange: (faults: readonly Fault[]) => void;
}

/** What is hidden at the chosen place: its kind and how bad it is; below, everything hidden on the part. */
export function FaultForm(props: FaultFormProps) {
  const { part, faults, chosen, vocabulary, onChoose, onChange } = props;
  const here = faults.findIndex((fault) => sameSpot(spotOf(fault, part), chosen));
  const replace = (nth: number, ...by: Fault[]) => onChange(faults.toSpliced(nth, 1, ...by));
  return (
    <section class="in-place" aria-labelledby="in-place-title">
      <h2 id="in-place-title">{capital(spotWords(chosen, part.view.bars, vocabulary))}</h2>
      <PlacePicker {...props} />
      <SelectField
        label="Fault here"
        value={faults[here]?.kind ?? 'none'}
        options={[
          { value: 'none', label: 'None' },
          ...kindsAt(chosen, part).map((kind) => ({ value: kind, label: kindWords(kind, vocabulary) })),
        ]}
        onChange={(kind: FaultKind | 'none') => {
          if (kind === 'none') return replace(here);
          const made = newFault(kind, chosen, part);
          return here < 0 ? onChange([...faults, made]) : replace(here, made);
        }}
      />
      {faults[here] ? (
        <Severity fault={faults[here]} part={part} onChange={(fault) => replace(here, fault)} />
      ) : null}
      <HiddenList
        title="Hidden on this part"
        none="Nothing: it is sound."
        hidden={faults.map((fault) => {
          const spot = spotOf(fault, part);
          const name = `${kindWords(fault.kind, vocabulary)}, ${spotWords(spot, part.view.bars, vocabulary)}`;
          const words = [name, severityWords(fault)].filter(Boolean).join(', ');
          return { key: `${fault.kind} ${spot.ring}:${spot.n}`, words, name };
        })}
        onOpen={(nth) => onChoose(spotOf(faults[nth]!, part))}
        onTakeOut={(nth) => replace(nth)}
      />
    </section>
  );
}

/** The same choice as the picture gives, for a small screen or a hand that does not point. */
function PlacePicker({ part, chosen, vocabulary, onChoose }: FaultFormProps) {
  const many = spotsIn(chosen.ring, part);
  return (
    <div class="in-row">
      <SelectField
        label="Kind of place"
        value={chosen.ring}
        options={RINGS.map((ring) => ({ value: ring, label: ringWords(ring, vocabulary) }))}
        onChange={(ring) => onChoose({ ring, n: 0 })}
      />
      {many > 1 ? (
        <SelectField
          label="Which one"
          value={String(chosen.n)}
          options={Array.from({ length: many }, (_, n) => ({ value: String(n), label: String(n) }))}
          onChange={(n) => onChoose({ ring: chosen.ring, n: Number(n) })}
        />
      ) : null}
    </div>
  );
}

interface SeverityProps {
  readonly fault: Fault;
  readonly part: PartType;
  readonly onChange: (fault: Fault) => void;
}

function Severity(props: SeverityProps) {
  const { fault, onChange } = props;
  return (
    <>
      <Form {...props} />
      {'ohm' in fault && fault.ohm !== 'open' ? (
        <OhmSlider
          range={OHM_RANGE[fault.kind]}
          ohm={fault.ohm}
          onInput={(ohm) => onChange({ ...fault, ohm } as Fault)}
        />
      ) : null}
    </>
  );
}

const choices = (...pairs: readonly (readonly [string, string])[]) =>
  pairs.map(([value, label]) => ({ value, label }));

/** What a kind of fault has besides its resistance. */
function Form({ fault, part, onChange }: SeverityProps) {
  switch (fault.kind) {
    case 'riserJoint':
      return <JointForm {...{ fault, onChange }} />;
    case 'bridgedBars':
      return (
        <SelectField
          label="Made of"
          value={fault.by}
          options={[
            { value: 'copper', label: 'Copper or solder' },
            { value: 'carbon', label: 'Carbon' },
          ]}
          onChange={(by) => onChange({ ...fault, by })}
        />
      );
    case 'turnShort':
      return (
        <SelectField
          label={`Turns shorted, of ${part.turns}`}
          value={String(fault.turns)}
          options={Array.from({ length: part.turns }, (_, n) => ({
            value: String(n + 1),
            label: String(n + 1),
          }))}
          onChange={(turns) => onChange({ ...fault, turns: Number(turns) })}
        />
      );
    case 'coilShort':
      return <TouchingForm {...{ fault, part, onChange }} />;
    case 'groundedCoil':
      return (
        <ShareSlider
          label="How far along the coil"
          share={fault.fraction}
          onInput={(fraction) => onChange({ ...fault, fraction })}
        />
      );
    case 'weakInsulation':
      return (
        <SelectField
          label="Under the lamp’s voltage"
          value={String(fault.breakdownV)}
          options={choices(
            ['null', 'holds: the lamp stays dark'],
            ['80', 'breaks down above 80 V'],
            ['100', 'breaks down above 100 V'],
            ['120', 'breaks down above 120 V'],
          )}
          onChange={(volt) => onChange({ ...fault, breakdownV: volt === 'null' ? null : Number(volt) })}
        />
      );
    default:
      return null;
  }
}

function JointForm(props: {
  readonly fault: Extract<Fault, { kind: 'riserJoint' }>;
  readonly onChange: (fault: Fault) => void;
}) {
  const { fault, onChange } = props;
  return (
    <div class="in-row">
      <SelectField
        label="What has let go"
        value={fault.form}
        options={[
          { value: 'bar', label: 'The joint itself' },
          { value: 'oneEnd', label: 'One coil end' },
          { value: 'bothEnds', label: 'Both coil ends, apart' },
        ]}
        onChange={(form) => onChange({ ...fault, form })}
      />
      <SelectField
        label="How far"
        value={fault.ohm === 'open' ? 'open' : 'poor'}
        options={choices(['open', 'Altogether'], ['poor', 'Some contact left'])}
        onChange={(how) => onChange({ ...fault, ohm: how === 'open' ? 'open' : 0.02 })}
      />
    </div>
  );
}

function TouchingForm(props: {
  readonly fault: Extract<Fault, { kind: 'coilShort' }>;
  readonly part: PartType;
  readonly onChange: (fault: Fault) => void;
}) {
  const { fault, part, onChange } = props;
  const slot = part.coils[fault.topCoil]?.topSlot ?? 0;
  return (
    <SelectField
      label="Which two coils"
      value={`${fault.topCoil} ${fault.bottomCoil}`}
      options={touchingIn(slot, part).map(({ topCoil, bottomCoil }) => ({
        value: `${topCoil} ${bottomCoil}`,
        label: `coil ${topCoil} on coil ${bottomCoil}`,
      }))}
      onChange={(pair) => {
        const [topCoil, bottomCoil] = pair.split(' ').map(Number);
        onChange({ ...fault, topCoil: topCoil!, bottomCoil: bottomCoil! });
      }}
    />
  );
}
