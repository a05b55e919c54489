import { RANGES_A, type RangeA } from '../../../bench/action.ts';
import type { Observation } from '../../../bench/observation.ts';
import { Button } from '../../shared/Button.tsx';
import { RadioField, SelectField, TextField } from '../../shared/Field.tsx';
import { nearestReading } from './reading.ts';
import { type EntryDraft, type MatPlace, PLACES_OF } from './sheetEntry.ts';

export interface ResultFieldProps {
  readonly draft: EntryDraft;
  readonly seen: Observation;
  readonly guided: boolean;
  readonly change: (part: Partial<EntryDraft>) => void;
}

/** What the learner saw or read, in the form the test asks for. */
export function ResultField(props: ResultFieldProps) {
  const { draft, change } = props;
  if (draft.test === 'look') return null;
  if (draft.test === 'spaced' || draft.test === 'neighbour') return <ReadingFields {...props} />;
  const unit = UNITS[draft.test];
  if (unit) {
    return (
      <div data-first>
        <TextField
          label="Reading"
          unit={unit}
          inputMode="decimal"
          value={draft.reading}
          onInput={(reading) => change({ reading })}
        />
      </div>
    );
  }
  const places = PLACES_OF[draft.test];
  return (
    <div class="entry-wide" data-first>
      {places ? (
        <SelectField<MatPlace | ''>
          label="At"
          value={draft.at}
          options={['' as const, ...places].map((value) => ({ value, label: PLACE_NAMES[value] ?? '' }))}
          onChange={(at) => change({ at })}
        />
      ) : null}
      {draft.test === 'ground' || places ? (
        <RadioField<EntryDraft['lamp']>
          label="The lamp was"
          value={draft.lamp}
          options={asIs(LAMP)}
          onChange={(lamp) => change({ lamp })}
        />
      ) : (
        <RadioField<EntryDraft['strip']>
          label="The strip was"
          value={draft.strip}
          options={asIs(STRIP)}
          onChange={(strip) => change({ strip })}
        />
      )}
    </div>
  );
}

const UNITS: Readonly<Partial<Record<EntryDraft['test'], string>>> = {
  megohm: 'MΩ',
  millivolt: 'mV',
  gauges: 'mm',
};
export const PLACE_NAMES: Readonly<Partial<Record<MatPlace | '', string>>> = {
  '': 'choose…',
  'field:brush1': 'field brush 1',
  'field:brush2': 'field brush 2',
  'plate:insulated1': 'insulated holder 1',
  'plate:insulated2': 'insulated holder 2',
  'plate:earthed1': 'grounded holder 1',
  'plate:earthed2': 'grounded holder 2',
};

const LAMP = ['dark', 'dim', 'lit'] as const;
const STRIP = ['still', 'pulled', 'buzzing'] as const;

function asIs<T extends string>(values: readonly T[]): readonly { readonly value: T; readonly label: T }[] {
  return values.map((value) => ({ value, label: value }));
}

function ReadingFields({ draft, change, guided, seen }: ResultFieldProps) {
  return (
    <>
      <div data-first>
        <TextField
          label="Needle at"
          unit="A"
          inputMode="decimal"
          value={draft.reading}
          onInput={(reading) => change({ reading })}
        />
      </div>
      <SelectField
        label="Range"
        value={String(draft.rangeA)}
        options={RANGES_A.map((range) => ({ value: String(range), label: `${range} A` }))}
        onChange={(range) => change({ rangeA: Number(range) as RangeA })}
      />
      {guided && seen.needle.atRest && !seen.needle.pegged ? (
        <Button
          kind="quiet"
          onPress={() => change({ reading: String(nearestReading(seen)), rangeA: seen.rangeA })}
        >
          Read it for me
        </Button>
      ) : null}
    </>
  );
}
